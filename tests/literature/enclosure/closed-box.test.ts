import { type Air, standardAir } from '@airspring/core/air';
import { driver } from '@airspring/core/driver';
import { boxCompliance, closedBox, closedResonance } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { cutoff, features, referenceLevel, respond, stepResponse } from '@airspring/core/response';
import { checkIn } from '../../ledger/check.js';
import figures from './closed-figures.json' with { type: 'json' };
import { motions, physicalBox, physicalGiven, poles } from './driven-poles.js';
import { closedOf, paperAir, physical } from './textbook.js';

const check = checkIn(paperAir);

const source = { key: 'small1972closed1', locator: 'second-order response function' };
const tenDigits = { relative: 5e-9, why: 'values to ten digits; roots magnify their last one' };
const column = (name: string) => figures.rows.map((row) => row[figures.columns.indexOf(name)] as number | null);
const Qtc = column('Qtc') as number[];
const fc = 50;
const airOf = (density: number, speedOfSound: number): Air => ({
  ...standardAir,
  density: si('density', density),
  speedOfSound: si('speed', speedOfSound),
});

for (const [name, drop] of [
  ['f3', undefined],
  ['f6', 6],
  ['f10', 10],
] as const) {
  check(`enclosure.closed.${name}`, {
    formula: name === 'f3' ? 'enclosure/closedBox' : 'response/cutoff',
    source,
    status: 'derived',
    kind: 'table',
    given: { Qtc: { value: Qtc, unit: '1' } },
    got: ({ Qtc }) => {
      const found = cutoff(closedOf({ Qtc, fc }), drop === undefined ? {} : { drop });
      return found.ok ? found.frequency / fc : Number.NaN;
    },
    expected: column(name) as number[],
    unit: `${name}/fc`,
    tolerance: tenDigits,
  });
}
check('enclosure.closed.level-at-resonance', {
  formula: 'enclosure/closedBox',
  source,
  status: 'derived',
  kind: 'table',
  given: { Qtc: { value: Qtc, unit: '1' } },
  got: ({ Qtc }) => {
    const system = closedOf({ Qtc, fc });
    return (respond(system, [fc]).levelHalfSpace[0] as number) - referenceLevel(system);
  },
  expected: column('levelAtFc') as number[],
  unit: 'dB',
  tolerance: { absolute: 1e-8, why: 'values to ten digits' },
});

// From 0.75 on the response peaks.
const peaking = figures.rows.filter(([, , , , , peak]) => peak !== null);
const peakColumn = (name: string) => peaking.map((row) => row[figures.columns.indexOf(name)] as number);
check('response.peak-level', {
  formula: 'response/features',
  source,
  status: 'derived',
  kind: 'table',
  given: { Qtc: { value: peakColumn('Qtc'), unit: '1' } },
  got: ({ Qtc }) => features(closedOf({ Qtc, fc })).peaks[0]?.value ?? Number.NaN,
  expected: peakColumn('peakLevel'),
  unit: 'dB',
  tolerance: { absolute: 5e-9, why: 'values to ten digits' },
});
check('response.peak-frequency', {
  formula: 'response/features',
  source,
  status: 'derived',
  kind: 'table',
  given: { Qtc: { value: peakColumn('Qtc'), unit: '1' } },
  got: ({ Qtc }) => (features(closedOf({ Qtc, fc })).peaks[0]?.frequency ?? Number.NaN) / fc,
  expected: peakColumn('peak'),
  unit: 'fpeak/fc',
  tolerance: { relative: 5e-9, why: 'values to ten digits' },
});
check('response.displacement-peak', {
  formula: 'response/respond',
  source: { ...source, locator: 'displacement function' },
  status: 'derived',
  kind: 'table',
  given: {
    Qtc: { value: peakColumn('Qtc'), unit: '1' },
    at: { value: peakColumn('displacementPeakAt'), unit: 'f/fc' },
  },
  got: ({ Qtc, at }) => {
    const [still = 0, most = 0] = respond(closedOf({ Qtc, fc }), [1e-3, at * fc]).displacementPeak;
    return most / still;
  },
  expected: peakColumn('displacementPeak'),
  unit: 'x/x(0)',
  tolerance: { relative: 1e-8, why: 'the least frequency stands for zero' },
});

const wc = 2 * Math.PI * fc;
/** Pressure at wc t, over that at the start. */
const step = (Qtc: number, angle: number) => {
  const { pressure } = stepResponse(closedOf({ Qtc, fc }), { until: si('time', angle / wc), points: 101 });
  return (pressure.at(-1) as number) / (pressure[0] as number);
};
check('response.step.minimum', {
  formula: 'response/stepResponse',
  source: { ...source, locator: 'step response of the second-order high-pass: depth of its minimum' },
  status: 'derived',
  kind: 'table',
  given: { Qtc: { value: Qtc, unit: '1' }, at: { value: column('stepMinimumAt') as number[], unit: 'wc t' } },
  got: ({ Qtc, at }) => step(Qtc, at),
  expected: column('stepMinimum') as number[],
  unit: 'p/p(0)',
  tolerance: { relative: 1e-8, why: 'values to ten digits' },
});
check('response.step.zero', {
  formula: 'response/stepResponse',
  source: { ...source, locator: 'step response of the second-order high-pass: first zero' },
  status: 'derived',
  kind: 'table',
  given: { Qtc: { value: Qtc, unit: '1' }, at: { value: column('stepZero') as number[], unit: 'wc t' } },
  got: ({ Qtc, at }) => step(Qtc, at),
  expected: Qtc.map(() => 0),
  unit: 'p/p(0)',
  tolerance: { absolute: 1e-8, why: 'times to ten digits' },
});

