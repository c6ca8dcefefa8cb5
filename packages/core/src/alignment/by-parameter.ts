import type { DrivenSpec } from '../enclosure/index.js';
import { boundedMinimum, linear, signChanges } from '../numeric/index.js';
import type { FreeParameter, TargetPolynomial } from './alignment.js';
import { everyRoot, type ShapeRoot, startsOf, walkToShape } from './roots.js';
import type { ShapedBox } from './shaped-box.js';
import type { Sought } from './unknowns.js';

/** One parameter of a target, and the total quality factor that its box needs over that of the driver, as a logarithm. */
export interface Sample {
  readonly parameter: number;
  readonly quality: number;
  readonly place: Float64Array;
}

/**
 * Boxes of a target with a free parameter: those that fit the driver, and for each stretch of the parameter that has boxes, those
 * that need the least and the greatest total quality factor.
 */
export interface ByParameter<Spec> {
  readonly roots: readonly ShapeRoot<Spec>[];
  readonly reached: readonly (readonly [least: Sample, most: Sample])[];
}

/** Enough to tell whether a sample needs more or less than the driver has. */
const ROUGHLY = { tolerance: 1e-3, mostSteps: 12 };
/** The same from two samples close by: a walk that needs more steps is beyond the end of the stretch. */
const NEARBY = { tolerance: 1e-3, mostSteps: 6 };
/** For a solution, and for the ends of a range, which are reported. */
const CLOSELY = { tolerance: 1e-7, mostSteps: 12 };
/** A quality factor that is nearer to that of the driver has to be known closely. */
const NEAR = 0.02;

/** Where the next sample should lie by a straight line through the last two. */
function ahead(before: readonly Sample[], parameter: number): readonly ArrayLike<number>[] {
  const [a, b] = before;
  if (a === undefined) return [];
  if (b === undefined || b.parameter === a.parameter) return [a.place];
  const part = (parameter - b.parameter) / (b.parameter - a.parameter);
  return [b.place.map((value, i) => value + part * (value - a.place[i]!)), b.place];
}

/** Number of parameters tried over the range. `withTurns` finds where the quality factor turns back between two of them. */
const SAMPLES = 9;

/**
 * Follows the boxes of a target over its parameter, each with the total quality factor that it needs. Those that need what the
 * driver has are the solutions. The ranges of the others say which drivers the target suits. They are the same for drivers that
 * differ in their damping alone: a driver within a reported range does find a box.
 */
export function byParameter<Spec extends DrivenSpec>(
  target: TargetPolynomial,
  { from, to }: FreeParameter,
  box: ShapedBox,
  spec: Spec,
  sought: readonly Sought<Spec>[],
  quality: Sought<Spec>,
  has: number,
): ByParameter<Spec> {
  const all = [...sought, quality];
  const own = Math.log(has);
  const sampleOf = (parameter: number, place: Float64Array): Sample => ({
    parameter,
    place,
    quality: place[sought.length]! - own,
  });
  const walk = walkToShape(target, box, spec, all);
  let before: readonly Sample[] = [];
  const sampleAt: SampleAt = (parameter, near = before, isEnd = false) => {
    for (const start of startsNear(near, parameter, isEnd)) {
      const rough = walk.place(start, parameter, isEnd ? NEARBY : ROUGHLY);
      const isClear =
        !isEnd && parameter > from && parameter < to && Math.abs((rough?.[sought.length] ?? own) - own) > NEAR;
      const place = isClear || rough === undefined ? rough : walk.place(rough, parameter, CLOSELY);
      if (place === undefined) continue;
      const sample = sampleOf(parameter, place);
      before = [...near.slice(-1), sample];
      return sample;
    }
    return undefined;
  };
  function* startsNear(near: readonly Sample[], parameter: number, isEnd: boolean): Generator<ArrayLike<number>> {
    yield* ahead(near, parameter);
    // At the end of a stretch, a box found from any other start would belong to another stretch.
    if (isEnd) return;
    for (const start of startsOf(all)) {
      yield start;
      if (near.length > 0) return;
    }
  }
  const parameters = Array.from(linear(from, to, SAMPLES));
  const middle = (SAMPLES - 1) / 2;
  /** The stretches of samples that hang together with one in the middle, or with the first that is found. */
  const along = (first: Sample | undefined): readonly (readonly Sample[])[] => {
    before = first === undefined ? [] : [first];
    // From the middle outwards: at an end there may be no box, and every start would be tried in vain.
    const lower = parameters
      .slice(0, middle + 1)
      .reverse()
      .map((parameter, i) => (i === 0 && first !== undefined ? first : sampleAt(parameter)));
    before = lower[0] === undefined ? [] : [lower[0]];
    const upper = parameters.slice(middle + 1).map((parameter) => sampleAt(parameter));
    return stretchesOf(parameters, [...lower.reverse(), ...upper], sampleAt).map((one) => withTurns(one, sampleAt));
  };
  const crossings = (samples: readonly Sample[]) =>
    signChanges(samples.map((sample) => sample.quality)).map((i) => {
      const a = samples[i]!;
      const b = samples[i + 1] ?? a;
      const part = a.quality === 0 ? 0 : a.quality / (a.quality - b.quality);
      const between = (x: number, y: number) => x + part * (y - x);
      const place = Array.from(sought, (_, k) => between(a.place[k]!, b.place[k]!));
      return [...place, between(a.parameter, b.parameter)];
    });
  const stretches = middles().flatMap(along);
  const reached = stretches.map((samples) => {
    const byNeed = samples.toSorted((a, b) => a.quality - b.quality);
    return [byNeed[0]!, byNeed.at(-1)!] as const;
  });
  return { roots: everyRoot(walkToShape(target, box, spec, sought), stretches.flatMap(crossings), undefined), reached };

  /** The samples at the middle parameter, to be followed to both sides. A box without zeros and with two open numbers has one alone. */
  function middles(): readonly (Sample | undefined)[] {
    if (sought.length < 3 && box.numerator === undefined) return [undefined];
    const parameter = parameters[middle]!;
    const found = everyRoot(walk, startsOf(all), parameter, CLOSELY);
    const samples = found.map(({ place }) => sampleOf(parameter, place));
    return samples.length === 0 ? [undefined] : samples;
  }
}

