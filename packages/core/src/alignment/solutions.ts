import type { DrivenSpec } from '../enclosure/index.js';
import { type Impossible, impossible } from '../fault/index.js';
import type { FreeParameter, TargetPolynomial } from './alignment.js';
import { byParameter, type Sample } from './by-parameter.js';
import { everyRoot, type ShapeRoot, startsOf, walkToShape } from './roots.js';
import type { ShapedBox } from './shaped-box.js';
import {
  canBeBuilt,
  driverQ,
  fill,
  mechanicalQ,
  numbersOf,
  qualityUnknown,
  resistanceFactor,
  type Sought,
  trialOf,
  withResistance,
} from './unknowns.js';

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
  /** For people: which losses of the box are in the equations, such as 'at QL 7'. */
  readonly under: string;
}

/** All solutions, or why there is none. */
export type Solutions<Spec> = { readonly ok: true; readonly roots: readonly ShapeRoot<Spec>[] } | Impossible;

/** Whether no resistance has to be added: a ten-millionth of that of a coil is rounding. */
const isOne = (factor: number): boolean => Math.abs(factor - 1) < 1e-7;

const solved = <Spec>(roots: readonly ShapeRoot<Spec>[]): Solutions<Spec> => ({ ok: true, roots });

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
    const roots = everyRoot(walkToShape(target, box, spec, sought), startsOf(sought), 0);
    return roots.length > 0 ? solved(roots) : beyondTheBox(equations);
  }
  const open = [...sought.map((one) => one.name), ...(free ? [freeText(free, missing <= 0)] : [])];
  const which = open.length === 0 ? '' : `: ${open.join(', ')}`;
  const numbers = order === 2 ? 'number' : 'numbers';
  const text = `${name} needs ${order - 1} ${numbers} that it may choose; this box leaves ${open.length}${which}.${missing <= 0 && free ? ' State one of them.' : ''}`;
  return impossible('other-unknowns', text);
}

/** The parameter that an alignment leaves open, as people know it, with its range where it may be stated: 'the parameter Q (0.1 to 3)'. */
function freeText({ from, to, told }: FreeParameter, ranges: boolean): string {
  const [first, last] = [told(from), told(to)];
  const short = (value: number) => String(Number(value.toPrecision(3)));
  const names = Object.keys(first).map((name) => {
    const [low, high] = [first[name]!, last[name]!].toSorted((a, b) => a - b) as [number, number];
    return ranges ? `${name} (${short(low)} to ${short(high)})` : name;
  });
  return `the parameter ${names.join(' or ')}`;
}

/** The parameter of the target is taken from the driver. */
function ofAnyDriver<Spec extends DrivenSpec>(
  { name, target, box, spec, sought, under }: Equations<Spec>,
  free: FreeParameter,
): Solutions<Spec> {
  const has = driverQ(spec);
  const { roots, reached } = byParameter(target, free, box, spec, sought, qualityUnknown(spec), has);
  if (roots.length > 0) return solved(roots);
  if (reached.length === 0) return impossible('no-box', noBox(name, under));
  const next = neighbours(reached);
  if (next === undefined) return impossible('other-driver', unreached(has, name, under));
  const { below, above } = next;
  const [most, least] = [below, above].map((sample) => sample && has * Math.exp(sample.quality));
  const cannot = [below, above].flatMap((sample) => {
    const last = sample && fill(sought, trialOf(spec), (i) => Math.exp(sample.place[i]!));
    return last === undefined || canBeBuilt(sought, last) ? [] : lessThanNone(sought, last);
  });
  const less = cannot.map((what) => ` That one cannot be built: its box has ${what}.`).join('');
  return impossible('other-driver', beyond(has, least, most, name, under) + less);
}

/** The boxes whose total quality factors are next to that of the driver, below it and above it; none if it lies within a stretch. */
function neighbours(
  reached: readonly (readonly [least: Sample, most: Sample])[],
): { readonly below: Sample | undefined; readonly above: Sample | undefined } | undefined {
  const under = reached.map(([, most]) => most).filter(({ quality }) => quality < 0);
  const over = reached.map(([least]) => least).filter(({ quality }) => quality > 0);
  if (under.length + over.length < reached.length) return undefined;
  const nearest = (samples: readonly Sample[]) =>
    samples.toSorted((a, b) => Math.abs(a.quality) - Math.abs(b.quality))[0];
  return { below: nearest(under), above: nearest(over) };
}

/** The number of a box that came out negative, in words. */
export function lessThanNone<Spec>(sought: readonly Sought<Spec>[], spec: Spec): string {
  const { name } = sought.find(({ canBe }) => canBe?.(spec) === false)!;
  return `${name} ${digits(numbersOf(spec)[name]!)} in SI units, which is less than none`;
}

const noBox = (name: string, under: string): string => `No box ${under} was found that has the response of ${name}.`;

const unreached = (has: number, name: string, under: string): string =>
  `No box ${under} was found in which a total Q of ${digits(has)} reaches ${name}.`;

/** A rounded end may lie outside its range by no more than this: the box at the end itself has no size. */
const ROUNDING = 1e-5;

/** Three digits of the end of a range, rounded into it where rounding would lead out of it. */
function endOf(value: number, inwards: 1 | -1): string {
  const rounded = Number(digits(value));
  const isOutside = inwards * (rounded / value - 1) < -ROUNDING;
  return digits(isOutside ? rounded + inwards * 10 ** (Math.floor(Math.log10(value)) - 2) : rounded);
}

