import type { Length } from '@airspring/core/quantity';
import type { CutListRow } from '../panel/index.js';
import type { PartInput } from './nest-input.js';

/** The parts that are cut from one kind of board. */
export interface PartsOfBoard {
  readonly board: string;
  readonly thickness: Length;
  readonly parts: readonly PartInput[];
}

/**
 * A cut list as parts to nest, one group for each board and thickness, which are nested on sheets of their own.
 *
 * @example partsOf(cutList(box)).map(({ parts }) => nest({ parts, sheets, kerf: '3 mm' }))
 */
export function partsOf(rows: readonly CutListRow[]): readonly PartsOfBoard[] {
  const groups = new Map<string, { board: string; thickness: Length; parts: PartInput[] }>();
  for (const { board, thickness, names, length, width, grained } of rows) {
    const key = `${Math.round(thickness * 1e9)} ${board}`;
    const group = groups.get(key) ?? { board, thickness, parts: [] };
    group.parts.push(...names.map((name) => ({ name, length, width, grained })));
    groups.set(key, group);
  }
  return [...groups.values()];
}
