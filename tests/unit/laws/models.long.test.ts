/** Our models of coils and suspensions obey their laws, each planted liar breaks the law named for it, and boxes with models obey theirs. */

import { standardAir } from '@airspring/core/air';
import {
  type CoilModel,
  coilOverFrequency,
  constantSuspension,
  fourParameterInductor,
  hystereticDamping,
  inductor,
  logarithmicCreep,
  lossyInductor,
  lr2Inductor,
  type SuspensionModel,
  semiInductor,
  suspensionOverFrequency,
} from '@airspring/core/driver';
import { closedFamily, infiniteBaffleFamily, mixedFamily, ventedFamily } from '@airspring/core/enclosure';
import {
  type By,
  coilLaws,
  familyLaws,
  lawElementLaws,
  rescaledAir,
  rescaledDriver,
  suspensionLaws,
} from '@airspring/core/laws';
import { si } from '@airspring/core/quantity';
import { describe, expect, test } from 'vitest';
import { brokenLaws, closed, driver, mixed, reasons, rescaledClosed, rescaledVented, vented, walled } from './boxes.js';

const lossy = lossyInductor({ K: 0.02, exponent: 0.7 });
const lr2 = lr2Inductor({ Le: '0.3 mH', R2: '6 ohm', L2: '0.8 mH' });
const creep = logarithmicCreep({ lambda: 0.1, at: '27 Hz' });

describe('ours', () => {
  test.each<[string, CoilModel]>([
    ['inductor', inductor({ Le: '0.9 mH' })],
    ['LR-2', lr2],
    ['LR-2 without Le', lr2Inductor({ R2: '6 ohm', L2: '0.8 mH' })],
    ['lossy inductor', lossy],
    ['eddy currents alone', lossyInductor({ K: 0.05, exponent: 0.5 })],
    ['without loss', lossyInductor({ K: 0.001, exponent: 1 })],
    ['hardly a coil', lossyInductor({ K: 2, exponent: 0.05 })],
    ['four parameters', fourParameterInductor({ Kr: 0.0022, Xr: 0.75, Ki: 0.0048, Xi: 0.76 })],
    ['semi-inductor', semiInductor({ Leb: '0.1 mH', Le: '1 mH', K: 0.03, Rss: '50 ohm' })],
    ['semi-inductor within the iron', semiInductor({ Leb: '0 mH', Le: '2 mH', K: 0.06, Rss: '200 ohm' })],
  ])('%s', (_, model) => {
    expect(reasons(coilLaws(model))).toEqual([]);
    expect(reasons(coilLaws(model.scaled(2, 3)))).toEqual([]);
  });
  test.each<[string, SuspensionModel]>([
    ['constant', constantSuspension],
    ['creep', creep],
    ['hysteretic damping', hystereticDamping({ lossFactor: 0.2 })],
  ])('%s', (_, model) => {
    expect(reasons(suspensionLaws(model))).toEqual([]);
    expect(reasons(suspensionLaws(model.scaled(3)))).toEqual([]);
  });
});

/** The lossy inductor with a change to its formula, and a scaling that fits. */
const coil = (change: Partial<CoilModel>): CoilModel => coilOverFrequency({ ...lossy, scaled: () => lossy, ...change });
const filling =
  (
    own: CoilModel['impedance'],
    change: (out: Float64Array, w: number, parameters: ArrayLike<number>) => void,
  ): CoilModel['impedance'] =>
  (parameters, w, out) => {
    own(parameters, w, out);
    change(out, w, parameters);
  };
const changed = (change: (out: Float64Array, w: number, parameters: ArrayLike<number>) => void): CoilModel =>
  coil({ impedance: filling(lossy.impedance, change) });
let calls = 0;

