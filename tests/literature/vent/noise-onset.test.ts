import { standardAir } from '@airspring/core/air';
import { si } from '@airspring/core/quantity';
import { onsetSpan, onsetSpeed, openingOf, ventLoss, ventNoise } from '@airspring/core/vent';
import { expect, test } from 'vitest';
import { check } from '../../ledger/check.js';

const onset = (name: string, f: number, d: number): number =>
  ventNoise({
    vent: { diameter: si('length', d) },
    frequency: si('frequency', f),
    airSpeedPeak: si('airSpeedPeak', 1),
  }).onsets.find((one) => one.onset.name === name)!.airSpeedPeak;
const given = {
  f: { value: [30, 30, 40], unit: 'Hz' },
  d: { value: [0.05, 0.1, 0.075], unit: 'm' },
} as const;

check('vent.noise.jets', {
  formula: 'vent/ventNoise',
  source: { key: 'holman2005', locator: 'criterion 0.16 of round openings solved for the amplitude of a plug profile' },
  status: 'derived',
  kind: 'program',
  given,
  got: ({ f, d }) => onset('jets form', f, d),
  expected: [2.36870506, 4.73741011, 4.73741011],
  unit: 'm/s',
  tolerance: { relative: 5e-9, why: 'nine digits' },
});

check('vent.noise.turbulent-walls', {
  formula: 'vent/ventNoise',
  source: { key: 'hino1976', locator: 'Re_δ of 550 solved for the speed, ν = 1.568e-5 m²/s; times 500/550' },
  status: 'derived',
  kind: 'program',
  given: { f: { value: [20, 30, 60, 100], unit: 'Hz' } },
  got: ({ f }) =>
    onset('turbulent walls', f, 0.1) * Math.sqrt(1.568e-5 / (standardAir.viscosity / standardAir.density)),
  expected: [17.2633729, 21.1432275, 29.9010391, 38.6020754].map((u) => (u * 500) / 550),
  unit: 'm/s',
  tolerance: { relative: 1e-8, why: 'nine digits' },
});

check('vent.noise.custom', {
  formula: 'vent/ventNoise',
  source: { key: 'common-practice', locator: 'at most 5 % of the speed of sound, also told as 17 m/s' },
  status: 'practice',
  kind: 'standard',
  given: { f: { value: 30, unit: 'Hz' } },
  got: ({ f }) => onset('5 % of the speed of sound', f, 0.1),
  expected: 17.16,
  unit: 'm/s',
  tolerance: { relative: 0.01, why: 'of another speed of sound' },
});

check('vent.opening.radius', {
  formula: 'vent/openingOf',
  source: {
    key: 'holman2005',
    locator: 'its diameter, halved: stroke over diameter 0.5027 is 0.2513 diameters one way',
  },
  status: 'derived',
  kind: 'identity',
  given: { d: { value: [0.05, 0.1], unit: 'm' } },
  got: ({ d }) => openingOf({ diameter: si('length', d) }).radius,
  expected: [0.025, 0.05],
  unit: 'm',
  tolerance: { relative: 1e-15, why: 'half' },
});

check('vent.opening.slot', {
  formula: 'vent/openingOf',
  source: { key: 'rayleigh1896', locator: 'sec. 307: an opening that is nearly round counts by its area, π r² = w h' },
  status: 'derived',
  kind: 'standard',
  given: { w: { value: [0.3, 0.04, 0.1], unit: 'm' }, h: { value: [0.03, 0.03, 0.1], unit: 'm' } },
  got: ({ w, h }) => {
    const { radius, aspect = 1 } = openingOf({ width: si('length', w), height: si('length', h) });
    return radius * 1e3 + aspect;
  },
  // √(0.009/π), √(0.0012/π), √(0.01/π) m, and the sides over each other: 10, 4/3 and 1.
  expected: [53.5237234845 + 10, 19.5441004761 + 4 / 3, 56.4189583548 + 1],
  unit: 'mm and 1, added up',
  tolerance: { relative: 1e-11, why: 'twelve digits' },
});

