import { completeDriver, group } from '@airspring/core/driver';
import { ventedBox } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { tuning } from '@airspring/core/vent';
import { type Signal, simulatedProgramme } from '@airspring/transient/signal';
import { compileTimeline, type Slice } from '@airspring/transient/timeline';

// A storm of our own: claps that set in and fade, and steps on a tone.
const claps = [
  [1, 1.6],
  [3, 0.8],
  [11, 2.2],
  [12.5, 0.7],
  [21, 2.8],
  [22.2, 0.9],
] as const;
const steps = [
  [6, 55],
  [7.2, 49],
  [8.4, 41.2],
  [9.6, 41.2],
  [15, 49],
  [16.2, 41.2],
  [17.4, 36.7],
  [18.6, 36.7],
] as const;
const fading = (t: number, at: number, fades: number) =>
  t < at || t > at + 8 * fades
    ? 0
    : (1 - Math.exp((at - t) / 0.04)) * Math.exp((at - t) / fades);
const levels = [
  [25, -12],
  [40, 0],
  [80, 0],
  [160, -18],
] as const;
const weights = levels.map(([frequency, level]) => ({ frequency, level }));
const storm: Signal['compile'] = (sampleRate) => {
  const rumble = simulatedProgramme({ seed: 11, weights }).compile(
    sampleRate,
  );
  return (from, out) => {
    rumble(from, out);
    for (let i = 0; i < out.length; i++) {
      const t = (from + i) / sampleRate;
      out[i]! *=
        0.16 *
        claps.reduce((sum, [at, fades]) => sum + fading(t, at, fades), 0);
      for (const [at, tone] of steps) {
        const swell = fading(t, at, 0.5);
        if (swell > 0)
          out[i]! += 0.9 * swell * Math.sin(2 * Math.PI * tone * (t - at));
      }
    }
  };
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
const [play, hearing, slices] = [
  storm(48_000),
  timeline.start(),
  [] as Slice[],
];
const block = new Float64Array(48_000);
for (let second = 0; second < 26; second++) {
  play(48_000 * second, block);
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
