import { decimalText, format, kinds, type Unit } from '@airspring/core/quantity';
import { strictText } from '../brief/spelling.js';
import type { Job, Written } from '../job/job.js';
import type { Wish } from '../kind/wish.js';
import { neededFor } from './wishes.js';

/** One wish that yields: its path, and how it reads before and after. */
export interface Change {
  readonly path: string;
  readonly from: string;
  readonly to: string;
}

/** A number in the unit of a text, rounded outwards to a round step. */
function rounded(value: number, unit: string, outwards: 1 | -1): string {
  const step =
    unit === 'mm'
      ? 1
      : unit === 'cm' || unit === 'm/s' || unit === 'dB' || unit === 'Hz' || unit === 'V' || unit === 'L'
        ? 0.1
        : 0.01;
  const count = outwards > 0 ? Math.ceil(value / step - 1e-9) : Math.floor(value / step + 1e-9);
  return `${decimalText(count * step, 8)} ${unit}`;
}

const at = (brief: Written, path: string): unknown =>
  path.split('.').reduce<unknown>((value, key) => (value as Record<string, unknown> | undefined)?.[key], brief);

const put = (brief: Written, path: string, value: string): Written => {
  const [section, field] = path.split('.') as [string, string];
  return { ...brief, [section]: { ...(brief[section] as object), [field]: value } };
};

/** The unit in which a brief writes a wish, and its text there. */
function writtenIn(
  brief: Written,
  { path, quantity, unit: usual }: Wish,
): { readonly unit: string; readonly text?: string } {
  const text = at(brief, path);
  if (typeof text !== 'string') return { unit: usual };
  return { unit: strictText(quantity, text)?.split(' ')[1] ?? usual, text };
}

/** One wish with another limit, at least as wide as a value, in the unit the brief is written in. */
function changeTo({ written: brief }: Job, wish: Wish, value: number): Change {
  const { path, quantity, allowed, unit: usual, sense } = wish;
  const { unit, text } = writtenIn(brief, wish);
  const [scale, offset] = (kinds[quantity].units as Record<string, Unit>)[unit] as Unit;
  const to = rounded((value - offset) / scale, unit, sense === 'at least' ? -1 : 1);
  return { path, from: text ?? `${format(quantity, allowed, usual as never, 4)} (default)`, to };
}

/** One wish moved outwards by an excess and a margin. */
export const changeOf = (job: Job, wish: Wish, over: number, margin: number): Change =>
  changeTo(job, wish, neededFor(wish, over + margin));

/** How far a limit is eased to see what that gains, in the unit of the brief; by a twentieth of it in any other unit. */
const STEPS: Readonly<Record<string, number>> = {
  mm: 10,
  cm: 1,
  in: 0.5,
  L: 1,
  'ft³': 0.05,
  'in³': 50,
  dB: 1,
  Hz: 1,
  'm/s': 1,
  V: 1,
  A: 0.5,
  W: 10,
  Ω: 0.5,
};

/** One wish moved outwards by a round step. */
export function stepOf(job: Job, wish: Wish): Change {
  const { quantity, allowed, sense } = wish;
  const { unit } = writtenIn(job.written, wish);
  const [scale] = (kinds[quantity].units as Record<string, Unit>)[unit] as Unit;
  const step = STEPS[unit];
  const by = step === undefined ? Math.abs(allowed) / 20 : step * scale;
  return changeTo(job, wish, sense === 'at most' ? allowed + by : allowed - by);
}

/** A brief with some wishes changed. */
export const apply = (brief: Written, changes: readonly Change[]): Written =>
  changes.reduce((changed, { path, to }) => put(changed, path, to), brief);
