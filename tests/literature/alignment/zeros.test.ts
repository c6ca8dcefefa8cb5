/** Boxes with zeros of their own, band-passes and the low shelf, against what the alignments ask of the level, solved apart. */
import {
  type Alignment,
  bandPass,
  butterworth,
  chebyshev,
  lowShelf,
  quasiThirdOrder,
  sixthOrderBandPass,
  solveAlignment,
} from '@airspring/core/alignment';
import {
  closedBox,
  type Family,
  fourthOrderBandPassFamily,
  parallelBandPassFamily,
  passiveRadiatorFamily,
  seriesBandPassFamily,
  ventedFamily,
} from '@airspring/core/enclosure';
import { frequencyGrid, si } from '@airspring/core/quantity';
import { levelCrossings, referenceLevel, respond } from '@airspring/core/response';
import { checkIn } from '../../ledger/check.js';
import bands from '../enclosure/band-pass.json' with { type: 'json' };
import radiators from '../enclosure/passive-radiators.json' with { type: 'json' };
import { fs, paperAir, physical, split } from '../enclosure/textbook.js';
import table from './zeros.json' with { type: 'json' };

const check = checkIn(paperAir);

const Vas = 0.06;
const air = paperAir;
const driverOf = (Qts: number) => physical({ fs, ...split(Qts), Vas, Sd: 0.033, Re: 5.6 }, air);
const tolerance = { relative: 1e-10, why: 'the solution apart has twelve digits' };
const mpmath = (locator: string) => ({ key: 'mpmath', locator: `zeros.py: ${locator}` });

/** The numbers of the box that is found, the first of all: by field, with f3, the upper edge and the parameters. */
function boxOf(type: Alignment, family: Family<never, never>, input: object, addResistance = false) {
  const found = solveAlignment(type, family as never, input as never, { air, addResistance });
  if (!found.ok) throw new Error(found.because[0]?.text);
  const { f3, upper, parameters, system, deviation } = found;
  const edge = (one: typeof upper) => (one?.ok ? one.frequency / fs : Number.NaN);
  const spec = system.spec as unknown as Readonly<Record<string, number>>;
  return { ...spec, ...parameters, f3: edge(f3), upper: edge(upper), off: deviation!.greatest, system };
}
type Row = readonly [...number[]];

table.shelf.forEach(([depth, QL, Qts, ...expected], i) => {
  check(`alignment.low-shelf.${i}`, {
    formula: 'alignment/lowShelf',
    source: mpmath('a level without slope and curvature at the depth; alpha, h, f3/fs, y1'),
    status: 'derived',
    kind: 'program',
    given: { depth: { value: depth!, unit: 'dB' }, QL: { value: QL!, unit: '1, 0 for no leak' } },
    got: (row) => {
      const input = { drivers: driverOf(Qts!), ...(row.QL > 0 && { QL: row.QL }) };
      const { netVolume, fb, f3, y1 } = boxOf(lowShelf(row.depth), ventedFamily as never, input) as never as Record<
        string,
        number
      >;
      return [Vas / netVolume!, fb! / fs, f3!, y1!];
    },
    expected,
    unit: '1',
    tolerance,
  });
});

/** The shape for its two numbers: a damping and a width, a width, a depth and the middle of the shelf. */
const makes: Readonly<Record<string, (one: number) => readonly [string, Alignment]>> = {
  BP4: (S) => ['bandPass', bandPass({ S })],
  BP6: () => ['sixthOrderBandPass', sixthOrderBandPass()],
  LS4: (depth) => ['lowShelf', lowShelf(depth)],
};
(table.targets as never as readonly (readonly [string, number, number, ...number[]])[]).forEach(
  ([name, one, two, ...expected]) => {
    const [formula] = makes[name]!(one);
    const free = name === 'BP6' ? one : two;
    check(`alignment.shape.${formula}.${one}`, {
      formula: `alignment/${formula}`,
      source: mpmath('the denominator from its definition, expanded or by its roots'),
      status: 'derived',
      kind: 'program',
      given: { free: { value: free, unit: '1' } },
      got: (row) => {
        const [, { target }] = makes[name]!(one);
        return typeof target === 'function' ? target(row.free) : [];
      },
      expected,
      unit: '1',
      tolerance,
    });
  },
);