check('vent.loss.quality', {
  formula: 'vent/ventLoss',
  source: { key: 'ingard1967', locator: 'Q = ω ρ L / r of a vent of 0.25 m whose ends lose 1.5 together, worked out' },
  status: 'derived',
  kind: 'program',
  given: {
    f: { value: [20, 30, 40], unit: 'Hz' },
    U: { value: [5, 10, 17], unit: 'm/s' },
  },
  // Both ends flush and sharp: 0.5 in and 1 out.
  got: ({ f, U }) => {
    const vent = { diameter: '75 mm', length: '25 cm', innerFlangeDiameter: '150 mm' } as const;
    const { quadratic } = ventLoss({ vent });
    return (2 * Math.PI * f * standardAir.density * 0.25) / quadratic.resistance(U, f, standardAir);
  },
  expected: [9.869604401, 7.402203301, 5.805649648],
  unit: '1',
  tolerance: { relative: 1e-9, why: 'ten digits' },
});

check('vent.loss.rounded', {
  formula: 'vent/ventLoss',
  source: { key: 'rennels2012', locator: 'exit 1, bend of 90° with r/D 1.5; entrances of idelchik1966' },
  status: 'derived',
  kind: 'table',
  given: { bends: { value: [1, 2], unit: '1' } },
  got: ({ bends }) => {
    const bend = { angle: '90 deg', centreLineRadius: '112.5 mm', count: bends } as const;
    const { quadratic } = ventLoss({ vent: { diameter: '75 mm', length: '60 cm', wall: '0.6 mm', bend } });
    return quadratic.outward;
  },
  expected: [0.88 + 1 + 0.2425918809, 0.88 + 1 + 2 * 0.2425918809],
  unit: '1',
  tolerance: { relative: 1e-9, why: 'ten digits' },
});

check('vent.onset-speed.walls', {
  formula: 'vent/onsetSpeed',
  source: { key: 'hino1976', locator: 'Re_δ of 550 solved for the speed, ν = 1.568e-5 m²/s' },
  status: 'derived',
  kind: 'program',
  given: { f: { value: [20, 30, 60, 100], unit: 'Hz' } },
  got: ({ f }) =>
    onsetSpeed({ boundaryReynolds: 550 }, f, {
      ...standardAir,
      density: si('density', 1),
      viscosity: si('viscosity', 1.568e-5),
    }),
  expected: [17.2633729, 21.1432275, 29.9010391, 38.6020754],
  unit: 'm/s',
  tolerance: { relative: 5e-9, why: 'nine digits' },
});

check('vent.loss.inward', {
  formula: 'vent/ventLoss',
  source: { key: 'idelchik1966', locator: 'flow into a sharp flush end, 0.5, and out of the other, 1' },
  status: 'derived',
  kind: 'table',
  given: { d: { value: [0.05, 0.1], unit: 'm' } },
  got: ({ d }) => ventLoss({ vent: { diameter: si('length', d), length: '30 cm' } }).quadratic.inward,
  expected: [1.5, 1.5],
  unit: '1',
  tolerance: { relative: 1e-15, why: 'a sum' },
});

check('vent.loss.parts', {
  formula: 'vent/ventLoss',
  source: {
    key: 'idelchik1966',
    locator: 'ends: (1 + 1)/2 of a thin tube that projects, (0.5 + 1)/2 of a flush one; bends of rennels2012',
  },
  status: 'derived',
  kind: 'table',
  given: { part: { value: [0, 1, 2], unit: '1' } },
  got: ({ part }) => {
    const bend = { angle: '90 deg', centreLineRadius: '112.5 mm' } as const;
    return ventLoss({ vent: { diameter: '75 mm', length: '60 cm', bend } }).parts[part]!.nominal;
  },
  expected: [1, 0.75, 0.2425918809],
  unit: '1',
  tolerance: { relative: 1e-9, why: 'ten digits' },
});

check('vent.noise.slot', {
  formula: 'vent/ventNoise',
  source: { key: 'holman2005', locator: 'criterion 1 of a slot, by its height, solved for the amplitude: π/2 ω h' },
  status: 'derived',
  kind: 'program',
  given: { h: { value: [0.004, 0.005], unit: 'm' } },
  // Sixty times as wide as high, so that the round opening of its area has the higher onset.
  got: ({ h }) =>
    ventNoise({
      vent: { width: si('length', 60 * h), height: si('length', h) },
      frequency: si('frequency', 30),
      airSpeedPeak: si('airSpeedPeak', 1),
    }).onsets.find(({ onset }) => onset.name === 'jets form')!.airSpeedPeak,
  expected: [1.184352528, 1.48044066],
  unit: 'm/s',
  tolerance: { relative: 1e-9, why: 'ten digits' },
});