describe('planted liars among coils', () => {
  test.each<[string, string, CoilModel]>([
    ['one that amplifies', 'a coil gives no power', changed((out) => (out[0] = -out[0]!))],
    ['exp(−jωt)', 'a coil stores as a coil does', changed((out) => (out[1] = -out[1]!))],
    ['Re within it', 'nothing but Re for direct current', changed((out) => (out[0]! += 5.6))],
    ['a capacitor in series', 'nothing but Re for direct current', changed((out, w) => (out[1]! += 1e3 / w))],
    [
      'not a number at 20 Hz',
      'finite, and the same at each call',
      changed((out, w) => (out[0] = Math.abs(w - 40 * Math.PI) < 1e-6 ? Number.NaN : out[0]!)),
    ],
    ['other at each call', 'finite, and the same at each call', changed((out) => (out[0]! *= 1 + 1e-9 * ++calls))],
    ['a step at 1 kHz', 'no jump', changed((out, w) => (out[0]! *= w > 6300 ? 1.02 : 1))],
    ['a parameter that does nothing', 'each parameter matters', coil({ parameters: { ...lossy.parameters, Rss: 50 } })],
    [
      'numbers that it overwrites',
      'changes nothing that it reads',
      changed((_, __, parameters) => ((parameters as Float64Array)[0]! *= 1.02)),
    ],
    [
      'slope by frequency 2 % off',
      'its slope is that of its values',
      coil({ slopes: filling(lossy.slopes!, (out) => (out[0]! *= 1.02)) }),
    ],
    [
      'slope by exponent left out',
      'its slopes by parameters are those of its values',
      coil({ slopes: filling(lossy.slopes!, (out) => out.fill(0, 4)) }),
    ],
    [
      'scaled by the inverse',
      'scaled, it is the same coil',
      coil({ scaled: (impedance, time) => lossy.scaled(1 / impedance, time) }),
    ],
    ['times forgotten', 'scaled, it is the same coil', coil({ scaled: (impedance) => lossy.scaled(impedance, 1) })],
    ['nobody', 'sources named', coil({ sources: [] })],
    ['without a name', 'a name and finite numbers', coil({ name: '' })],
    ['a name left out', 'a name and finite numbers', coil({ name: undefined as never })],
    ['sources left out', 'sources named', coil({ sources: undefined as never })],
    ['an infinite number', 'a name and finite numbers', coil({ parameters: { K: Infinity, exponent: 0.7 } })],
    ['neither circuit nor element', 'stands in a network', { ...lossy, element: undefined } as unknown as CoilModel],
    ['both', 'stands in a network', { ...lr2, element: lossy.element! }],
    [
      'an element of another coil',
      'its element is its impedance',
      { ...lossy, element: coil({ impedance: filling(lossy.impedance, (out) => (out[1]! *= 1.02)) }).element! },
    ],
    [
      'an element that plays in the reference',
      'its element is its impedance',
      {
        ...lossy,
        element: (name, nodes) => {
          const { inReference: _, ...law } = lossy.element!(name, nodes);
          return law;
        },
      },
    ],
    [
      'an admittance',
      'its element is its impedance',
      { ...lossy, element: (name, nodes) => ({ ...lossy.element!(name, nodes), stands: 'admittance' }) },
    ],
    [
      'R2 and L2 in series',
      'its circuit is its impedance',
      {
        ...lr2,
        circuit: lr2.circuit!.map((one) =>
          one.parameter === 'L2'
            ? { ...one, joints: [1, 3] as const }
            : one.parameter === 'R2'
              ? { ...one, joints: [2, 3] as const }
              : one,
        ),
      },
    ],
    ['a parameter without a branch', 'its circuit is its impedance', { ...lr2, circuit: lr2.circuit!.slice(1) }],
    [
      'the name of Re',
      'its circuit is its impedance',
      {
        ...inductor({ Le: '1 mH' }),
        parameters: { Re: 1e-3 },
        circuit: [{ kind: 'inductor', parameter: 'Re', joints: [0, 1] }],
      },
    ],
  ])('%s: %s', (_, law, liar) => {
    expect(brokenLaws(coilLaws(liar))).toContain(law);
  });
});

const suspension = (change: Partial<SuspensionModel>): SuspensionModel =>
  suspensionOverFrequency({ ...creep, scaled: () => creep, ...change });
const bent = (change: (out: Float64Array, w: number, parameters: ArrayLike<number>) => void): SuspensionModel =>
  suspension({ compliance: filling(creep.compliance, change) });

