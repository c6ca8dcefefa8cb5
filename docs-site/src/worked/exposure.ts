import { format } from '@airspring/core/quantity';
import { answers, inputs } from '../../examples/exposure.js';
import { worked } from '../example/worked.js';

export default worked({
  inputs,
  answers: (values) => {
    const texts = answers(values);
    return {
      ...texts,
      said: `The recommended limit at an A-weighted level of ${format('level', values.level, 'dB')} is ${texts.time}.`,
    };
  },
  figures: {},
});