/** Says at which end a total quality factor lies outside the range of an alignment. */
function beyond(has: number, least: number | undefined, most: number | undefined, name: string, under: string): string {
  const [low, high] = [least && endOf(least, 1), most && endOf(most, -1)];
  if (low && high)
    return `${name} takes a total Q up to ${high} and again from ${low} ${under}; the driver has ${digits(has)}.`;
  const own = digits(has);
  if (own === high || own === low)
    return `A total Q of ${own} is just ${high ? 'above the highest' : 'below the lowest'} that ${name} takes ${under}.`;
  const bound = high ? `above ${high}, the highest` : `below ${low}, the lowest`;
  return `A total Q of ${digits(has)} is ${bound} that ${name} takes ${under}.`;
}

/** The solutions of a target that suits one total quality factor alone. */
function ofOneDriver<Spec extends DrivenSpec>(equations: Equations<Spec>): Solutions<Spec> {
  const { name, target, box, spec, sought, addResistance, under } = equations;
  const all = [...sought, qualityUnknown(spec)];
  const roots = everyRoot(walkToShape(target, box, spec, all), startsOf(all), 0);
  const taken = roots.map(({ place }) => Math.exp(place.at(-1)!));
  const suited = roots.flatMap((root, i) => {
    const factor = resistanceFactor(spec, taken[i]!);
    if (!isOne(factor) && !(addResistance && factor > 1)) return [];
    const { place, frequency } = root;
    return {
      place: place.slice(0, -1),
      frequency,
      spec: withResistance({ ...root.spec, drivers: spec.drivers }, isOne(factor) ? 1 : factor),
    };
  });
  if (suited.length > 0) return solved(suited);
  if (roots.length === 0) return impossible('no-box', noBox(name, under));
  const quality = taken.map(digits);
  const built = quality.filter((_, i) => canBeBuilt(sought, roots[i]!.spec));
  if (built.length === 0) {
    const text = `At the total Q of ${quality[0]} that ${name} takes, its box has ${lessThanNone(sought, roots[0]!.spec)}.`;
    return impossible('less-than-none', text);
  }
  const needed = built.join(' or ');
  const mechanical = mechanicalQ(spec);
  const capped = taken.every((Q) => Q > mechanical) ? `, and its Qms of ${digits(mechanical)} allows no more` : '';
  const has = digits(driverQ(spec));
  const text = `${name} takes a total Q of ${needed} ${under}; the driver has ${has}${capped}.`;
  return {
    ok: false,
    because: [
      { code: 'other-driver', text },
      { code: 'alike-drivers', text: moreDrivers(spec, taken) },
    ],
  };
}

/**
 * What more drivers of the same type would change. Their masses, stiffnesses and motors grow alike, so that their quality factors stay.
 * Only a resistance in front of all of them weighs more on coils in parallel and less on coils in series:
 * Re + Rg/r = f Re + Rg, for wiring with r times the resistance and the factor f that the coil lacks.
 */
function moreDrivers(spec: DrivenSpec, taken: readonly number[]): string {
  const { sourceResistance: Rg, drivers } = spec;
  const alike = 'More of the same driver have the same total Q, in any number and wiring';
  if (Rg === 0) return `${alike}.`;
  const needed = taken.map((Q) => 1 + ((resistanceFactor(spec, Q) - 1) * drivers.equivalent.Re) / Rg);
  const wired = needed
    .filter((inverse) => inverse > 0 && Number.isFinite(inverse))
    .map((inverse) => digits(1 / inverse));
  const ohms = `the ${digits(Rg)} Ω in front of them`;
  return wired.length === 0
    ? `${alike}: ${ohms} allow no more.`
    : `${alike} that leaves the resistance of their coils as it is; behind ${ohms}, one with ${wired.join(' or ')} times that would have it.`;
}

/** Why the driver cannot reach the target: not even in the largest or the smallest box. */
function beyondTheBox<Spec extends DrivenSpec>({
  name,
  target,
  box,
  spec,
  sought,
  under,
}: Equations<Spec>): Solutions<Spec> {
  const [open, ...others] = sought as [Sought<Spec>, ...Sought<Spec>[]];
  const all = [...others, qualityUnknown(spec)];
  const [first, ...rest] = SIZES.map((size) => {
    const held = fill([open], trialOf(spec), () => size * open.starts[0]!);
    return everyRoot(walkToShape(target, box, held, all), startsOf(all), 0).map(({ place }) => Math.exp(place.at(-1)!));
  });
  const has = driverQ(spec);
  const ends = [...first!, ...rest.at(-1)!];
  const between = rest.flat();
  const [least, most] = [Math.min(...ends), Math.max(...ends)];
  // The quality factor may turn back between the ends. Then these are no bounds.
  if (has > most && between.every((Q) => Q <= most) && most > 0)
    return impossible('other-driver', beyond(has, undefined, most, name, under));
  if (has < least && between.every((Q) => Q >= least) && least < Infinity)
    return impossible('other-driver', beyond(has, least, undefined, name, under));
  return impossible('other-driver', unreached(has, name, under));
}

/** Sizes of one number of a box over its usual one: from nearly zero to nearly infinite. */
const SIZES = [1e-6, 1e-2, 1, 1e2, 1e6] as const;