describe('planted liars among suspensions', () => {
  test.each<[string, string, SuspensionModel]>([
    ['one that amplifies', 'a suspension gives no power', bent((out) => (out[1] = -out[1]!))],
    ['compliance in m/N', 'a spring of about Cms', bent((out) => out.forEach((one, i) => (out[i] = 4e-4 * one)))],
    ['stiffness for compliance', 'no softer as frequency rises', bent((out) => (out[0] = 1 / out[0]!))],
    ['not a number', 'finite, and the same at each call', bent((out, w) => (out[0] = w > 1e4 ? Number.NaN : out[0]!))],
    ['other at each call', 'finite, and the same at each call', bent((out) => (out[0]! *= 1 + 1e-9 * ++calls))],
    ['a step at 1 kHz', 'no jump', bent((out, w) => (out[0]! *= w > 6300 ? 0.9 : 1))],
    [
      'a parameter that does nothing',
      'each parameter matters',
      suspension({ parameters: { ...creep.parameters, age: 3 } }),
    ],
    [
      'numbers that it overwrites',
      'changes nothing that it reads',
      bent((_, __, parameters) => ((parameters as Float64Array)[0]! *= 1.02)),
    ],
    [
      'slope by frequency 2 % off',
      'its slope is that of its values',
      suspension({ slopes: filling(creep.slopes!, (out) => (out[0]! *= 1.5)) }),
    ],
    [
      'slope by lambda left out',
      'its slopes by parameters are those of its values',
      suspension({ slopes: filling(creep.slopes!, (out) => out.fill(0, 2, 4)) }),
    ],
    ['times forgotten', 'scaled, it is the same suspension', suspension({ scaled: () => creep })],
    ['nobody', 'sources named', suspension({ sources: [] })],
    [
      'an infinite number',
      'a name and finite numbers',
      suspension({ parameters: { lambda: Infinity, frequency: 27 } }),
    ],
    [
      'a spring that creeps',
      'in a network it is its compliance',
      { ...creep, element: undefined } as unknown as SuspensionModel,
    ],
    [
      'an impedance',
      'in a network it is its compliance',
      { ...creep, element: (name, nodes) => ({ ...creep.element!(name, nodes), stands: 'impedance' }) },
    ],
    [
      'an element of another suspension',
      'in a network it is its compliance',
      {
        ...creep,
        element: logarithmicCreep({ lambda: 0.1, at: '54 Hz' }).scaled(1).element!,
        parameters: { lambda: 0.1, frequency: 27 },
        compliance: filling(creep.compliance, (out) => (out[0]! *= 1.02)),
      },
    ],
  ])('%s: %s', (_, law, liar) => {
    expect(brokenLaws(suspensionLaws(liar))).toContain(law);
  });
});

test('a slope by a parameter that an element declares falsely', () => {
  const law = lossy.element!('coil', ['a', 'b']);
  const parameterSlope: typeof law.parameterSlope = (parameter, ...rest) => law.parameterSlope!(1 - parameter, ...rest);
  expect(brokenLaws(lawElementLaws({ ...law, parameterSlope }, { values: [0.02, 0.7] }))).toEqual([
    'its slopes by parameters are those of its values',
  ]);
});

describe('boxes with models obey the laws of families', () => {
  const { coil: _, ...bare } = driver;
  const withModels = { ...bare, coil: lossy, suspension: creep };
  const fourth = {
    ...bare,
    coil: fourParameterInductor({ Kr: 0.0022, Xr: 0.75, Ki: 0.0048, Xi: 0.76 }),
    suspension: hystereticDamping({ lossFactor: 0.1 }),
  };
  const frequencies = [29, 0.999999 * 29];
  const rescaled =
    <Spec>(
      made: (by: By) => { readonly spec: Spec; readonly air: typeof standardAir },
      own: typeof withModels | typeof fourth,
    ) =>
    (by: By) => ({ ...made(by), spec: { ...made(by).spec, drivers: rescaledDriver(own, by) } });
  test('vented', () => {
    const spec = { ...vented, drivers: withModels };
    expect(
      reasons(familyLaws({ family: ventedFamily, spec, rescaled: rescaled(rescaledVented, withModels), frequencies })),
    ).toEqual([]);
  });
  test('closed', () => {
    const spec = { ...closed, drivers: fourth };
    expect(reasons(familyLaws({ family: closedFamily, spec, rescaled: rescaled(rescaledClosed, fourth) }))).toEqual([]);
  });
  test('infinite baffle', () => {
    const walls = (by: By) => ({
      spec: { drivers: rescaledDriver(withModels, by), sourceResistance: si('resistance', 0.2 * by([2, 1, -3, -2])) },
      air: rescaledAir(standardAir, by),
    });
    expect(
      reasons(familyLaws({ family: infiniteBaffleFamily, spec: { ...walled, drivers: withModels }, rescaled: walls })),
    ).toEqual([]);
  });
  test('mixed', () => {
    const spec = {
      ...mixed,
      drivers: {
        parallel: [
          { name: 'low', driver: withModels, chamber: 'big' },
          { name: 'high', driver: { ...fourth, Bl: si('forceFactor', 9) }, chamber: 'little' },
        ],
      },
    };
    expect(reasons(familyLaws({ family: mixedFamily, spec, frequencies }))).toEqual([]);
  });
});

test('a model that lacks a part is told which', () => {
  const { impedance: _, ...coil } = lossy;
  const { parameters: __, compliance: ___, ...suspension } = creep;
  const told = [coilLaws(coil as never), suspensionLaws(suspension as never)];
  expect(told.map((laws) => laws.map(({ holds, detail }) => [holds, detail]))).toEqual([
    [[false, 'it lacks impedance, a function']],
    [[false, 'it lacks parameters, a record; compliance, a function']],
  ]);
});
