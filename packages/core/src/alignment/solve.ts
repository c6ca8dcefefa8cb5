import { type Air, readAir, standardAir } from '../air/index.js';
import { resonanceInAir } from '../driver/resonance.js';
import { type DrivenSpec, type Drivers, equivalentDriver, type Family } from '../enclosure/index.js';
import { type Impossible, InputError, impossible, refuse } from '../fault/index.js';
import { readFields, si } from '../quantity/index.js';
import { type AlignmentResult, alignedBox, type Found } from './aligned.js';
import { type Alignment, isBandPass, isGoal } from './alignment.js';
import { boxOfGoal } from './goal.js';
import { type Behind, behindHighPass, highPassUnknowns } from './high-pass.js';
import { leastDeviation, rootMeanSquare } from './least-deviation.js';
import { lossesTold, losslessFirst, withoutLosses, withShareOfLosses } from './lossless-first.js';
import { type AlignmentOptions, isGiven, judgeGoal, judgeInput, optionsShape } from './options.js';
import { judgeAlignment } from './refusals.js';
import type { ShapeRoot } from './roots.js';
import { type ShapedBox, shapedBox, withoutZeros } from './shaped-box.js';
import { type Equations, lessThanNone, solutions } from './solutions.js';
import { boxUnknowns, canBeBuilt, fill, type Sought, trialOf } from './unknowns.js';

/**
 * The box in which a driver has the response of an alignment. The equations of the network are solved coefficient by coefficient,
 * with the losses of the box:
 *
 * $$ \frac{p(s)}{p_\infty} = \frac{s^n}{D(s)}, \quad D(s) \text{ of the alignment, over a frequency that is sought as well} $$
 *
 * A box with zeros of its own has another numerator: a shape that allows for them (`withZeros`) is met with it, and any other as nearly
 * as can be. The edges of a band-pass are counted from its greatest level.
 *
 * An alignment with a free parameter takes it from the driver. One without suits a single total quality factor where the box has a
 * number less to choose than the shape has coefficients, as a vented box has; `addResistance` raises that of the driver to it. More of the
 * same driver do not: in a group every quality factor stays, unless a source resistance stands in front of all of them. Then the wiring
 * decides, and the refusal says which would do. If a
 * coil or a loss in the vent makes the shape impossible, the box deviates from it as little as it can, and the result says by how
 * much. f3 is always that of the whole response.
 *
 * A goal is made as small as it can be, and the result tells its value (`least`). If a number that may be chosen does not change the
 * goal, there is no answer: that number could be anything.
 *
 * @validity families that say which fields of their specs may be chosen, with equal drivers
 * @neglects what the family neglects. Solutions that no start of the family leads to are not found; none is known. Where a shape has
 *   several ways of being met, those that have a box in the middle of the range of a free parameter are followed. A goal is sought
 *   from one start
 * @returns the boxes, each with its deviation and f3, or why there is none
 * @throws InputError `unknown-field`, `inconsistent`, `conflict`, `empty`, `not-finite`, and those of the family
 * @source small1973vented1 method of alignment, there for a leak alone
 * @example solveAlignment(quasiThirdOrder, ventedFamily, { drivers: driver, QL: 7 })
 */
