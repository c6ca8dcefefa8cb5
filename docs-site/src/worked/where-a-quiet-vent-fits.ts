import { answers, inputs } from '../../examples/where-a-quiet-vent-fits.js';
import { worked } from '../example/worked.js';

export default worked({
  inputs,
  answers: (values) => {
    const texts = answers(values);
    const said = `To be quiet, the vent must be ${texts.diameter} wide and ${texts.length} long. It ${texts.verdict}.`;
    return { ...texts, said };
  },
  figures: {},
});
