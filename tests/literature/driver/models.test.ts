/** Coil and suspension models against their formulas, worked out to 40 digits by models.py. */
import {
  type CoilFormula,
  type CoilModel,
  coilOverFrequency,
  fourParameterInductor,
  hystereticDamping,
  inductor,
  logarithmicCreep,
  lossyInductor,
  lr2Inductor,
  type SuspensionFormula,
  type SuspensionModel,
  semiInductor,
  suspensionOverFrequency,
} from '@airspring/core/driver';
import type { Law } from '@airspring/core/network';
import { complexColumn } from '@airspring/core/numeric';
import { check } from '../../ledger/check.js';
import { type Complex, over, times } from '../complex.js';
import models from './models.json';

interface Case {
  readonly model: string;
  readonly parameters: Readonly<Record<string, number | undefined>>;
  readonly f: number;
  readonly value: readonly number[];
  readonly slopes: readonly (readonly number[])[];
}

/** A number of zero is told apart from rounding by this, of the greatest of its list. */
const exact = { relative: 2e-14, why: 'closed forms of the same numbers' };

const pairs = (fill: CoilFormula['impedance'], parameters: object, f: number, count: number): readonly number[] => {
  const out = new Float64Array(2 * count);
  fill(Float64Array.from(Object.values(parameters)), 2 * Math.PI * f, out);
  return [...out];
};

/** The columns of an element at one frequency: what it fills, by ln f, and by each parameter. */
function filled(law: Law, numbers: readonly number[], f: number): readonly number[] {
  const at = [Float64Array.from(numbers), 0, Float64Array.of(f)] as const;
  const columns = Array.from({ length: 2 + numbers.length }, () => complexColumn(1));
  law.fill(...at, columns[0]!);
  law.slope?.(...at, columns[1]!);
  for (let k = 0; k < numbers.length; k++) law.parameterSlope?.(k, ...at, columns[2 + k]!);
  return columns.flatMap(({ re, im }) => [re[0]!, im[0]!]);
}

/** Everything that is not zero by its formula. */
const solid = (list: readonly number[], expected: readonly number[]) =>
  list.filter((_, i) => Math.abs(expected[i]!) > 1e-12);

const law = { key: 'leach2002', locator: 'lossy inductance Z = K (jω)ⁿ' };
const elementary = {
  key: 'desoer1969',
  locator: 'impedance of an inductor, of a resistor, in series and side by side',
};
const coils = {
  inductor: [
    ({ Le }: Record<string, number>) => inductor({ Le } as never),
    { key: 'small1972direct', locator: 'Re and Le in series' },
  ],
  lossyInductor: [({ K, exponent }) => lossyInductor({ K, exponent } as never), law],
  fourParameterInductor: [
    (input) => fourParameterInductor(input as never),
    { key: 'wright1990', locator: 'empirical model, form quoted in the introduction of leach2002' },
  ],
  semiInductor: [
    (input) => semiInductor(input as never),
    { ...elementary, locator: `${elementary.locator}; semi-inductance K √(jω) of vanderkooy1989, quoted by leach2002` },
  ],
  lr2Inductor: [(input) => lr2Inductor(input as never), elementary],
} as const satisfies Readonly<
  Record<
    string,
    readonly [(input: Record<string, number>) => CoilModel, { readonly key: string; readonly locator: string }]
  >
>;
const suspensions = {
  logarithmicCreep: [
    ({ lambda, frequency }: Record<string, number>) => logarithmicCreep({ lambda, at: frequency } as never),
    {
      key: 'mpmath',
      locator: 'transform of a compliance that grows by λ Cms in each decade of time; script models.py',
    },
  ],
  hystereticDamping: [
    (input) => hystereticDamping(input as never),
    { key: 'crandall1970', locator: 'hysteretic damping: complex stiffness k (1 + jη)' },
  ],
} as const satisfies Readonly<
  Record<
    string,
    readonly [(input: Record<string, number>) => SuspensionModel, { readonly key: string; readonly locator: string }]
  >
>;

const casesOf = (list: readonly unknown[], name: string) =>
  (list as readonly Case[]).filter(({ model }) => model === name);
const told = (list: readonly Case[]) => ({
  parameters: { value: [...new Set(list.map(({ parameters }) => JSON.stringify(parameters)))].join(', '), unit: 'SI' },
  frequency: { value: [...new Set(list.map(({ f }) => f))].join(', '), unit: 'Hz' },
});
const numbersOf = ({ parameters }: Case) => parameters as Record<string, number>;

