import {
  biquads,
  butterworthShape,
  digitalDeviation,
  highPass,
  lowPass,
  singlePrecision,
} from '@airspring/core/filter';

const filter = highPass(butterworthShape(4), '24 Hz');
const digital = biquads(filter, { sampleRate: '48 kHz' });
for (const { b0, b1, b2, a1, a2 } of digital.sections)
  console.log([b0, b1, b2, a1, a2].map((b) => b.toFixed(12)).join(' '));

const steep = lowPass(butterworthShape(4), '12 kHz');
const high = biquads(steep, { sampleRate: '48 kHz' });
for (const [one, made, from, to] of [
  [filter, digital, '5 Hz', '20 kHz'],
  [steep, high, '20 Hz', '12 kHz'],
  [steep, high, '20 Hz', '20 kHz'],
] as const) {
  const { level, levelAt } = digitalDeviation(one, made, { from, to });
  console.log(
    `${level.toPrecision(2)} dB at ${levelAt.toFixed(0)} Hz: ${one.name}`,
  );
}

const short = singlePrecision(digital);
if (!short.ok) throw new Error(short.because[0]?.text);
const { deviation, poles } = short;
console.log(
  `32 bits: ${deviation.level.toFixed(2)} dB at ${deviation.levelAt.toFixed(1)} Hz`,
);
for (const { exact, rounded } of poles)
  console.log(
    `${rounded.f0.toFixed(3)} Hz instead of ${exact.f0.toFixed(3)} Hz`,
  );
