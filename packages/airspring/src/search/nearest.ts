import { decimalText, kinds } from '@airspring/core/quantity';
import type { Job } from '../brief/job.js';
import { needed, wishValue } from '../report/margins.js';
import type { Brief } from '../brief/schema.js';
import { BEYOND } from './conflict.js';
import { type Cost, explore } from './explore.js';
import { CURRENT, type Excess, LEVEL, SPEED, VOLTAGE, wishes } from './wishes.js';

/** One wish that yields: its path, and how it reads before and after. */
export interface Change {
  readonly path: string;
  readonly from: string;
  readonly to: string;
}

/** Wishes weigh 1 where the brief has no weight for them; none weighs nothing, or it would yield without end. */
const weightOf = (job: Job, index: number): number => {
  const name = wishes[index]?.weight;
  return name === undefined ? 1 : Math.max(0.05, job.weights[name]);
};

/**
 * What a box costs when wishes yield to it: each missed wish by its relative excess times its weight. A lower level helps
 * air speed, voltage and current as well: the best of the few levels at which one of them just stops being missed.
 */
function yielding(job: Job, excess: Excess): { cost: number; down: number } {
  let fixed = 0;
  for (let i = 0; i < excess.length; i++) {
    if (i === LEVEL || i === SPEED || i === VOLTAGE || i === CURRENT) continue;
    fixed += weightOf(job, i) * Math.max(0, excess[i] as number);
  }
  const least = Math.max(0, excess[LEVEL] as number);
  let best = { cost: Infinity, down: least };
  for (const i of [LEVEL, SPEED, VOLTAGE, CURRENT]) {
    const down = Math.max(least, excess[i] as number);
    let cost = weightOf(job, LEVEL) * down;
    for (const k of [SPEED, VOLTAGE, CURRENT]) cost += weightOf(job, k) * Math.max(0, (excess[k] as number) - down);
    if (cost < best.cost) best = { cost, down };
  }
  return { cost: fixed + best.cost, down: best.down };
}

/** A number in the unit of a text, rounded outwards to a step that people write. */
function rounded(value: number, unit: string, outwards: 1 | -1): string {
  const step = unit === 'mm' ? 1 : unit === 'cm' || unit === 'm/s' || unit === 'dB' || unit === 'Hz' || unit === 'V' || unit === 'L' ? 0.1 : 0.01;
  const count = outwards > 0 ? Math.ceil(value / step - 1e-9) : Math.floor(value / step + 1e-9);
  return `${decimalText(count * step, 8)} ${unit}`;
}

const at = (brief: Brief, path: string): unknown =>
  path.split('.').reduce<unknown>((value, key) => (value as Record<string, unknown> | undefined)?.[key], brief);

const put = (brief: Brief, path: string, value: string): Brief => {
  const [section, field] = path.split('.') as [keyof Brief, string];
  return { ...brief, [section]: { ...(brief[section] as object), [field]: value } };
};

/**
 * The brief nearest to one that cannot be met: wishes yield by the least weighted relative sum, and by no more. `met` says
 * whether a brief can be met; it is asked until it says yes, and then for each change whether it can be spared.
 */
export function nearestBrief(job: Job, met: (brief: Brief) => boolean): { brief: Brief; changes: Change[] } | undefined {
  const cost: Cost = (excess) => yielding(job, excess).cost;
  const [best] = explore(job, [cost], BEYOND);
  if (best === undefined) return undefined;
  const { down } = yielding(job, best.excess);
  for (let margin = 0.002; margin < 0.3; margin *= 3) {
    const changes = wishes.flatMap(({ path }, i): Change[] => {
      const over = i === LEVEL ? down : (excessAt(best.excess, i, down) as number);
      if (over <= 0) return [];
      const { kind, text, allowed } = wishValue(job, i);
      const shifted = Float64Array.from(best.excess, (_, k) => (k === i ? over + margin : 0));
      const value = needed(job, i, shifted);
      const written = at(job.brief, path);
      const unit = typeof written === 'string' ? (written.split(' ')[1] as string) : wishValue(job, i).unit;
      const [scale, offset] = (kinds[kind].units as Record<string, readonly [number, number]>)[unit] as readonly [number, number];
      const to = rounded((value - offset) / scale, unit, i === LEVEL ? -1 : 1);
      return [{ path, from: typeof written === 'string' ? written : `${text(allowed)} (default)`, to }];
    });
    const apply = (list: readonly Change[]) => list.reduce((brief, { path, to }) => put(brief, path, to), job.brief);
    if (!met(apply(changes))) continue;
    // Wishes help each other: a shorter band, say, needs less level. Keep only the changes that are needed.
    let kept = changes;
    for (const change of changes) {
      const without = kept.filter((one) => one !== change);
      if (without.length > 0 && met(apply(without))) kept = without;
    }
    return { brief: apply(kept), changes: kept };
  }
  return undefined;
}

/** What is left of an excess when the level goes down. */
const excessAt = (excess: Excess, index: number, down: number): number =>
  (excess[index] as number) - (index === SPEED || index === VOLTAGE || index === CURRENT ? down : 0);