/** Finds a sample near others. At the end of a stretch, or where it turns, it is found closely, since that value is reported. */
type SampleAt = (parameter: number, near?: readonly Sample[], isEnd?: boolean) => Sample | undefined;

/** Halvings of the step between a sample and a parameter that has none. */
const HALVINGS = 12;

/** The samples that were found, stretch by stretch, each with those up to the edges beyond which no box has the shape. */
function stretchesOf(
  parameters: readonly number[],
  sampled: readonly (Sample | undefined)[],
  sampleAt: SampleAt,
): readonly (readonly Sample[])[] {
  const towards = (i: number, way: 1 | -1): readonly Sample[] => {
    const [inner, last, next] = [sampled[i - way], sampled[i]!, parameters[i + way]];
    if (next === undefined) return [];
    const found = inner === undefined ? [last] : [inner, last];
    const start = found.length;
    let beyond = next;
    for (let turn = 0; turn < HALVINGS; turn++) {
      const parameter = (found.at(-1)!.parameter + beyond) / 2;
      const sample = sampleAt(parameter, found.slice(-2), true);
      if (sample === undefined) beyond = parameter;
      else found.push(sample);
    }
    return found.slice(start);
  };
  return sampled.flatMap((sample, from) => {
    if (sample === undefined || sampled[from - 1] !== undefined) return [];
    const end = sampled.indexOf(undefined, from);
    const to = end < 0 ? sampled.length : end;
    const within = sampled.slice(from, to) as readonly Sample[];
    return [[...towards(from, -1).toReversed(), ...within, ...towards(to - 1, 1)]];
  });
}

/** The samples, with those added at which the quality factor turns back before it reaches that of the driver. */
function withTurns(samples: readonly Sample[], sampleAt: SampleAt): readonly Sample[] {
  return samples.flatMap((sample, i) => {
    const [before, after] = [samples[i - 1], samples[i + 1]];
    if (before === undefined || after === undefined) return sample;
    const side = Math.sign(sample.quality);
    const turns = [before, after].every((other) => side * other.quality >= side * sample.quality);
    if (!turns || side === 0) return sample;
    const away = (parameter: number) => side * (sampleAt(parameter, undefined, true)?.quality ?? Number.NaN);
    const turn = sampleAt(boundedMinimum(away, before.parameter, after.parameter).x, undefined, true);
    if (turn === undefined) return sample;
    return turn.parameter < sample.parameter ? [turn, sample] : [sample, turn];
  });
}
