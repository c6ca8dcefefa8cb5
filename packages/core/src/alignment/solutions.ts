import { resonanceInAir } from '../driver/resonance.js';
import { type DrivenSpec, totalQ } from '../enclosure/index.js';
import { type Impossible, impossible } from '../fault/index.js';
import type { FreeParameter, TargetPolynomial } from './alignment.js';
import { byParameter } from './by-parameter.js';
import { everyRoot, type ShapeRoot, startsOf, walkToShape } from './roots.js';
import type { ShapedBox } from './shaped-box.js';
import { canBeBuilt, fill, numbersOf, resistanceUnknown, type Sought, trialOf, withResistance } from './unknowns.js';

/** The equations of a target for the boxes of a driver. */
export interface Equations<Spec> {
  readonly name: string;
  readonly target: TargetPolynomial;
  readonly free: FreeParameter | undefined;
  readonly order: number;
  readonly box: ShapedBox;
  readonly spec: Spec;
  readonly sought: readonly Sought<Spec>[];
  readonly addResistance: boolean;
  /** For people: whether the losses of the box are in the equations. */
  readonly under: 'with these losses' | 'without its losses';
}

/** All solutions, or why there is none. */
export type Solutions<Spec> = { readonly ok: true; readonly roots: readonly ShapeRoot<Spec>[] } | Impossible;

/** The factor of a resistance that is there already: no one can add a ten-millionth of that of a coil. */
const isOne = (factor: number): boolean => Math.abs(factor - 1) < 1e-7;

const solved = <Spec>(roots: readonly ShapeRoot<Spec>[]): Solutions<Spec> => ({ ok: true, roots });

/** Total quality factor of the driver of a spec, at its resonance, with so many times its coil resistance. */
function qualityFactor(spec: DrivenSpec, factor: number): number {
  return totalQ(withResistance(spec, factor), 2 * Math.PI * resonanceInAir(spec.drivers.equivalent));
}

const digits = (value: number): string => value.toPrecision(3);

/**
 * The boxes whose responses have the shape of a target. As many numbers must be open as there are equations: those of the box,
 * with the parameter of the target, or with a resistance in front of the driver.
 */
export function solutions<Spec extends DrivenSpec>(equations: Equations<Spec>): Solutions<Spec> {
  const { name, target, free, order, box, spec, sought } = equations;
  const missing = order - 1 - sought.length;
  if (missing === 1) return free === undefined ? ofOneDriver(equations) : ofAnyDriver(equations, free);
  if (missing === 0 && free === undefined) {
    const roots = everyRoot(walkToShape(target, box, spec, sought, 0), startsOf(sought));
    return roots.length > 0 ? solved(roots) : beyondTheBox(equations);
  }
  const open = [...sought.map((one) => one.name), ...(free ? ['the parameter of the alignment'] : [])];
  const which = open.length === 0 ? '' : `: ${open.join(', ')}`;
  const numbers = order === 2 ? 'number' : 'numbers';
  const text = `${name} needs ${order - 1} ${numbers} that it may choose; this box leaves ${open.length}${which}.${missing <= 0 && free ? ' State one of them.' : ''}`;
  return impossible('other-unknowns', text);
}

/** The parameter of the target is taken from the driver. */
function ofAnyDriver<Spec extends DrivenSpec>(
  { name, target, box, spec, sought, under }: Equations<Spec>,
  free: FreeParameter,
): Solutions<Spec> {
  const { roots, reached } = byParameter(target, free, box, spec, sought, resistanceUnknown(spec));
  if (roots.length > 0) return solved(roots);
  if (reached === undefined) return impossible('no-box', `No box ${under} has the response of ${name}.`);
  const [least, most] = reached.map(({ resistance }) => qualityFactor(spec, Math.exp(resistance))) as [number, number];
  const has = qualityFactor(spec, 1);
  const text = beyond(has, least, most, name, under);
  if (text === undefined) return impossible('other-driver', unreached(has, name, under));
  const { place } = reached[has > most ? 1 : 0];
  const last = fill(sought, trialOf(spec), (i) => Math.exp(place[i]!));
  const less = canBeBuilt(sought, last) ? '' : ` That one cannot be built: its box has ${lessThanNone(sought, last)}.`;
  return impossible('other-driver', text + less);
}

