import { format } from '@airspring/core/quantity';
import { answers, inputs } from '../../examples/exposure.js';
import { worked } from '../example/worked.js';

export default worked({
  inputs,
  answers: (values) => {
    const texts = answers(values);
    return { ...texts, said: `At ${format('level', values.level, 'dB')} of A-weighted level: ${texts.time}.` };
  },
  figures: {},
});
