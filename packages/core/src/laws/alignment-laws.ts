import type { Alignment } from '../alignment/index.js';
import { driver } from '../driver/index.js';
import { closedBox, type System, ventedBox } from '../enclosure/index.js';
import { polynomialRoots } from '../numeric/index.js';
import { alike, type LawResult, tried } from './law.js';

/** The driver of the boxes for which goals are tried. */
const trial = /* @__PURE__ */ driver({
  Sd: '330 cm²',
  Mms: '72 g',
  Cms: '0.39 mm/N',
  Rms: '3.4 kg/s',
  Re: '5.6 ohm',
  Bl: '20.6 N/A',
});
const SAMPLES = 5;

/** The parameters at which an alignment is tried: over its range, or one that a fixed target does not read. */
const parametersOf = ({ free }: Alignment): readonly number[] =>
  free === undefined
    ? [0]
    : // A range that is no range is told by its own law.
      Array.from({ length: SAMPLES }, (_, i) => free.from + (i / (SAMPLES - 1)) * (free.to - free.from));

/** The first parameter at which something is found, with what was found. */
const firstFault = (alignment: Alignment, fault: (parameter: number) => string | undefined): string | undefined => {
  for (const parameter of parametersOf(alignment)) {
    const found = fault(parameter);
    if (found !== undefined) return alignment.free === undefined ? found : `at ${parameter}: ${found}`;
  }
  return undefined;
};

/** The shape of a target at a parameter; a goal has none. */
const shapeAt = ({ target }: Alignment, parameter: number, numerator?: readonly number[]): readonly number[] =>
  typeof target === 'function' ? target(parameter, numerator) : [];

/** The same over the frequency at which its first coefficient is 1. */
const normalised = (shape: readonly number[]): readonly number[] => {
  const order = shape.length - 1;
  const scale = shape[0]! ** (1 / order);
  return shape.map((value, k) => value * scale ** (k - order));
};

/** The numerator of a box without zeros of its own. */
const plain = ({ order, orderBelow = order }: Alignment): readonly number[] =>
  Array.from({ length: order + 1 }, (_, k) => (k === orderBelow ? 1 : 0));

/** The numerator of a box with a notch far below the poles, or of a band-pass with a leak. */
const withZero = ({ order, orderBelow = order }: Alignment): readonly number[] =>
  plain({ order, orderBelow } as Alignment).map((value, k) => {
    if (orderBelow < order) return k === orderBelow + 1 ? 0.1 / Math.hypot(1, 0.1) : value / Math.hypot(1, 0.1);
    // Two orders alone would have no fall left below a notch.
    if (order < 3) return value;
    return k === order - 2 ? 0.09 : k === order - 1 ? 0.03 : value;
  });

/** Whether a target is the same shape as another, coefficient by coefficient. */
const isSame = (a: readonly number[], b: readonly number[], relative?: number): boolean =>
  a.every((value, i) => alike(value, b[i]!, relative));

/**
 * How closely a shape can be found from its squared magnitude. Each root has its mirror image across the axis, at twice its distance d
 * over its magnitude: rounding by ε moves it by ε / d. The odd coefficients are as small as the distances, so that they move by ε / d².
 */
function closeness(shape: readonly number[]): number {
  const { re, im } = polynomialRoots(shape);
  const nearest = Math.min(...Array.from(re, (x, i) => Math.abs(x) / Math.hypot(x, im[i]!)));
  return Math.max(1e-9, (4 * shape.length * Number.EPSILON) / nearest ** 2);
}

/** Boxes for which a goal must have a value: two of one family, then two of another. */
const boxes = (): readonly System[] => [
  closedBox({ drivers: trial, netVolume: '20 L' }) as System,
  closedBox({ drivers: trial, netVolume: '60 L' }) as System,
  ventedBox({ drivers: trial, netVolume: '20 L', fb: '40 Hz', QL: 7 }) as System,
  ventedBox({ drivers: trial, netVolume: '60 L', fb: '25 Hz', QL: 7 }) as System,
];

/**
 * The laws of every alignment type, including your own. Its target has the degree of its order, positive coefficients, of which the
 * last is 1, and no root that grows. It gives the same shape whenever it is asked. A free parameter has a range, names itself,
 * and changes the shape. A shape that allows for zeros is the same for a box without, and is told over their frequency; any other does
 * not read them. A goal is a number for every box, and another number for another box of the same family.
 *
 * @validity alignments that `solveAlignment` takes
 * @neglects whether the shape is the one that its name says: hold it against its source
 * @returns one result for each law
 * @source zverev1967 ch. 2 (realisable transfer functions)
 * @example alignmentLaws(quasiThirdOrder).every(({ holds }) => holds)
 */
