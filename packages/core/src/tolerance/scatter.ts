import type { System } from '../enclosure/index.js';
import { type Fault, type Impossible, impossible, refuse, type Warning } from '../fault/index.js';
import { unlessWhole } from '../numeric/refusal.js';
import { type FrequencyGrid, given, logarithmicGrid, optional, readFields, si } from '../quantity/index.js';
import { type CutoffOptions, cutoffGradient, levelCrossings, lowerEndGradient, passband } from '../response/index.js';
import { type Band, bandOf, quantile, SHARES } from './band.js';
import { ABOVE, BELOW, type Builds, type BuildsOptions, buildsShape, compileBuilds } from './builds.js';
import type { Scatter } from './drawn-network.js';

/** How a system scatters from build to build. */
export interface Scattered {
  readonly builds: number;
  /** f3 of the builds, Hz, or why too few have one. */
  readonly f3: (Band & { readonly ok: true }) | Impossible;
  /** Levels between which nine of ten builds lie, and that of half of them, dB for 1 V rms. */
  readonly level: {
    readonly frequencies: FrequencyGrid;
    readonly low: Float64Array;
    readonly middle: Float64Array;
    readonly high: Float64Array;
  };
  /** Greatest level of the builds within the limits that were given, at the frequency where it is least, dB. */
  readonly greatestLevel?: Band;
  /** What the slopes alone say of f3: its standard deviation, and the share of the variance that each number causes. */
  readonly firstOrder: { readonly ok: true; readonly standardDeviation: number; readonly shares: Shares } | Impossible;
  readonly warnings: readonly Warning[];
}

/** Shares that add up to 1, by the names of the numbers. */
type Shares = Readonly<Record<string, number>>;

/** Slopes and builds agree if their standard deviations differ by less. */
const AGREED = 0.2;
/** The share of builds that may lack an f3 before its band says nothing. */
const MISSING = 0.05;

/**
 * The variance of f3 by its slopes: each number scatters by itself.
 *
 * $$ \sigma_{f_3}^2 = \sum_e \left(\frac{\partial f_3}{\partial \ln v_e}\right)^2 \sigma_e^2 $$
 */
function firstOrderOf(system: System, scatter: Scatter, counted: CutoffOptions): Scattered['firstOrder'] {
  const slopes = counted.reference === 'maximum' ? lowerEndGradient(system, counted) : cutoffGradient(system);
  if (!slopes.ok) return slopes;
  const variances = Object.entries(scatter).map(
    ([name, { standardDeviation }]) => [name, ((slopes.byElement[name] ?? 0) * standardDeviation) ** 2] as const,
  );
  const whole = variances.reduce((sum, [, variance]) => sum + variance, 0);
  const shares = Object.fromEntries(variances.map(([name, variance]) => [name, variance / (whole || 1)]));
  return { ok: true, standardDeviation: Math.sqrt(whole), shares };
}

/** How many builds are worked out, at which frequencies, and what of each. */
export interface ScatterOptions extends BuildsOptions {
  /** The same seed gives the same builds; default 1. */
  readonly seed?: number;
  /** At least 2; default 2000. */
  readonly builds?: number;
  /** Default 200 frequencies from 10 Hz to 200 Hz. */
  readonly frequencies?: FrequencyGrid;
}

const optionsShape = {
  seed: optional(given<number>()),
  builds: optional(given<number>()),
  frequencies: optional(given<FrequencyGrid>()),
  ...buildsShape,
};

/**
 * How far builds of a system scatter: by many builds at random, and beside it by the slopes alone. Where both do not agree, or the
 * level crosses half power more than once, a warning says so: the slopes must not be used then.
 *
 * @validity as `compileBuilds`; of N builds that scatter normally, 5 and 95 % are known with a standard error of 2/√N standard deviations
 * @neglects as `compileBuilds`
 * @returns bands of f3 and level, shares of the variance, warnings
 * @throws InputError `unknown-field`, and those of `compileBuilds` and its kernel
 * @source metropolis1949 (random sampling)
 * @source gum1995 §5.1.2 (propagation by slopes)
 * @example scatterOf(system, { Cms: normal(0.08), vent: within(0.03) }, { seed: 7, builds: 2000 }).f3
 */
