import type { System } from '../enclosure/index.js';
import { impossible } from '../fault/index.js';
import { read } from '../quantity/index.js';
import { compiledReference, probeIndex } from './compile.js';
import { type Crossed, type CutoffOptions, levelToCross, lowestAbove } from './cutoff.js';
import { type GradientResult, levelAt } from './gradient.js';
import { NEPER, referenceLevel } from './level.js';
import { passbandIn, topOf } from './passband.js';
import type { Reference } from './reference.js';

/** The frequency at which a network without polynomials is assumed to have reached its limit, Hz. */
const FAR = 1e6;

/**
 * Two frequencies at which the level of the reference has reached its limit except for a term in 1/f², which the two together
 * remove. They lie a thousand times above every corner, which the polynomials bound (a root is at most twice the greatest
 * $|c_k/c_n|^{1/(n-k)}$).
 */
function farAway(system: System): readonly [near: number, far: number] {
  const { probes, polynomials } = compiledReference(system);
  if (polynomials === undefined) return [FAR, 2 * FAR];
  const { coefficients, width, scale } = polynomials;
  let corner = 0;
  for (const row of [0, 1 + probeIndex(probes, 'radiatedFlow')]) {
    const list = coefficients.subarray(row * width, (row + 1) * width);
    const top = list.findLastIndex((value) => value !== 0);
    for (let k = 0; k < top; k++) {
      const ratio = Math.abs(list[k]! / list[top]!);
      corner = Math.max(corner, ratio ** (1 / (top - k)));
    }
  }
  // The square of each power must stay within double precision.
  const most = 10 ** (140 / width);
  const near = Math.max(FAR, (Math.min(1000 * corner, most) * scale) / (2 * Math.PI));
  return [near, 2 * near];
}

/** Gradient of the asymptote by every number that the reference does not leave out, from two far frequencies. */
function asymptoteGradient(system: System): GradientResult {
  const value = referenceLevel(system);
  const [near, far] = farAway(system).map((f) => levelAt(system, f, true)) as [GradientResult, GradientResult];
  if (!near.ok) return near;
  if (!far.ok) return far;
  const join = (a: Readonly<Record<string, number>>, b: Readonly<Record<string, number>>) =>
    Object.fromEntries(Object.entries(a).map(([name, slope]) => [name, (4 * b[name]! - slope) / 3]));
  return {
    ok: true,
    value,
    byElement: join(near.byElement, far.byElement),
    byNumber: join(near.byNumber, far.byNumber),
    byFrequency: 0,
  };
}

/** Gradient of the level that a cut-off is counted from. Its frequency is held, since the level does not change to first order at its maximum. */
function referenceGradient(system: System, reference: Reference, { grid, levels, wanted }: Crossed): GradientResult {
  if (reference === 'asymptote') return asymptoteGradient(system);
  if (reference === 'maximum') return levelAt(system, grid[topOf(levels)]!);
  if ('frequency' in reference) return levelAt(system, read('frequency', reference.frequency, 'reference.frequency'));
  return { ok: true, value: wanted, byElement: {}, byNumber: {}, byFrequency: 0 };
}

/** Gradient of a frequency at which the level crosses its reference. */
function crossingGradient(system: System, f: number, reference: Reference, crossed: Crossed): GradientResult {
  const level = levelAt(system, f);
  const from = referenceGradient(system, reference, crossed);
  if (!level.ok) return level;
  if (!from.ok) return from;
  // The slope of the level behind its filter, which moves the crossing but no level by an element.
  const slope = crossed.level.slope(f) * NEPER;
  const shift = (own: Readonly<Record<string, number>>, other: Readonly<Record<string, number>>) =>
    Object.fromEntries(
      [...new Set([...Object.keys(own), ...Object.keys(other)])].map((name) => {
        const change = (own[name] ?? 0) - (other[name] ?? 0);
        return [name, (-f * change) / slope];
      }),
    );
  return {
    ok: true,
    value: f,
    byElement: shift(level.byElement, from.byElement),
    byNumber: shift(level.byNumber, from.byNumber),
    byFrequency: 0,
  };
}

/**
 * Gradient of a cut-off by every element, from the implicit function theorem on level − reference + drop = 0:
 *
 * $$ \frac{\partial \ln f}{\partial\theta} = -\frac{\partial L/\partial\theta - \partial L_{ref}/\partial\theta}{\partial L/\partial \ln f} $$
 *
 * @validity cut-offs as {@link cutoff} gives them, from any reference, behind a filter or not
 * @returns Hz, and Hz per relative change
 * @throws InputError
 * @source rudin1976 thm 9.28
 * @example cutoffGradient(system)
 */
export function cutoffGradient(system: System, options: CutoffOptions = {}): GradientResult {
  const crossed = levelToCross(system, options);
  const found = lowestAbove(crossed);
  return found.ok ? crossingGradient(system, found.frequency, options.reference ?? 'asymptote', crossed) : found;
}

/**
 * The same for the lower end of the band that a system passes, which {@link passband} gives. It serves a band-pass, whose level
 * falls again above its band.
 *
 * @validity as {@link cutoffGradient}; where two tops are equally high, a slope on one side
 * @returns Hz, and Hz per relative change; or why there is no lower end in the band
 * @throws InputError
 * @source rudin1976 thm 9.28
 * @example lowerEndGradient(system)
 */
export function lowerEndGradient(system: System, options: CutoffOptions = {}): GradientResult {
  const crossed = levelToCross(system, options, ['passband', 'maximum']);
  const { lower } = passbandIn(crossed);
  if (lower !== undefined) return crossingGradient(system, lower, options.reference ?? 'maximum', crossed);
  return impossible('no-lower-end', 'the level does not rise to the band from below within these frequencies');
}