/** A radiator of so many times the compliance of the driver, with a resonance of 0.8 fs and a Q there. */
function radiatorOf(kappa: number, Q = 8, Sd = 0.05) {
  const Cms = (Vas * kappa) / (air.density * air.speedOfSound ** 2 * Sd ** 2);
  const w = 2 * Math.PI * 0.8 * fs;
  const Mms = 1 / (w * w * Cms);
  return {
    Sd: si('coneArea', Sd),
    Cms: si('compliance', Cms),
    Mms: si('mass', Mms),
    Rms: si('mechanicalResistance', (w * Mms) / Q),
  };
}
/** alpha, the acoustic mass of the radiators over that of the driver, f3/fs, and the ripple where there is one. */
function radiatorBox(type: Alignment, Qts: number, radiator: ReturnType<typeof radiatorOf>, addResistance = false) {
  const drivers = driverOf(Qts);
  const box = boxOf(type, passiveRadiatorFamily as never, { drivers, radiator }, addResistance);
  const { netVolume, addedMass, f3, ripple } = box as never as Record<string, number>;
  const mass = (radiator.Mms + addedMass!) / radiator.Sd ** 2 / (drivers.Mms / drivers.Sd ** 2);
  return { values: [Vas / netVolume!, mass, f3!, ...(ripple === undefined ? [] : [ripple])], system: box.system };
}
for (const [name, type, rows] of [
  ['quasiThirdOrder', quasiThirdOrder, table.quasi],
  ['chebyshev', chebyshev(4), table.ripple],
] as const) {
  (rows as readonly Row[]).forEach(([kappa, Q, Qts, ...expected], i) => {
    check(`alignment.radiator.${name}.${i}`, {
      formula: `alignment/${name}`,
      source: mpmath('flat to the third power of 1/ω², or equal tops and a dip to the level far above'),
      status: 'derived',
      kind: 'program',
      given: { kappa: { value: kappa!, unit: '1' }, Q: { value: Q!, unit: '1' } },
      got: (row) => radiatorBox(type, Qts!, radiatorOf(row.kappa, row.Q)).values,
      expected,
      unit: '1, ripple in dB',
      tolerance: { relative: 1e-10, why: 'the solution apart has twelve digits' },
    });
  });
}

// Without losses, to eight digits: the largest total quality factor that a maximally flat box takes.
radiators.rows.forEach(([delta, Qts, h, alpha, f3, fp]) => {
  check(`alignment.radiator.flat.${delta}`, {
    formula: 'alignment/butterworth',
    source: { key: 'small1974pr1', locator: 'response function; maximally flat' },
    status: 'derived',
    kind: 'table',
    given: { delta: { value: delta!, unit: '1' }, alpha: { value: alpha!, unit: '1' } },
    got: (row) => {
      const radiator = { ...radiatorOf(row.delta / row.alpha), Mms: si('mass', 1e-3) };
      const lossless = { ...radiator, Rms: si('mechanicalResistance', 1e-6) };
      const { values, system } = radiatorBox(butterworth(4), 0.8 * Qts!, lossless, true);
      const { drivers, sourceResistance } = system.spec as never as {
        readonly drivers: { readonly equivalent: ReturnType<typeof driverOf> };
        readonly sourceResistance: number;
      };
      const { Rms, Bl, Re, Mms } = drivers.equivalent;
      const QT = (2 * Math.PI * fs * Mms) / (Rms + Bl ** 2 / (Re + sourceResistance));
      const notch = 1 / Math.sqrt((values[1]! * row.delta) / row.alpha);
      return [QT, notch * Math.sqrt(1 + row.delta), values[0]!, values[2]!, notch];
    },
    expected: [Qts!, h!, alpha!, f3!, fp!],
    unit: '1',
    tolerance: { relative: 3e-7, why: 'the table has eight digits, for the compliance ratios as well' },
  });
});

/** Rear and front alpha, tuning, and both edges over fs. */
function fourth(type: Alignment, Qts: number, QL: number) {
  const input = { drivers: driverOf(Qts), ...(QL > 0 && { frontQL: QL }) };
  const box = boxOf(type, fourthOrderBandPassFamily as never, input);
  const { rearVolume, frontVolume, frontTuning, f3, upper } = box as never as Record<string, number>;
  return { values: [Vas / rearVolume!, Vas / frontVolume!, frontTuning! / fs, f3!, upper!], system: box.system };
}
(table.geddes as readonly Row[]).forEach(([S, Q, QL, Qts, ...expected], i) => {
  check(`alignment.band-pass.leak.${i}`, {
    formula: 'alignment/bandPass',
    source: mpmath('two equal tops, and the ripple below them in the middle'),
    status: 'derived',
    kind: 'program',
    given: {
      S: { value: S!, unit: '1' },
      Q: { value: Q!, unit: '1' },
      QL: { value: QL!, unit: '1, 0 for no leak' },
    },
    got: (row) => fourth(bandPass({ S: row.S, Q: row.Q }), Qts!, row.QL).values,
    expected,
    unit: '1',
    tolerance,
  });
});