export function solveAlignment<Spec extends DrivenSpec, Input>(
  alignment: Alignment,
  family: Family<Spec, Input>,
  input: Partial<Input> & { readonly drivers: Drivers },
  options: AlignmentOptions = {},
): AlignmentResult<Spec> {
  const read = readFields('options', options, optionsShape);
  const { air = standardAir, addResistance = false, highPass, norm = rootMeanSquare, band } = read;
  const medium = readAir(air);
  refuse([...judgeAlignment(alignment), ...judgeInput(input)]);
  refuse(judgeGoal(alignment, read));
  const { target, order, name, free, parameters } = alignment;
  const driver = equivalentDriver(input.drivers);
  const open = (family.unknowns ?? []).filter(({ field }) => !isGiven(input, field));
  // Any number will do until the spec is read.
  const placeholders = Object.fromEntries(open.map(({ field }) => [field, 1]));
  const unsized = family.read({ ...input, ...placeholders } as Input);
  const inBox = boxUnknowns(open, unsized, medium);
  const spec = fill(inBox, trialOf(unsized), (i) => inBox[i]!.starts[0]!);
  const sought: readonly Sought<Behind<Spec>>[] =
    highPass === undefined ? inBox : [...inBox, ...highPassUnknowns<Spec>(highPass.order, resonanceInAir(driver))];
  const aligned = (found: Found<Spec>) => alignedBox(alignment, family, medium, found);
  if (isGoal(target)) {
    const best = boxOfGoal(name, target, family, spec, inBox, medium);
    if (!best.ok) return best;
    return {
      ok: true,
      ...aligned({
        trial: best.spec,
        least: best.least,
        near: resonanceInAir(driver),
        bandPass: (shapedBox(family, best.spec, medium)?.above ?? 0) > 0,
      }),
      others: [],
    };
  }
  const losses = family.losses ?? [];
  const shaped = (one: Spec) => {
    const bare = shapedBox(family, one, medium);
    const box = bare && highPass ? behindHighPass(bare, highPass.order) : bare;
    return box && !alignment.withZeros ? withoutZeros(box) : box;
  };
  const whole = shaped(spec);
  // A leak raises the order of a closed box. Then the box without losses is where the search for the least deviation begins.
  const start = isOfOrder(alignment, whole) ? spec : withoutLosses(spec, losses);
  const box = start === spec ? whole : shaped(start);
  if (box === undefined || !isOfOrder(alignment, box)) return otherOrder(alignment, box);
  const under = start === spec ? lossesTold(spec, losses) : 'without its losses';
  const equations: Equations<Behind<Spec>> = {
    name,
    target,
    free,
    order,
    box,
    spec: start,
    sought,
    addResistance,
    under,
  };
  const found = solutions(equations);
  if (!found.ok) {
    refuseOwnDriver(family, start, medium);
    return found;
  }
  const buildable = found.roots.filter((root) => canBeBuilt(sought, root.spec));
  if (buildable.length === 0)
    return impossible('less-than-none', `The box of ${name} has ${lessThanNone(sought, found.roots[0]!.spec)}.`);
  const rootsAt = (share: number): readonly ShapeRoot<Behind<Spec>>[] => {
    const one = solutions({ ...equations, spec: withShareOfLosses(start, losses, share) });
    return one.ok ? one.roots : [];
  };
  const lost = Object.fromEntries(Object.entries(spec).filter(([field]) => losses.includes(field)));
  const [first, ...others] = losslessFirst(buildable, rootsAt).map((root) => {
    const exact = box.exact && start === spec;
    const from = { ...root, spec: { ...root.spec, ...lost } };
    // Resistance that was added is a part of its own.
    const parts = from.spec.sourceResistance === start.sourceResistance && start === spec ? box : shaped(from.spec)!;
    const { told, fit } = leastDeviation(
      { ...alignment, target },
      family,
      box,
      parts,
      sought,
      from.spec,
      medium,
      norm,
      band,
    );
    const { root: best, deviation } = exact ? told(from) : fit(from);
    const decided = free && { ...parameters, ...free.told(best.place.at(-1)!) };
    const [first] = target(free === undefined ? 0 : best.place.at(-1)!);
    // A shape that allows for zeros is told over this frequency.
    const near = box.numerator ? best.frequency : best.frequency * first! ** (1 / order);
    return aligned({
      trial: best.spec,
      near,
      parameters: decided,
      deviation,
      compiled: parts.whole(),
      bandPass: isBandPass(alignment),
    });
  });
  return { ok: true, ...first!, others };
}

/** Refuses a family whose networks keep the driver that they were first made with: then no other driver can be tried. */
function refuseOwnDriver<Spec extends DrivenSpec>(family: Family<Spec, never>, spec: Spec, air: Air): void {
  const numbersOf = (drivers: Spec['drivers']): string => {
    const numbers: unknown[] = [];
    family.values({ ...spec, drivers }, air, (...set) => numbers.push(set));
    return JSON.stringify(numbers);
  };
  const { drivers } = spec;
  const { Re } = drivers.equivalent;
  const other = { ...drivers, equivalent: { ...drivers.equivalent, Re: si('resistance', 2 * Re) } };
  if (numbersOf(drivers) !== numbersOf(other)) return;
  const [path, expected] = [
    'family.values',
    'numbers that follow spec.drivers.equivalent, as equivalentDriver(drivers) does',
  ];
  throw new InputError([
    { code: 'inconsistent', path, got: family.name, expected, remedy: 'Pass it to setDirectRadiator.' },
  ]);
}

/** Whether a box has the order of an alignment, below its band and above it. */
const isOfOrder = (alignment: Alignment, box: ShapedBox | undefined): boolean =>
  box?.order === alignment.order &&
  (isBandPass(alignment) ? box.below === alignment.orderBelow && box.above > 0 : box.above === 0);

/** Why a box cannot have the shape of an alignment. */
function otherOrder({ name, order, orderBelow = order }: Alignment, box: ShapedBox | undefined): Impossible {
  const told = (all: number, below: number) =>
    all === below ? `order ${all}` : `order ${all}, of which ${below} are below its band`;
  const got = box === undefined ? 'is no polynomial' : `has ${told(box.order, box.above > 0 ? box.below : box.order)}`;
  return impossible('other-order', `${name} has ${told(order, orderBelow)}; the response of this box ${got}.`);
}