export function scatterOf(system: System, scatter: Scatter, options: ScatterOptions = {}): Scattered {
  const read = readFields('options', options, optionsShape);
  const { seed = 1, builds = 2000, frequencies = logarithmicGrid(10, 200, 200), ...of } = read;
  refuse(unlessWhole('options.builds', builds, 2, 1e7));
  return summaryOf(
    system,
    scatter,
    frequencies,
    [compileBuilds(system, scatter, frequencies, of)(seed, 0, builds)],
    of,
  );
}

/** Parts that say nothing, or that were worked out at other frequencies. */
function judgeParts(parts: readonly Builds[], points: number): Fault[] {
  const faults = parts.flatMap(({ count, levels }, i): Fault[] => {
    if (levels.length === count * points) return [];
    const expected = `${count * points} levels, of ${count} builds at ${points} frequencies`;
    const remedy = 'Give the frequencies at which the builds were worked out.';
    return [{ code: 'inconsistent', path: `parts[${i}].levels`, got: levels.length, expected, remedy }];
  });
  if (parts.some(({ count }) => count > 0)) return faults;
  return [
    ...faults,
    { code: 'empty', path: 'parts', got: parts, expected: 'at least one build', remedy: 'Give builds.' },
  ];
}

/** The same from builds that were worked out in parts, in any order, with the reference that they were worked out with. */
export function summaryOf(
  system: System,
  scatter: Scatter,
  frequencies: FrequencyGrid,
  parts: readonly Builds[],
  { reference = 'asymptote' }: Pick<BuildsOptions, 'reference'> = {},
): Scattered {
  refuse(judgeParts(parts, frequencies.length));
  const count = parts.reduce((sum, part) => sum + part.count, 0);
  const all = parts.flatMap(({ f3 }) => Array.from(f3));
  const found = Float64Array.from(all.filter((value) => value !== BELOW && value !== ABOVE));
  const missing = count - found.length;
  const band = found.length > 0 ? bandOf(found) : undefined;
  const f3: Scattered['f3'] =
    band === undefined || missing > MISSING * count
      ? impossible(
          'no-cutoff',
          `${missing} of ${count} builds have no f3 from ${frequencies[0]} Hz to ${frequencies.at(-1)} Hz.`,
        )
      : { ok: true, ...band };
  const column = new Float64Array(count);
  const level = { frequencies, ...emptyBands(frequencies.length) };
  frequencies.forEach((_, i) => {
    let b = 0;
    for (const part of parts) {
      for (let k = 0; k < part.count; k++) column[b++] = part.levels[k * frequencies.length + i]!;
    }
    column.sort();
    level.low[i] = quantile(column, SHARES[0]);
    level.middle[i] = quantile(column, SHARES[1]);
    level.high[i] = quantile(column, SHARES[2]);
  });
  // The greatest level is that between these frequencies.
  const [from, to] = [frequencies[0], frequencies.at(-1)].map((f) => si('frequency', f!));
  const counted: CutoffOptions = reference === 'maximum' ? { reference, from: from!, to: to! } : {};
  const firstOrder = firstOrderOf(system, scatter, counted);
  const greatest = Float64Array.from(parts.flatMap(({ greatestLevels }) => Array.from(greatestLevels ?? [])));
  const warnings = warningsOf(system, f3, firstOrder, counted);
  return {
    builds: count,
    f3,
    level,
    ...(greatest.length > 0 && { greatestLevel: bandOf(greatest) }),
    firstOrder,
    warnings,
  };
}

const emptyBands = (length: number) => ({
  low: new Float64Array(length),
  middle: new Float64Array(length),
  high: new Float64Array(length),
});

function warningsOf(
  system: System,
  f3: Scattered['f3'],
  firstOrder: Scattered['firstOrder'],
  counted: CutoffOptions,
): readonly Warning[] {
  if (!f3.ok || !firstOrder.ok) return [];
  const ratio = f3.standardDeviation / firstOrder.standardDeviation;
  // A stretch around the greatest level may have an upper end as well.
  const passed = counted.reference === 'maximum' ? passband(system, counted) : undefined;
  const crossings = levelCrossings(system, counted).length - (passed?.ok && passed.upper !== undefined ? 1 : 0);
  const warning = (path: string, got: number, expected: string): Warning => ({
    code: 'outside-validity',
    path,
    got,
    expected,
  });
  return [
    ...(Math.abs(ratio - 1) > AGREED
      ? [warning('firstOrder', ratio, 'a scatter of f3 within 20 % of what its slopes say')]
      : []),
    ...(crossings > 1 ? [warning('crossings', crossings, 'one frequency at which the level is half power down')] : []),
  ];
}
