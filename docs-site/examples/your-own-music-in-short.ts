import { completeDriver, group } from '@airspring/core/driver';
import { ventedBox } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { tuning } from '@airspring/core/vent';
import { simulatedProgramme } from '@airspring/transient/signal';
import { compileTimeline, type Slice } from '@airspring/transient/timeline';

// A storm of our own: claps of noise that fade, and steps on a tone.
const [claps, fades] = [
  [1, 3, 11, 12.5, 21, 22.2],
  [1.6, 0.8, 2.2, 0.7, 2.8, 0.9],
];
const [steps, tones] = [
  [6, 7.2, 8.4, 9.6, 15, 16.2, 17.4, 18.6],
  [55, 49, 41.2, 41.2, 49, 41.2, 36.7, 36.7],
];
const weights = [
  { frequency: 25, level: -12 },
  { frequency: 40, level: 0 },
  { frequency: 80, level: 0 },
  { frequency: 160, level: -18 },
];
const swell = (s: number, fade: number) =>
  s < 0 || s > 8 * fade ? 0 : (1 - Math.exp(-s / 0.04)) * Math.exp(-s / fade);
const rumble = simulatedProgramme({ seed: 11, weights }).compile(48_000);
const storm = (from: number, out: Float64Array) => {
  rumble(from, out);
  for (let i = 0; i < out.length; i++) {
    const t = (from + i) / 48_000;
    const thunder = claps.reduce(
      (sum, at, k) => sum + swell(t - at, fades[k]!),
      0,
    );
    out[i]! *= 0.16 * thunder;
    steps.forEach((at, k) => {
      const size = swell(t - at, 0.5);
      if (size > 0)
        out[i]! += 0.9 * size * Math.sin(2 * Math.PI * tones[k]! * (t - at));
    });
  }
};

// Invented: two drivers in parallel in 22 L of air, and a vent that chuffs.
const cone = { fs: '42 Hz', Vas: '14 L', Sd: '132 cm²' } as const;
const motor = { Qts: 0.38, Qes: 0.43, Re: '6.2 Ω', Le: '0.5 mH' } as const;
const sheet = completeDriver({ ...cone, ...motor });
if (!sheet.ok) throw new Error(sheet.because[0]?.text);
const vent = { diameter: '44 mm', length: '150 mm', wall: '3 mm' } as const;
const tuned = tuning({ vent, netVolume: '22 L', panelThickness: '15 mm' });
if (!tuned.ok) throw new Error(tuned.because[0]?.text);
const box = ventedBox({
  drivers: group(sheet.driver, { parallel: 2 }),
  ...{ netVolume: '22 L', fb: tuned.fb, QL: 7, sourceResistance: '0.05 Ω' },
  ventArea: si('area', (Math.PI / 4) * 0.044 ** 2),
});

const timeline = compileTimeline(box, {
  sampleRate: '48 kHz',
  vents: [{ vent }],
  outputs: ['pressure'],
});
const hearing = timeline.start();
const slices: Slice[] = [];
const block = new Float64Array(48_000);
for (let second = 0; second < 26; second++) {
  storm(48_000 * second, block);
  // A sine of full scale is given 20 V.
  slices.push(
    ...timeline.take(
      hearing,
      block.map((sample) => 20 * Math.SQRT2 * sample),
    ),
  );
}
const loudest = Math.max(...slices.map(({ rms }) => rms.pressure!));
console.log(
  `${(20 * Math.log10(loudest / 20e-6)).toFixed(0)} dB in the loudest tenth of a second`,
);
const [quiet, noisy] = timeline.account(hearing).limits;
const softer = (used: number) =>
  `${(20 * Math.log10(used)).toFixed(1)} dB softer`;
console.log(
  `noisy ${noisy!.times} times, ${noisy!.passedFor.toFixed(1)} s in all`,
);
console.log(
  `may be heard for another ${(quiet!.passedFor - noisy!.passedFor).toFixed(1)} s`,
);
console.log(
  `never noisy ${softer(noisy!.mostUsed)}, quiet ${softer(quiet!.mostUsed)}`,
);
