import type { Fault } from '@airspring/core/fault';
import { type Field, type LengthInput, positive, readInto } from '@airspring/core/quantity';
import { type Outline, type OutlineInput, outlineField } from '../outline/index.js';

/** The section of a box: a figure, and which of its sides one bent panel follows. */
export interface Section {
  readonly outline: OutlineInput;
  /** Runs of sides that are one bent panel: the first side, which starts at the corner of that place, and how many follow it. */
  readonly bent?: readonly Bend[];
}

export interface Bend {
  readonly first: number;
  readonly count: number;
}

/** A section that is drawn out along an axis. */
export interface LayerInput extends Section {
  readonly length: LengthInput;
}

/** A layer as it was read: corners counter-clockwise, a thickness for each side. */
export interface ReadLayer {
  readonly outline: Outline;
  readonly bent: readonly Bend[];
  readonly length: number;
  readonly thickness: readonly number[];
}

/** One thickness for all panels; or one for each side of the section, in the order of its corners, and one for the ends. */
export type PanelThicknessInput =
  | LengthInput
  | { readonly sides: LengthInput | readonly LengthInput[]; readonly ends: LengthInput };

const length = positive('length');

function bendsOf(faults: Fault[], value: unknown, path: string, sides: number): readonly Bend[] {
  if (value === undefined) return [];
  const isRun = (run: Partial<Bend> | null) =>
    Number.isInteger(run?.first) &&
    Number.isInteger(run?.count) &&
    run!.first! >= 0 &&
    run!.count! >= 2 &&
    run!.first! + run!.count! <= sides;
  if (Array.isArray(value) && value.every(isRun)) return value;
  const expected = `runs of two sides or more among 0 to ${sides - 1}, as { first: 2, count: 20 }`;
  faults.push({ code: 'inconsistent', path, got: value, expected, remedy: 'Leave it out for flat panels.' });
  return [];
}

/** One number for each side. */
function thicknessOf(faults: Fault[], value: unknown, path: string, sides: number): number[] {
  if (!Array.isArray(value)) {
    const all = readInto(faults, 'length', value, path);
    return new Array<number>(sides).fill(all ?? 0);
  }
  if (value.length === sides) return value.map((one, i) => readInto(faults, 'length', one, `${path}[${i}]`) ?? 0);
  const remedy = 'Give one length for all, or one for each side.';
  faults.push({
    code: 'inconsistent',
    path,
    got: value.length,
    expected: `${sides} thicknesses, one for each side`,
    remedy,
  });
  return new Array<number>(sides).fill(0);
}

/** Reads a layer with the thickness of its sides; `undefined` when it has a fault. */
export function readLayer(
  faults: Fault[],
  value: unknown,
  path: string,
  thickness: { readonly value: unknown; readonly path: string },
): ReadLayer | undefined {
  const before = faults.length;
  const { outline: written, bent: runs, length: long, ...more } = (value ?? {}) as Record<string, unknown>;
  for (const name of Object.keys(more)) {
    const remedy = 'Remove it.';
    faults.push({
      code: 'unknown-field',
      path: `${path}.${name}`,
      got: more[name],
      expected: 'outline, bent and length',
      remedy,
    });
  }
  const outline = outlineField.read(faults, written, `${path}.outline`);
  const far = (length as Field<number>).read(faults, long, `${path}.length`);
  if (outline === undefined || far === undefined) return undefined;
  const sides = outline.length;
  const bends = bendsOf(faults, runs, `${path}.bent`, sides);
  const thick = thicknessOf(faults, thickness.value, thickness.path, sides);
  if (faults.length > before) return undefined;
  // Where the corners were turned round, so are the sides between them.
  const first = (written as OutlineInput)[0]!.map((one) => readInto([], 'length', one, '', 'any'));
  const turned = outline[0]!.some((at, k) => at !== first[k]);
  if (!turned) return { outline, bent: bends, length: far, thickness: thick };
  const side = (one: number) => (2 * sides - 2 - one) % sides;
  return {
    outline,
    bent: bends.map(({ first, count }) => ({ first: side(first + count - 1), count })),
    length: far,
    thickness: thick.map((_, i) => thick[side(i)]!),
  };
}