// fl/f0, fu/f0 and the ripple, counted from the middle; gain in the middle over the level of the driver in a closed box.
(bands.rows as readonly Row[]).forEach(([S, Q, lower, upper, ripple, gain]) => {
  const Qts = 0.42;
  check(`alignment.band-pass.table.${S}.${Q}`, {
    formula: 'alignment/bandPass',
    source: { key: 'geddes1989', locator: 'symmetrical fourth-order band-pass' },
    status: 'derived',
    kind: 'table',
    given: { S: { value: S!, unit: '1' }, Q: { value: Q!, unit: '1' } },
    got: (row) => {
      const type = bandPass({ S: row.S, Q: row.Q });
      const { values, system } = fourth(type, Qts, 0);
      const f0 = values[2]! * fs;
      const reference = { frequency: si('frequency', f0) };
      const edges = levelCrossings(system as never, {
        reference,
        from: si('frequency', f0 / 8),
        to: si('frequency', 8 * f0),
      });
      const { levelHalfSpace } = respond(system as never, frequencyGrid([f0]), {
        driveVoltageRms: si('voltageRms', 1),
      });
      const plain = closedBox({ drivers: driverOf(Qts), netVolume: si('volume', Vas) }, air);
      return [
        edges[0]! / f0,
        edges.at(-1)! / f0,
        1 + type.parameters.ripple!,
        1 + levelHalfSpace[0]! - referenceLevel(plain as never),
        Vas / values[1]! / (2 * row.S * Qts) ** 2,
      ];
    },
    expected: [lower!, upper!, 1 + ripple!, 1 + gain!, Vas],
    unit: '1; ripple and gain in dB, each with 1 dB added',
    tolerance: { relative: 1e-9, why: 'the table has ten digits' },
  });
});
// Read in print: b is that of a fall by 3.000 dB from the middle, which half power widens by a thousandth.
check('alignment.band-pass.printed', {
  formula: 'alignment/bandPass',
  source: { key: 'bandpasspage1998', locator: 'list of S and ripple; front volume (2 S Qts)² Vas' },
  status: 'seen',
  kind: 'table',
  given: { S: { value: [0.6, 0.5], unit: '1' } },
  got: ({ S }) => bandPass({ S }).parameters.ripple!,
  printed: ['0.35', '1.25'],
  unit: 'dB',
});

// At half power each of these is wider by a thousandth.
check('alignment.band-pass.printed.bandwidth', {
  formula: 'alignment/bandPass',
  source: { key: 'bandpasspage1998', locator: 'list of S and b' },
  status: 'seen',
  kind: 'table',
  given: { S: { value: [0.7, 0.6, 0.5], unit: '1' } },
  got: ({ S }) => {
    const Qts = 0.42;
    const { system, values } = fourth(bandPass({ S, Q: 0.75 }), Qts, 0);
    const edges = levelCrossings(system as never, {
      reference: { frequency: si('frequency', values[2]! * fs) },
      to: si('frequency', 1000),
    });
    return ((edges.at(-1)! - edges[0]!) * Qts) / fs;
  },
  printed: ['0.7206', '0.956', '1.2712'],
  unit: '(fu − fl) Qts/fs',
  tolerance: { relative: 1.3e-3, why: 'print is for a fall by 3.000 dB, and half power is 3.0103 dB' },
});

const sixth = { parallel: parallelBandPassFamily, series: seriesBandPassFamily };
type SixthRow = readonly [keyof typeof sixth, ...number[]];
for (const [kind, ripple, QL, Qts, ...expected] of [
  ...table.flat,
  ...table.rippled,
] as unknown as readonly SixthRow[]) {
  check(`alignment.band-pass.sixth.${kind}.${ripple}.${QL}.${Qts}`, {
    formula: 'alignment/sixthOrderBandPass',
    source: mpmath('five derivatives without value in the middle, or three equal tops and two equal dips; bandwidth'),
    status: 'derived',
    kind: 'program',
    given: { ripple: { value: ripple!, unit: 'dB' }, QL: { value: QL!, unit: '1, 0 for no leak' } },
    got: (row) => {
      const type = sixthOrderBandPass(row.ripple > 0 ? { ripple: row.ripple } : {});
      const input = { drivers: driverOf(Qts!), ...(row.QL > 0 && { rearQL: row.QL, frontQL: row.QL }) };
      const { rearVolume, rearTuning, frontVolume, frontTuning, f3, upper, bandwidth } = boxOf(
        type,
        sixth[kind] as never,
        input,
      ) as never as Record<string, number>;
      const box = [Vas / rearVolume!, rearTuning! / fs, Vas / frontVolume!, frontTuning! / fs, f3!, upper!];
      // The solution apart tells the bandwidth of flat boxes without leaks.
      return expected.length > box.length ? [...box, bandwidth!] : box;
    },
    expected,
    unit: '1',
    tolerance: { relative: 1e-10, why: 'the solution apart has twelve digits' },
  });
}
