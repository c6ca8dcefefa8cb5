/** The smallest vent of a few boxes, by the circuit of the vented box in complex numbers and the tuning of an open pipe. */
import { parallelBandPass, ventedBox } from '@airspring/core/enclosure';
import { type VentMapInput, ventMap } from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import { noiseOnsets } from '@airspring/core/vent';
import { checkIn } from '../../ledger/check.js';
import { type Complex, over } from '../complex.js';
import { paperAir, physical } from '../enclosure/textbook.js';

const check = checkIn(paperAir);

const drivers = physical({ fs: 30, Qes: 0.35, Qms: 5, Vas: 0.06, Sd: 0.033, Re: 5.6 }, paperAir);
const [volumes, tunings] = [[0.03, 0.06] as const, [24, 36] as const];
const QL = 7;

/** Peak flow in the vent per pascal rms at 1 m in half space: of the pressure in the box, the vent takes 1/(sM), the air sC. */
function flowPerPascal(volume: number, fb: number, f: number): number {
  const [w, wb] = [2 * Math.PI * f, 2 * Math.PI * fb];
  const C = volume / (paperAir.density * paperAir.speedOfSound ** 2);
  const vent: Complex = [0, (-wb * wb * C) / w];
  const radiated: Complex = [0, w * C];
  const ratio = over(vent, radiated);
  const pressure = (paperAir.density * w) / (2 * Math.PI);
  return (Math.SQRT2 * Math.hypot(...ratio)) / pressure;
}
const diameterOf = (volume: number, fb: number): number => {
  // The flow per pascal falls with frequency: the lowest frequency of the band decides.
  const flow = flowPerPascal(volume, fb, 28) * 20e-6 * 10 ** (98 / 20);
  return Math.sqrt((4 * flow) / 17 / Math.PI);
};
const effective = (volume: number, fb: number): number => {
  const k = (2 * Math.PI * fb) / paperAir.speedOfSound;
  return ((Math.PI / 4) * diameterOf(volume, fb) ** 2) / (k * k * volume);
};
const cells = (allowed: Pick<VentMapInput, 'onsets' | 'airSpeedPeak'> = { airSpeedPeak: '17 m/s' }) =>
  ventMap({
    ...allowed,
    box: (netVolume, fb) => ventedBox({ drivers, netVolume, fb, QL, ventArea: si('area', 1) }, paperAir),
    netVolumes: volumes.map((volume) => si('volume', volume)),
    tunings: tunings.map((fb) => si('frequency', fb)),
    level: '98 dB',
    from: '28 Hz',
    to: '100 Hz',
    space: {
      outer: { width: '600 mm', height: '500 mm', depth: '500 mm' },
      thickness: '18 mm',
      driver: { outerDiameter: '270 mm', cutoutDiameter: '240 mm', depth: '130 mm' },
    },
    displaced: '2 L',
    wall: '3 mm',
  });
const boxes = volumes.flatMap((volume) => tunings.map((fb) => [volume, fb] as const));
const given = { QL: { value: QL, unit: '1' } } as const;