check('enclosure.closed.alpha', {
  formula: 'enclosure/closedBox',
  source: { key: 'small1972closed1', locator: 'fc/fs = sqrt(alpha + 1); displacement a quarter turn behind at fc' },
  status: 'derived',
  kind: 'table',
  given: { alpha: { value: [0.5, 1, 2, 3, 5, 10], unit: '1' } },
  // The current is in phase with the drive at the system resonance alone; found by bisection of its phase.
  got: ({ alpha }) => {
    const air = airOf(1.18, 345);
    const drivers = physical({ fs: 30, Qes: 0.4, Qms: 4, Vas: 0.06, Sd: 0.033, Re: 5.6 }, air);
    const system = closedBox({ drivers, netVolume: si('volume', 0.06 / alpha) }, air);
    let [below, above] = [30, 300];
    for (let n = 0; n < 60; n++) {
      const f = Math.sqrt(below * above);
      if ((respond(system, [f]).impedancePhase[0] as number) > 0) below = f;
      else above = f;
    }
    return below / 30;
  },
  expected: [1.224744871, 1.414213562, 1.732050808, 2.0, 2.449489743, 3.31662479],
  unit: 'fc/fs',
  tolerance: { relative: 1e-9, why: 'values to ten digits' },
});
for (const name of ['fc', 'Qtc', 'alpha'] as const) {
  check(`enclosure.closed-resonance.${name}`, {
    formula: 'enclosure/closedResonance',
    source: poles,
    status: 'derived',
    kind: 'program',
    given: physicalGiven,
    got: (given) => closedResonance(physicalBox(given), paperAir)[name],
    expected: motions.map((row) => row[name]),
    unit: name === 'fc' ? 'Hz' : '1',
    tolerance: { relative: 1e-14, why: 'poles in double precision' },
  });
}
check('enclosure.compliance.adiabatic', {
  formula: 'enclosure/boxCompliance',
  air: standardAir,
  source: { key: 'openstax_up1', locator: 'adiabatic law, p V^γ: V/(γ p), with γ 1.4 at 101,325 Pa' },
  status: 'derived',
  kind: 'standard',
  given: { V: { value: [1, 50, 1000], unit: 'L' } },
  got: ({ V }) => boxCompliance(V / 1e3, 1, standardAir),
  expected: [1e-3, 0.05, 1].map((V) => V / (1.4 * 101325)),
  unit: 'm³/Pa',
  tolerance: { relative: 1e-3, why: 'the γ of moist air is lower by less than that' },
});
check('enclosure.compliance', {
  formula: 'enclosure/boxCompliance',
  source: { key: 'small1972closed1', locator: 'Vas = rho c² Cas, the volume as compliant as Cas; 1.18 kg/m³, 345 m/s' },
  status: 'derived',
  kind: 'standard',
  given: { V: { value: [1, 50, 1000], unit: 'L' } },
  // 1 m³ over 1.18 · 345² Pa = 140449.5 Pa.
  got: ({ V }) => boxCompliance(V / 1e3, 1, airOf(1.18, 345)),
  expected: [7.1199969e-9, 3.5599984e-7, 7.1199969e-6],
  unit: 'm³/Pa',
  tolerance: { relative: 1e-7, why: 'eight digits' },
});

check('enclosure.closed.losses', {
  formula: 'enclosure/closedBox',
  air: airOf(1.2, 343),
  source: {
    key: 'small1973vented1',
    locator: 'definitions of QL and QA, taken at fc: QL/(ωc Cab), 1/(ωc Cab QA); 1.2 kg/m³, 343 m/s',
  },
  status: 'derived',
  kind: 'standard',
  given: { QL: { value: 15, unit: '1' }, QA: { value: 10, unit: '1' }, fillGain: { value: 1.2, unit: '1' } },
  got: ({ QL, QA, fillGain }) => {
    const drivers = driver({
      Sd: '330 cm²',
      Mms: '86 g',
      Cms: '0.4 mm/N',
      Rms: '3.6 N·s/m',
      Re: '5.6 ohm',
      Bl: '14.3 T·m',
    });
    const { values } = closedBox({ drivers, netVolume: '40 L', QL, QA, fillGain }, airOf(1.2, 343)).network;
    return ['Cab', 'leak', 'absorption'].map((name) => values[name] as number);
  },
  // Cab = 1.2 · 0.04/(1.2 · 343²), ωc² = (1/Cms + Sd²/Cab)/Mms, worked out apart.
  expected: [3.3999439e-7, 171323.63, 1142.1576],
  unit: 'm³/Pa, Pa·s/m³',
  tolerance: { relative: 1e-7, why: 'eight digits' },
});

for (const [name, drop] of [
  ['f3', 3],
  ['f6', 6],
  ['f10', 10],
] as const) {
  check(`response.features.${name}`, {
    formula: 'response/features',
    source,
    status: 'derived',
    kind: 'table',
    given: { Qtc: { value: Qtc, unit: '1' }, drop: { value: drop, unit: 'dB, half power for 3' } },
    got: ({ Qtc }) => (features(closedOf({ Qtc, fc }))[name] ?? Number.NaN) / fc,
    expected: column(name) as number[],
    unit: `${name}/fc`,
    tolerance: tenDigits,
  });
}
check('response.features.ripple', {
  formula: 'response/features',
  source: { key: 'small1972closed1', locator: 'peak of the response, and half power below the asymptote' },
  status: 'derived',
  kind: 'table',
  given: { Qtc: { value: [1, 1.5], unit: '1' } },
  got: ({ Qtc }) => features(closedOf({ Qtc, fc })).ripple,
  expected: [4.25968732272, 7.04365036223],
  unit: 'dB',
  tolerance: { absolute: 1e-11, why: 'values to twelve digits' },
});