for (const [name, [make, source]] of Object.entries(coils)) {
  const list = casesOf(models.coils, name);
  const shared = {
    formula: `driver/${name}`,
    source,
    status: 'derived',
    kind: 'example',
    given: told(list),
    unit: 'Ω',
  } as const;
  const expectedOf = ({ value, slopes }: Case) => [...value, ...slopes.flat()];
  check(`driver.${name}.impedance`, {
    ...shared,
    got: () =>
      list.flatMap((one) =>
        solid(pairs(make(numbersOf(one)).impedance, make(numbersOf(one)).parameters, one.f, 1), one.value),
      ),
    expected: list.flatMap(({ value }) => solid(value, value)),
    tolerance: exact,
  });
  check(`driver.${name}.scaled`, {
    ...shared,
    given: { ...shared.given, impedance: { value: 3, unit: '1' }, time: { value: 2, unit: '1' } },
    got: () =>
      list.flatMap((one) => {
        const model = make(numbersOf(one)).scaled(3, 2);
        return solid(pairs(model.impedance, model.parameters, one.f / 2, 1), one.value);
      }),
    expected: list.flatMap(({ value }) => solid(value, value).map((x) => 3 * x)),
    tolerance: exact,
  });
  // By the numbers as they were given; the check above takes those that the model keeps.
  check(`driver.${name}.impedance-of-numbers`, {
    ...shared,
    got: () => list.flatMap((one) => solid(pairs(make(numbersOf(one)).impedance, numbersOf(one), one.f, 1), one.value)),
    expected: list.flatMap(({ value }) => solid(value, value)),
    tolerance: exact,
  });
  const { slopes, element } = make(numbersOf(list[0]!));
  if (slopes === undefined || element === undefined) continue;
  check(`driver.${name}.slopes`, {
    ...shared,
    given: { ...shared.given, by: { value: 'ln f, then each parameter', unit: '' } },
    got: () =>
      list.flatMap((one) => {
        const model = make(numbersOf(one));
        return solid(pairs(model.slopes!, model.parameters, one.f, one.slopes.length), one.slopes.flat());
      }),
    expected: list.flatMap(({ slopes }) => solid(slopes.flat(), slopes.flat())),
    tolerance: exact,
  });
  check(`driver.${name}.element`, {
    ...shared,
    got: () =>
      list.flatMap((one) => {
        const model = make(numbersOf(one));
        const got = filled(model.element!('coil', ['a', 'b']), Object.values(model.parameters), one.f);
        return solid(got, expectedOf(one));
      }),
    expected: list.flatMap((one) => solid(expectedOf(one), expectedOf(one))),
    tolerance: exact,
  });
  check(`driver.coilOverFrequency.${name}`, {
    ...shared,
    formula: 'driver/coilOverFrequency',
    got: () =>
      list.flatMap((one) => {
        const { element: _, ...formula } = make(numbersOf(one));
        const model = coilOverFrequency(formula);
        const again = model.scaled(1, 1);
        const numbers = Object.values(again.parameters);
        return [
          ...solid(filled(model.element!('coil', ['a', 'b']), Object.values(model.parameters), one.f), expectedOf(one)),
          ...solid(pairs(model.impedance, model.parameters, one.f, 1), one.value),
          ...solid(pairs(model.slopes!, numbers, one.f, one.slopes.length), one.slopes.flat()),
          ...solid(pairs(again.impedance, numbers, one.f, 1), one.value),
        ];
      }),
    expected: list.flatMap((one) => [
      ...solid(expectedOf(one), expectedOf(one)),
      ...solid(one.value, one.value),
      ...solid(one.slopes.flat(), one.slopes.flat()),
      ...solid(one.value, one.value),
    ]),
    tolerance: exact,
  });
}

// The arrangement is recalled from the paper: a check of its own kind, beside those of the elements.
const whole = casesOf(models.coils, 'semiInductor');
check('driver.semiInductor.arrangement', {
  formula: 'driver/semiInductor',
  source: {
    key: 'thorborg2008',
    locator: 'equivalent circuit: Leb in series with Le, semi-inductor and Rss side by side',
  },
  status: 'memory',
  kind: 'example',
  given: told(whole),
  got: () => whole.flatMap((one) => pairs(semiInductor(numbersOf(one) as never).impedance, numbersOf(one), one.f, 1)),
  expected: whole.flatMap(({ value }) => value),
  unit: 'Ω',
  tolerance: exact,
});
const alone = casesOf(models.coils, 'semiInductorAlone');
check('driver.semiInductor.eddy-currents-alone', {
  formula: 'driver/semiInductor',
  source: {
    key: 'vanderkooy1989',
    locator: 'eddy currents in the pole piece: Z = K √(jω), quoted in the introduction of leach2002',
  },
  status: 'derived',
  kind: 'example',
  given: told(alone),
  got: () => alone.flatMap((one) => pairs(semiInductor(numbersOf(one) as never).impedance, numbersOf(one), one.f, 1)),
  expected: alone.flatMap(({ value }) => value),
  unit: 'Ω',
  tolerance: { relative: 1e-5, why: 'a thousand henry and 10⁹ Ω beside it take a few millionths' },
});
check('driver.lr2Inductor.recalled', {
  formula: 'driver/lr2Inductor',
  source: { key: 'dodd2004', locator: 'LR-2 model: Le in series with R2 and L2 side by side' },
  status: 'memory',
  kind: 'example',
  given: told(casesOf(models.coils, 'lr2Inductor')),
  got: () =>
    casesOf(models.coils, 'lr2Inductor').flatMap((one) =>
      pairs(lr2Inductor(numbersOf(one) as never).impedance, numbersOf(one), one.f, 1),
    ),
  expected: casesOf(models.coils, 'lr2Inductor').flatMap(({ value }) => value),
  unit: 'Ω',
  tolerance: exact,
});