check('limit.vent-map.diameter', {
  formula: 'limit/ventMap',
  source: { key: 'small1973vented1', locator: 'circuit: flow of the vent over the flow into the air of the box' },
  status: 'derived',
  kind: 'standard',
  given,
  got: () => cells().map(({ diameter }) => diameter),
  expected: boxes.map(([volume, fb]) => diameterOf(volume, fb)),
  unit: 'm',
  tolerance: { relative: 1e-13, why: 'rounding' },
});
/** holman2005: a jet forms where the mean speed of half a period over ω d passes 0.16, so the air may move by 0.08 π d. */
const quietDiameterOf = (volume: number, fb: number): number => {
  const [low, high] = [28, 100].map(
    (f) => (flowPerPascal(volume, fb, f) * 20e-6 * 10 ** (98 / 20)) / (2 * Math.PI * f),
  );
  return Math.cbrt(Math.max(low!, high!) / (0.02 * Math.PI ** 2));
};
check('limit.vent-map.quiet', {
  formula: 'limit/ventMap',
  source: { key: 'holman2005', locator: 'abstract: 0.16 for a round opening; stroke solved for the diameter' },
  status: 'derived',
  kind: 'standard',
  given,
  got: () => cells({ onsets: noiseOnsets.filter(({ name }) => name === 'jets form') }).map(({ diameter }) => diameter),
  expected: boxes.map(([volume, fb]) => quietDiameterOf(volume, fb)),
  unit: 'm',
  tolerance: { relative: 5e-14, why: 'rounding' },
});
check('limit.vent-map.resonance', {
  formula: 'limit/ventMap',
  source: { key: 'rayleigh1896', locator: 'secs. 303-314: effective length S/(k²V); half a wave in it' },
  status: 'derived',
  kind: 'standard',
  given,
  got: () => cells().map(({ pipeResonance }) => pipeResonance ?? 0),
  expected: boxes.map(([volume, fb]) => paperAir.speedOfSound / (2 * effective(volume, fb))),
  unit: 'Hz',
  tolerance: { relative: 2e-13, why: 'rounding of the effective length' },
});
check('limit.vent-map.length', {
  formula: 'limit/ventMap',
  source: { key: 'rayleigh1896', locator: 'secs. 303-314: effective length less both ends, 0.8216 and 0.6133 radii' },
  status: 'derived',
  kind: 'standard',
  given,
  got: () => cells().map(({ length }) => length ?? 0),
  expected: boxes.map(([volume, fb]) => effective(volume, fb) - ((0.8216 + 0.6133) * diameterOf(volume, fb)) / 2),
  unit: 'm',
  tolerance: { relative: 1e-3, why: 'ends change a little with frequency' },
});

/** A chamber without losses passes through its vent 1/(1 − f²/fb²) of what the cone displaces; those of both sides are opposite. */
const passed = (f: number, fb: number) => 1 / (1 - (f / fb) ** 2);
const REAR = { rearVolume: '60 L', rearTuning: '24 Hz' } as const;
const fronts = [
  [0.02, 60],
  [0.02, 75],
  [0.05, 60],
  [0.05, 75],
] as const;
check('limit.vent-map.one-of-two', {
  formula: 'limit/ventMap',
  source: {
    key: 'small1973vented1',
    locator: 'share of the flow in a vent, one for each side of the cone; without losses',
  },
  status: 'derived',
  kind: 'standard',
  given: {
    rear: { value: '60 L at 24 Hz, held', unit: '' },
    front: { value: '20 and 50 L at 60 and 75 Hz', unit: '' },
    air: { value: '17 m/s at 98 dB from 28 Hz to 100 Hz', unit: '' },
  },
  got: () =>
    ventMap({
      ...{ airSpeedPeak: '17 m/s', level: '98 dB', from: '28 Hz', to: '100 Hz', displaced: '2 L', wall: '3 mm' },
      vent: 'front',
      box: (frontVolume, frontTuning) =>
        parallelBandPass(
          {
            drivers,
            ...REAR,
            frontVolume,
            frontTuning,
            frontVentArea: si('area', 0.01),
            rearVentArea: si('area', 0.02),
          },
          paperAir,
        ),
      netVolumes: [si('volume', 0.02), si('volume', 0.05)],
      tunings: [si('frequency', 60), si('frequency', 75)],
      space: {
        outer: { width: '600 mm', height: '500 mm', depth: '500 mm' },
        thickness: '18 mm',
        driver: { outerDiameter: '270 mm', cutoutDiameter: '240 mm', depth: '130 mm' },
      },
    }).map(({ diameter }) => diameter),
  expected: fronts.map(([, fb]) => {
    const flows = Array.from({ length: 32 }, (_, i) => {
      const f = 28 * (100 / 28) ** (i / 31);
      const whole = (Math.SQRT2 * 20e-6 * 10 ** (98 / 20)) / (paperAir.density * f);
      return Math.abs(passed(f, fb) / (passed(f, fb) - passed(f, 24))) * whole;
    });
    return Math.sqrt((4 * Math.max(...flows)) / 17 / Math.PI);
  }),
  unit: 'm',
  tolerance: { relative: 1e-13, why: 'rounding' },
});
