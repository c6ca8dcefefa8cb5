import { broken, type LawResult, tried } from './law.js';

/** What a model of a coil and one of a suspension have in common. */
export interface TriedModel {
  readonly name: string;
  readonly parameters: Readonly<Record<string, number>>;
  readonly sources: readonly string[];
}

/** The law that a model has its parts, where it lacks one: without them no other law can be tried. */
export function lackingPart(
  model: TriedModel,
  functions: Readonly<Record<string, unknown>>,
): readonly LawResult[] | undefined {
  const missing = [
    ...(typeof model.parameters === 'object' ? [] : ['parameters, a record']),
    ...Object.keys(functions).flatMap((name) => (typeof functions[name] === 'function' ? [] : `${name}, a function`)),
  ];
  return missing.length === 0 ? undefined : [broken('has its parts', `it lacks ${missing.join('; ')}`)];
}

/** A complex number that a model fills at ω, with its numbers; the model must leave these alone. */
export type FilledAt = (w: number, out: Float64Array) => void;

/** The kernel of a model with its own parameters. */
export const filledBy =
  (
    { parameters }: TriedModel,
    kernel: (parameters: ArrayLike<number>, w: number, out: Float64Array) => void,
  ): FilledAt =>
  (w, out) =>
    kernel(Float64Array.from(Object.values(parameters)), w, out);

/** rad/s: what is heard, and what is felt below it. */
const band: readonly number[] = Array.from({ length: 41 }, (_, i) => 2 * Math.PI * 2 * 10 ** (i / 10));

/** What a kernel fills, where it is two finite numbers and the same each time; else what is wrong. */
export function valueAt(filled: FilledAt, w: number): readonly [re: number, im: number] | string {
  const [first, again] = [Float64Array.of(7, 7, 7), Float64Array.of(-3, -3, -3)];
  filled(w, first);
  filled(w, again);
  if (first[0] !== again[0] || first[1] !== again[1]) return `it fills other numbers at each call, at ${w} rad/s`;
  return Number.isFinite(first[0]! + first[1]!)
    ? [first[0]!, first[1]!]
    : `it is ${first[0]} + ${first[1]} j at ${w} rad/s`;
}

/** The first fault that a judge finds over the band. */
export function overBand(
  filled: FilledAt,
  judge: (re: number, im: number, w: number) => string | undefined,
): string | undefined {
  for (const w of band) {
    const value = valueAt(filled, w);
    const fault = typeof value === 'string' ? value : judge(value[0], value[1], w);
    if (fault !== undefined) return fault;
  }
  return undefined;
}

/** Whether a scaled model is the model at a frequency that is scaled too, times a factor. */
export const scaledFault = (own: FilledAt, scaled: FilledAt, factor: number, time: number): string | undefined =>
  overBand(own, (re, im, w) => {
    const value = valueAt(scaled, w / time);
    if (typeof value === 'string') return value;
    const size = Math.hypot(re, im) * factor;
    return Math.hypot(value[0] - factor * re, value[1] - factor * im) <= 1e-9 * size
      ? undefined
      : `scaled, it is ${value[0]} + ${value[1]} j at ${w / time} rad/s, not ${factor * re} + ${factor * im} j`;
  });

/** What every model has beside its formula. */
export const modelLaws = ({ name, parameters, sources }: TriedModel): readonly LawResult[] => [
  tried('a name and finite numbers', `${Object.keys(parameters).length} parameters`, () => {
    const wrong = Object.entries(parameters).find(([, value]) => !Number.isFinite(value));
    return name ? wrong && `${wrong[0]} is ${wrong[1]}` : 'it has no name';
  }),
  tried(
    'sources named',
    () => sources.join(', '),
    () => (sources.length > 0 ? undefined : 'none'),
  ),
];
