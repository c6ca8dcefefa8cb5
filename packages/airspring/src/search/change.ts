import { decimalText, format, kinds, type Unit } from '@airspring/core/quantity';
import { strictText } from '../brief/spelling.js';
import type { Job, Written } from '../job/job.js';
import type { Wish } from '../kind/box-kind.js';
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

/** One wish moved outwards by an excess and a margin, in the unit the brief is written in. */
export function changeOf({ written: brief }: Job, wish: Wish, over: number, margin: number): Change {
  const { path, quantity, allowed, unit: usual, sense } = wish;
  const value = neededFor(wish, over + margin);
  const written = at(brief, path);
  const strict = typeof written === 'string' ? strictText(quantity, written) : undefined;
  const unit = strict?.split(' ')[1] ?? usual;
  const [scale, offset] = (kinds[quantity].units as Record<string, Unit>)[unit] as Unit;
  const to = rounded((value - offset) / scale, unit, sense === 'at least' ? -1 : 1);
  const before = typeof written === 'string' ? written : `${format(quantity, allowed, usual as never, 4)} (default)`;
  return { path, from: before, to };
}

/** A brief with some wishes changed. */
export const apply = (brief: Written, changes: readonly Change[]): Written =>
  changes.reduce((changed, { path, to }) => put(changed, path, to), brief);