/** Two openings, of which the air in the second is half as fast as in the first. */
const spanOf = (f: number, d: number, other: number) =>
  onsetSpan(
    [d, other].map((diameter, i) => ({ opening: openingOf({ diameter: si('length', diameter) }), share: 1 / (i + 1) })),
    standardAir,
  )(f);
const spanGiven = {
  f: { value: [30, 30, 40], unit: 'Hz' },
  d: { value: [0.05, 0.1, 0.075], unit: 'm' },
  other: { value: [0.01, 0.15, 0.03], unit: 'm' },
} as const;

check('vent.onset-span.quiet', {
  formula: 'vent/onsetSpan',
  source: {
    key: 'holman2005',
    locator: 'criterion 0.16 solved for the amplitude; the least of both openings, over its share',
  },
  status: 'derived',
  kind: 'program',
  given: spanGiven,
  got: ({ f, d, other }) => spanOf(f, d, other).quiet.airSpeedPeak,
  // 2.36870506 m/s is that of 50 mm at 30 Hz: it goes with diameter and frequency.
  expected: [(2.36870506 / 5) * 2, 4.73741011, 2.36870506 * (4 / 3) * (3 / 5) * 2],
  unit: 'm/s',
  tolerance: { relative: 5e-9, why: 'nine digits' },
});

check('vent.onset-span.noisy', {
  formula: 'vent/onsetSpan',
  source: {
    key: 'hino1976',
    locator: 'Re_δ of 550 solved for the speed, ν = 1.568e-5 m²/s; times 500/550, the last onset',
  },
  status: 'derived',
  kind: 'program',
  given: { f: { value: [30, 60, 100], unit: 'Hz' } },
  got: ({ f }) => {
    const air = { ...standardAir, density: si('density', 1), viscosity: si('viscosity', 1.568e-5) };
    const opening = openingOf({ diameter: '50 mm' });
    const both = [
      { opening, share: 1 },
      { opening, share: 0.5 },
    ];
    return onsetSpan(both, air)(f).noisy.airSpeedPeak;
  },
  expected: [21.1432275, 29.9010391, 38.6020754].map((u) => (u * 500) / 550),
  unit: 'm/s',
  tolerance: { relative: 1e-8, why: 'nine digits' },
});

check('vent.loss.least-end', {
  formula: 'vent/ventLoss',
  source: { key: 'harris1930', locator: 'rounded entrance at r/D 0.16, 0; out of the end 1 (rennels2012); their mean' },
  status: 'derived',
  kind: 'table',
  given: { part: { value: [0, 1], unit: '1' } },
  got: ({ part }) => ventLoss({ vent: { diameter: '75 mm', length: '60 cm' } }).parts[part]!.low,
  expected: [0.5, 0.5],
  unit: '1',
  tolerance: { relative: 1e-15, why: 'a mean' },
});

/**
 * What a jet of 1 m/s and density 1 loses that leaves a tube for a space so many times as wide. Its momentum and the pressure on the
 * wall around it, that of the jet, become momentum and pressure of the slow flow behind it.
 */
function lostByJet(widening: number): number {
  const after = 1 / widening;
  const rise = (1 - after) / widening;
  return (0.5 - rise - 0.5 * after ** 2) / 0.5;
}

check('vent.loss.exit', {
  formula: 'vent/ventLoss',
  source: {
    key: 'rennels2012',
    locator: 'exit of a jet into a wide space, by the balance of momentum of a sudden widening',
  },
  status: 'derived',
  kind: 'program',
  given: { widening: { value: [1e4, 1e6], unit: '1' } },
  // Into a box, the flow enters a sharp flush end, 0.5, and leaves the other one as a jet.
  got: () => ventLoss({ vent: { diameter: '75 mm', length: '30 cm' } }).quadratic.inward - 0.5,
  expected: [lostByJet(1e4), lostByJet(1e6)],
  unit: '1',
  tolerance: { relative: 2.1e-4, why: 'the space is wide, not without end: 1 − 2/widening' },
});

test('the same balance gives what a handbook prints for a pipe of twice the width', () => {
  expect(lostByJet(4)).toBe(0.5625);
});