/** What a box has too little of, for people. */
export function lessThanNone<Spec>(sought: readonly Sought<Spec>[], spec: Spec): string {
  const { name } = sought.find(({ canBe }) => canBe?.(spec) === false)!;
  return `${name} ${digits(numbersOf(spec)[name]!)} in SI units, which is less than none`;
}

const unreached = (has: number, name: string, under: string): string =>
  `A total Q of ${digits(has)} does not reach ${name} in any box ${under}.`;

/** Beyond which end of what an alignment takes a total quality factor is, if it is. */
function beyond(has: number, least: number, most: number, name: string, under: string): string | undefined {
  const bound = has > most ? `above ${digits(most)}, the highest` : `below ${digits(least)}, the lowest`;
  const isBeyond = (has > most || has < least) && Number.isFinite(least);
  return isBeyond ? `A total Q of ${digits(has)} is ${bound} that ${name} takes ${under}.` : undefined;
}

/** The target suits one total quality factor alone. */
function ofOneDriver<Spec extends DrivenSpec>(equations: Equations<Spec>): Solutions<Spec> {
  const { name, target, box, spec, sought, addResistance, under } = equations;
  const all = [...sought, resistanceUnknown(spec)];
  const roots = everyRoot(walkToShape(target, box, spec, all, 0), startsOf(all));
  const factors = roots.map(({ place }) => Math.exp(place.at(-1)!));
  const suited = roots.flatMap((root, i) => {
    const factor = factors[i]!;
    if (!isOne(factor) && !(addResistance && factor > 1)) return [];
    const { place, frequency } = root;
    return {
      place: place.slice(0, -1),
      frequency,
      spec: withResistance({ ...root.spec, drivers: spec.drivers }, isOne(factor) ? 1 : factor),
    };
  });
  if (suited.length > 0) return solved(suited);
  if (roots.length === 0) return impossible('no-box', `No box ${under} has the response of ${name}.`);
  const quality = factors.map((factor) => digits(qualityFactor(spec, factor)));
  const built = quality.filter((_, i) => canBeBuilt(sought, roots[i]!.spec));
  if (built.length === 0) {
    const text = `At the total Q of ${quality[0]} that ${name} takes, its box has ${lessThanNone(sought, roots[0]!.spec)}.`;
    return impossible('less-than-none', text);
  }
  const needed = built.join(' or ');
  const has = digits(qualityFactor(spec, 1));
  return impossible('other-driver', `${name} takes a total Q of ${needed} ${under}; the driver has ${has}.`);
}

/** The driver cannot reach the target even in the largest or the smallest box. */
function beyondTheBox<Spec extends DrivenSpec>({
  name,
  target,
  box,
  spec,
  sought,
  under,
}: Equations<Spec>): Solutions<Spec> {
  const [open, ...others] = sought as [Sought<Spec>, ...Sought<Spec>[]];
  const resistance = resistanceUnknown(spec);
  const bounds = [1e-4, 1e4].flatMap((size) => {
    const held = fill([open], trialOf(spec), () => size * open.starts[0]!);
    const all = [...others, resistance];
    const roots = everyRoot(walkToShape(target, box, held, all, 0), startsOf(all));
    return roots.map(({ place }) => qualityFactor(spec, Math.exp(place.at(-1)!)));
  });
  const has = qualityFactor(spec, 1);
  const text = beyond(has, Math.min(...bounds), Math.max(...bounds), name, under) ?? unreached(has, name, under);
  return impossible('other-driver', text);
}