const Cms = 4e-4;
/** What the element of a suspension fills, from c and its slopes: Y = 1/(jω Cms c). */
function admittance({ value: [a = 0, b = 0], slopes, f }: Case): readonly number[] {
  const w = 2 * Math.PI * f;
  const size = w * Cms * (a * a + b * b);
  const Y: Complex = [-b / size, -a / size];
  const relative = slopes.map((one) => over(one as unknown as Complex, [a, b]));
  const [first = [0, 0] as const, ...rest] = relative;
  return [
    Y,
    times(Y, [-1 - first[0], -first[1]]),
    times(Y, [-1 / Cms, 0]),
    ...rest.map(([p, q]) => times(Y, [-p, -q])),
  ].flat();
}
/** Rounding of a sum of which nothing is left. */
const overSize = (list: readonly number[]) => {
  const most = Math.max(...list.map(Math.abs));
  return list.map((x) => (Math.abs(x) < 1e-13 * most ? 0 : x));
};

// The form is recalled from the paper: a check of its own kind, beside that of the transform.
const creeping = casesOf(models.suspensions, 'logarithmicCreep');
check('driver.logarithmicCreep.recalled', {
  formula: 'driver/logarithmicCreep',
  source: {
    key: 'knudsen1993',
    locator: 'LOG model of creep: C = C0 (1 − λ log10(jω/ω0)); abstract read, form recalled',
  },
  status: 'memory',
  kind: 'example',
  given: told(creeping),
  got: () =>
    creeping.flatMap((one) => {
      const [make] = suspensions.logarithmicCreep;
      return pairs(make(numbersOf(one)).compliance, make(numbersOf(one)).parameters, one.f, 1);
    }),
  expected: creeping.flatMap(({ f, parameters: { lambda = Number.NaN, frequency = Number.NaN } }) => [
    1 - lambda * Math.log10(f / frequency),
    (-lambda * Math.PI) / (2 * Math.LN10),
  ]),
  unit: '1',
  tolerance: exact,
});

for (const [name, [make, source]] of Object.entries(suspensions)) {
  const list = casesOf(models.suspensions, name);
  const shared = {
    formula: `driver/${name}`,
    source,
    status: 'derived',
    kind: 'example',
    given: told(list),
    unit: '1, N·s/m',
  } as const;
  const formulaOf = (one: Case, make: (input: Record<string, number>) => SuspensionModel) => make(numbersOf(one));
  const row = (model: SuspensionModel, one: Case) => {
    const numbers = Object.values(model.parameters);
    const again = model.scaled(2);
    const expected = overSize(admittance(one));
    return [
      ...pairs(model.compliance, model.parameters, one.f, 1),
      ...pairs(again.compliance, again.parameters, one.f / 2, 1),
      ...solid(pairs(model.slopes!, model.parameters, one.f, one.slopes.length), one.slopes.flat()),
      ...solid(filled(model.element!('suspension', ['a', 'b']), [Cms, ...numbers], one.f), expected),
    ];
  };
  const expected = list.flatMap((one) => [
    ...one.value,
    ...one.value,
    ...solid(one.slopes.flat(), one.slopes.flat()),
    ...solid(overSize(admittance(one)), overSize(admittance(one))),
  ]);
  check(`driver.${name}.compliance`, {
    ...shared,
    got: () => list.flatMap((one) => row(formulaOf(one, make), one)),
    expected,
    tolerance: exact,
  });
  check(`driver.suspensionOverFrequency.${name}`, {
    ...shared,
    formula: 'driver/suspensionOverFrequency',
    got: () =>
      list.flatMap((one) => {
        const { element: _, ...formula }: SuspensionFormula & { readonly element?: unknown } = formulaOf(one, make);
        return row(suspensionOverFrequency(formula), one);
      }),
    expected,
    tolerance: exact,
  });
}