export function alignmentLaws(alignment: Alignment): readonly LawResult[] {
  const { order, target, free } = alignment;
  const extent = free === undefined ? 'its target' : `${SAMPLES} parameters`;
  const named = [
    tried('says its name and its sources', 'once', () =>
      alignment.name.trim() === '' || alignment.sources.length === 0 ? 'no name, or no source' : undefined,
    ),
  ];
  if (typeof target !== 'function') {
    const least = () => boxes().map((system) => target.least(system));
    return [
      ...named,
      tried('a number for every box', 'four boxes', () => {
        const isNumber = (value: unknown) => typeof value === 'number' && !Number.isNaN(value);
        const wrong = least().findIndex((value) => !isNumber(value));
        return wrong < 0 ? undefined : String(least()[wrong]);
      }),
      tried('the same number whenever it is asked', 'twice', () => {
        const again = least();
        return least().every((value, i) => Object.is(value, again[i])) ? undefined : 'another number';
      }),
      tried('a number that the box changes', 'two boxes of two families each', () => {
        const [closed, larger, vented, lower] = least();
        // A goal for one family may be the same for all boxes of another.
        const same = Object.is(closed, larger) && Object.is(vented, lower);
        return same ? `${closed} for two closed boxes, ${vented} for two vented ones` : undefined;
      }),
    ];
  }
  return [
    ...named,
    tried('of its order', extent, () =>
      firstFault(alignment, (parameter) => {
        const { length } = shapeAt(alignment, parameter);
        if (length !== order + 1) return `${length} coefficients for order ${order}`;
        const { orderBelow = 1 } = alignment;
        const isPart = Number.isInteger(orderBelow) && orderBelow >= 1 && orderBelow <= order;
        return isPart ? undefined : `an order of ${orderBelow} below its band`;
      }),
    ),
    tried('one far above', extent, () =>
      firstFault(alignment, (parameter) => {
        const last = shapeAt(alignment, parameter).at(-1);
        return last !== undefined && alike(last, 1) ? undefined : `a last coefficient of ${last}`;
      }),
    ),
    tried('positive', extent, () =>
      firstFault(alignment, (parameter) => {
        const wrong = shapeAt(alignment, parameter).find((value) => !(value > 0 && value < Infinity));
        return wrong === undefined ? undefined : `a coefficient of ${wrong}`;
      }),
    ),
    tried('stable', extent, () =>
      firstFault(alignment, (parameter) => {
        const right = polynomialRoots(shapeAt(alignment, parameter)).re.find((re) => re >= 0);
        return right === undefined ? undefined : `a root with real part ${right}`;
      }),
    ),
    tried('the same shape whenever it is asked', 'twice', () =>
      firstFault(alignment, (parameter) =>
        isSame(shapeAt(alignment, parameter), shapeAt(alignment, parameter)) ? undefined : 'another shape',
      ),
    ),
    ...zeroLaws(alignment, extent),
    ...(free === undefined
      ? []
      : [
          tried('a parameter that says what it is', extent, () =>
            firstFault(alignment, (parameter) => {
              const told = Object.entries(free.told(parameter));
              if (!(free.from < free.to)) return `free: a range from ${free.from} to ${free.to}`;
              const wrong = told.find(([, value]) => !Number.isFinite(value));
              if (wrong !== undefined && parameter !== free.from && parameter !== free.to)
                return `${wrong[0]} ${wrong[1]}`;
              return told.length === 0 ? 'nothing told' : undefined;
            }),
          ),
          tried('a parameter that changes the shape', 'both ends', () =>
            isSame(shapeAt(alignment, free.from), shapeAt(alignment, free.to)) ? 'one shape at both' : undefined,
          ),
        ]),
  ];
}

/** The laws of a shape that allows for the zeros of a box; of any other, that it does not read them. */
function zeroLaws(alignment: Alignment, extent: string): readonly LawResult[] {
  if (!alignment.withZeros)
    return [
      tried('says that it allows for zeros', extent, () =>
        firstFault(alignment, (parameter) =>
          isSame(shapeAt(alignment, parameter, withZero(alignment)), shapeAt(alignment, parameter))
            ? undefined
            : 'another shape for a box with zeros',
        ),
      ),
    ];
  return [
    tried('the same shape for a box without zeros', extent, () =>
      firstFault(alignment, (parameter) => {
        const shape = normalised(shapeAt(alignment, parameter));
        return isSame(shapeAt(alignment, parameter, plain(alignment)), shape, closeness(shape))
          ? undefined
          : 'another shape for a power of s';
      }),
    ),
    tried('told over the frequency of the zeros', extent, () =>
      firstFault(alignment, (parameter) => {
        const shape = shapeAt(alignment, parameter, withZero(alignment));
        const [first, last] = [shape[0]!, shape.at(-1)!];
        if (!(alike(first, 1) && alike(last, 1))) return `from ${first} to ${last}`;
        const right = polynomialRoots(shape).re.find((re) => re >= 0);
        return right === undefined ? undefined : `a root with real part ${right}`;
      }),
    ),
  ];
}
