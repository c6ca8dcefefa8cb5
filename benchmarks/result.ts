import type { Rounds } from './measure.js';
import type { Line } from './table.js';

/** A row as it is printed and kept. Times in the row's unit; a rate counts units a second. */
export interface Row {
  readonly id: string;
  readonly what: string;
  readonly unit: string;
  readonly median?: number;
  readonly best?: number;
  /** Median by the processor's clock. */
  readonly cpu?: number;
  readonly rounds?: number;
  /** Median of this row over that of `against`: by processor time where both have it, and by the clock. */
  readonly ratio?: number;
  readonly ratioByClock?: number;
  readonly against?: string;
  readonly goal?: string;
  readonly met?: boolean;
  /** Why there is no number. */
  readonly missing?: string;
}

const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length / 2;
  return (sorted[Math.ceil(middle) - 1]! + sorted[Math.floor(middle)]!) / 2;
};
const over = (a: Rounds, b: Rounds, by: keyof Rounds): number => median(a[by]) / median(b[by]);
const best = (values: readonly number[]): number => values.reduce((a, b) => Math.min(a, b), Infinity);

const PER_SECOND = { ns: 1e9, µs: 1e6, ms: 1e3 } as const;

/** Turns the rounds of all rows into a row each. */
export function rowOf(line: Line, all: ReadonlyMap<string, Rounds>, missing: string | undefined): Row {
  const { id, what, unit, against, goal } = line;
  const rounds = all.get(id);
  const bound = goal && (goal.most !== undefined ? `≤ ${goal.most}` : `≥ ${goal.least}`);
  const text = goal && `${goal.of === 'ratio' ? `${bound} ×` : `${bound} ${unit}`}`;
  if (rounds === undefined) return { id, what, unit, ...(text && { goal: text }), missing: missing ?? 'not measured' };
  const shown = (seconds: number) => (unit === '/s' ? 1 / seconds : seconds * PER_SECOND[unit]);
  const other = against === undefined ? undefined : all.get(against);
  // By the processor's clock where both have it: on a busy machine the other one measures the neighbours.
  const ratio = other && over(rounds, other, other.cpu.length > 0 && rounds.cpu.length > 0 ? 'cpu' : 'wall');
  const got = goal?.of === 'ratio' ? ratio : shown(median(rounds.cpu.length > 0 ? rounds.cpu : rounds.wall));
  const met = goal && got !== undefined ? got <= (goal.most ?? Infinity) && got >= (goal.least ?? 0) : undefined;
  return {
    id,
    what,
    unit,
    median: shown(median(rounds.wall)),
    best: shown(best(rounds.wall)),
    ...(rounds.cpu.length > 0 && { cpu: shown(median(rounds.cpu)) }),
    rounds: rounds.wall.length,
    ...(other && against && { against, ratio: ratio as number, ratioByClock: over(rounds, other, 'wall') }),
    ...(text && { goal: text }),
    ...(met !== undefined && { met }),
  };
}

const digits = (value: number): string =>
  value >= 1000 ? Math.round(value).toLocaleString('en').replace(/,/g, ' ') : value.toPrecision(3);

/** One line of text a row. */
export function rowText({ what, unit, median, best, cpu, ratio, against, goal, met, missing }: Row): string {
  const head = `  ${what.padEnd(74)}`;
  if (median === undefined) return `${head} not there: ${missing}${goal ? ` (goal ${goal})` : ''}`;
  const numbers = [median, best, cpu].map((value) => (value === undefined ? '' : digits(value)).padStart(9)).join(' ');
  const compared = ratio === undefined ? '' : `${ratio.toPrecision(3)} × ${against}`;
  const judged =
    goal === undefined
      ? ''
      : met === undefined
        ? `goal ${goal}: not judged`
        : `goal ${goal}: ${met ? 'met' : 'MISSED'}`;
  return `${head}${numbers} ${unit.padEnd(3)} ${compared.padEnd(28)} ${judged}`.trimEnd();
}
