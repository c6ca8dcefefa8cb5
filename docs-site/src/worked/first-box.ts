import { answers, inputs } from '../../examples/first-box.js';
import { worked } from '../example/worked.js';

export default worked({
  inputs,
  answers: (wish) => {
    const texts = answers(wish);
    return { ...texts, said: `Reaches ${texts.reach}; the tube of ${texts.length} ${texts.fits}, ${texts.how}.` };
  },
  figures: {},
});
