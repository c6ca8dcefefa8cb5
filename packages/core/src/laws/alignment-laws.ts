import { type Alignment, solveAlignment } from '../alignment/index.js';
import { driver } from '../driver/index.js';
import { closedBox, type System, ventedBox, ventedFamily } from '../enclosure/index.js';
import { linear, polynomialRoots } from '../numeric/index.js';
import { alike, type LawResult, tried } from './law.js';

/** The driver on which alignments are tried: its total quality factor, 0.17, is lower than most take. */
const trial = /* @__PURE__ */ driver({
  Sd: '330 cm²',
  Mms: '72 g',
  Cms: '0.39 mm/N',
  Rms: '3.4 kg/s',
  Re: '5.6 ohm',
  Bl: '20.6 N/A',
});
/** None but the ends is a place where the solver looks on its own. */
const SAMPLES = 6;

/** The parameters at which an alignment is tried: over its range, or one that a fixed target does not read. */
const parametersOf = ({ free }: Alignment): readonly number[] =>
  free === undefined ? [0] : Array.from(linear(free.from, free.to, SAMPLES));

/** The first parameter at which something is found, with what was found. */
const firstFault = (alignment: Alignment, fault: (parameter: number) => string | undefined): string | undefined => {
  for (const parameter of parametersOf(alignment)) {
    const found = fault(parameter);
    if (found !== undefined) return alignment.free === undefined ? found : `at ${parameter}: ${found}`;
  }
  return undefined;
};

/** The shape of a target at a parameter; a goal has none. */
const shapeAt = ({ target }: Alignment, parameter: number): readonly number[] =>
  typeof target === 'function' ? target(parameter) : [];

/** Whether a target is the same shape as another, coefficient by coefficient. */
const isSame = (a: readonly number[], b: readonly number[]): boolean => a.every((value, i) => alike(value, b[i]!));

/** Solving for the driver that a parameter needs, then for the parameter that the driver needs, leads back. */
function wayBack(alignment: Alignment, parameter: number): string | undefined {
  const { free, ...rest } = alignment;
  if (free === undefined || alignment.order !== 4) return undefined;
  const shape = shapeAt(alignment, parameter);
  const fixed = { ...rest, target: () => shape };
  const options = { addResistance: true };
  const box = solveAlignment(fixed, ventedFamily, { drivers: trial }, options);
  if (!box.ok) return undefined;
  const { drivers, sourceResistance } = box.system.spec;
  const back = solveAlignment(alignment, ventedFamily, { drivers, sourceResistance });
  if (!back.ok) return `its driver has no box: ${back.because[0]?.text}`;
  const boxes = [back, ...back.others].map(({ system }) => system.spec);
  const { netVolume, fb } = box.system.spec;
  if (boxes.some((one) => alike(one.netVolume, netVolume, 1e-6) && alike(one.fb, fb, 1e-6))) return undefined;
  return `a box of ${netVolume} m³, ${fb} Hz comes back as ${boxes[0]!.netVolume} m³, ${boxes[0]!.fb} Hz`;
}

/** Boxes for which a goal must have a value. */
const boxes = (): readonly System[] => [
  closedBox({ drivers: trial, netVolume: '20 L' }) as System,
  ventedBox({ drivers: trial, netVolume: '20 L', fb: '40 Hz', QL: 7 }) as System,
];

/**
 * The laws of every alignment type, including your own. Its target has the degree of its order, positive coefficients, of which the
 * last is 1, and no root that grows. It gives the same shape whenever it is asked. A free parameter has a range, names itself,
 * and changes the shape. The driver that a shape needs leads back to that shape. A goal is a number for every box.
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
      tried('a number for every box', 'two boxes', () => {
        const wrong = least().find(Number.isNaN);
        return wrong === undefined ? undefined : 'NaN';
      }),
      tried('the same number whenever it is asked', 'twice', () => {
        const again = least();
        return least().every((value, i) => Object.is(value, again[i])) ? undefined : 'another number';
      }),
    ];
  }
  return [
    ...named,
    tried('of its order', extent, () =>
      firstFault(alignment, (parameter) => {
        const { length } = shapeAt(alignment, parameter);
        return length === order + 1 ? undefined : `${length} coefficients for order ${order}`;
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
    ...(free === undefined
      ? []
      : [
          tried('a parameter that says what it is', extent, () =>
            firstFault(alignment, (parameter) => {
              const told = Object.entries(free.told(parameter));
              if (!(free.from < free.to)) return `a range from ${free.from} to ${free.to}`;
              const wrong = told.find(([, value]) => !Number.isFinite(value));
              if (wrong !== undefined && parameter !== free.from && parameter !== free.to)
                return `${wrong[0]} ${wrong[1]}`;
              return told.length === 0 ? 'nothing told' : undefined;
            }),
          ),
          tried('a parameter that changes the shape', 'both ends', () =>
            isSame(shapeAt(alignment, free.from), shapeAt(alignment, free.to)) ? 'one shape at both' : undefined,
          ),
          tried('solving leads back', 'inside the range, in a vented box', () =>
            firstFault(alignment, (parameter) =>
              parameter === free.from || parameter === free.to ? undefined : wayBack(alignment, parameter),
            ),
          ),
        ]),
  ];
}
