import { completeDriver } from '@airspring/core/driver';
import { isInputError } from '@airspring/core/fault';

// Invented sheets. Enough: six numbers that leave nothing open.
const sheet = {
  fs: '27 Hz',
  Qts: 0.36,
  Qes: 0.4,
  Vas: '62 L',
  Re: '5.6 Ω',
} as const;
const whole = completeDriver({ ...sheet, coneDiameter: '205 mm' });
if (whole.ok) {
  for (const { field, value, from } of whole.derived)
    console.log(field, value, 'from', from.join(', '));
  for (const { what, missing } of whole.blocked)
    console.log('no', what, 'without', missing.join(', '));
}

// Too little: what is missing is an answer.
const part = completeDriver({ fs: '27 Hz', Qts: 0.36, Re: '5.6 Ω' });
if (!part.ok) for (const { text } of part.because) console.log(text);

// Rounded: one number too many, and they nearly agree.
const rounded = completeDriver({ ...sheet, Sd: '330 cm²', Qms: 9 });
if (rounded.ok)
  for (const { field, given, implied, verdict } of rounded.deviations)
    console.log(field, given, 'implied', implied, verdict);

// Contradictory: refused, with every fault at its place.
try {
  completeDriver({ ...sheet, Sd: '330 cm²', Mms: '120 g' });
} catch (error) {
  if (!isInputError(error)) throw error;
  for (const { path, got, expected, remedy } of error.faults)
    console.log(path, got, '-', expected, '-', remedy);
}
