import { answers, inputs } from '../../examples/first-box.js';
import { worked } from '../example/worked.js';

export default worked({
  inputs,
  answers: (wish) => {
    const texts = answers(wish);
    return {
      ...texts,
      said: `The box reaches ${texts.reach} (−3 dB); the tube, ${texts.length} long, ${texts.fits}, ${texts.how}.`,
    };
  },
  figures: {},
});
