import { type Brief, design } from 'airspring';

// Invented.
const driver = {
  ...{ name: 'ten-inch driver, invented', fs: '24 Hz', Qts: 0.36 },
  ...{ Qes: 0.4, Vas: '70 L', Sd: '330 cm²', Re: '5.6 Ω' },
  ...{ Xmax: '9 mm', Pe: '200 W', outerDiameter: '262 mm' },
  ...{ cutoutDiameter: '232 mm', depth: '118 mm' },
};
const brief = {
  ...{ version: 1, title: 'A box in a cabin', drivers: [driver] },
  space: {
    ...{ width: '400 mm', height: '340 mm', depth: '380 mm' },
    panelThickness: '18 mm',
  },
  wanted: {
    ...{ lowest: '25 Hz', highest: '100 Hz', level: '95 dB' },
    ...{ rise: '9 dB', at: 'listener' },
  },
  room: {
    ...{ distance: '1.2 m', walls: ['0 mm'] },
    ...{ volume: '4 m³', leakCorner: '5 Hz' },
  },
  amplifier: { voltage: '25 V' },
  box: { kinds: ['closed'] },
} satisfies Brief;
const answer = design(brief);
if (!answer.ok) throw new Error(answer.because.join(' '));
const { heard } = answer.designs[0]!;
for (const place of ['listener', 'oneMetre'] as const) {
  const { level, cutoff } = heard![place];
  console.log(place, level.toFixed(1), 'dB, from', cutoff?.toFixed(1), 'Hz');
}
