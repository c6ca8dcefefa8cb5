import { type Fault, type Impossible, impossible, refuse } from '@airspring/core/fault';
import { NANOMETRE, positive } from '@airspring/core/quantity';
import { type Face, faces } from '@airspring/core/space';
import { areaOf, boundsOf, clearanceAt, insetOf, type Outline, type PlanePoint } from '../outline/index.js';
import { reasonOf, told } from '../words/told.js';
import { type Bend, type LayerInput, type PanelThicknessInput, type ReadLayer, readLayer } from './section.js';

/** The axis along which a section is drawn out. */
export type Along = 'width' | 'height' | 'depth';

/** A box by its section, which is drawn out along an axis; or a stack of several sections. */
export interface BoxShapeInput {
  /**
   * Along the width, a section is drawn with the depth from the front across and the height up; along the height, with the width
   * across and the depth up; along the depth, with the width across and the height up.
   */
  readonly along: Along;
  /** By its outside; several layers stand on each other along the axis. */
  readonly outer?: LayerInput | readonly LayerInput[];
  /** By its inside. */
  readonly inner?: LayerInput;
  readonly thickness: PanelThicknessInput;
}

/** A figure between two places on the axis, m. */
export interface Layer {
  readonly outline: Outline;
  readonly from: number;
  readonly to: number;
}

/** A layer outside, with its panels. */
export interface OuterLayer extends Layer {
  /** By side, m. */
  readonly thickness: readonly number[];
  readonly bent: readonly Bend[];
  /** Where the corners of the panels are inside: the figure within, and the place of each outer corner in it. */
  readonly within: Outline;
  readonly corners: readonly number[];
  /** Sides that have none within. */
  readonly lost: readonly number[];
}

/** A box whose section is drawn out along an axis. All places are measured from the left, bottom, front of the cuboid around it. */
export interface BoxShape {
  readonly ok: true;
  readonly along: Along;
  /** Thickness of the panels across the axis, m. */
  readonly ends: number;
  readonly outer: readonly OuterLayer[];
  /** The air, layer by layer. */
  readonly inner: readonly Layer[];
}

const axes: readonly Along[] = ['width', 'height', 'depth'];
const length = positive('length');
/** Whether one figure lies within another; their sides may touch. */
const within = (one: Outline, other: Outline): boolean =>
  one.every((corner) => clearanceAt(other, corner) > -NANOMETRE) &&
  other.every((corner) => clearanceAt(one, corner) < NANOMETRE);

const moved = (outline: Outline, [x, y]: PlanePoint): Outline =>
  outline.map(([ax, ay]): PlanePoint => [ax - x, ay - y]);

const alike = (one: Outline, other: Outline): boolean => within(one, other) && within(other, one);

function read(input: BoxShapeInput) {
  const faults: Fault[] = [];
  const { along, outer, inner, thickness, ...more } = (input ?? {}) as BoxShapeInput;
  for (const [name, got] of Object.entries(more)) {
    const expected = 'along, outer or inner, and thickness';
    faults.push({ code: 'unknown-field', path: `box.${name}`, got, expected, remedy: 'Remove it.' });
  }
  if (!axes.includes(along)) {
    faults.push({
      code: 'unknown-field',
      path: 'box.along',
      got: along,
      expected: axes.join(', '),
      remedy: 'Choose one of them.',
    });
  }
  if ((outer === undefined) === (inner === undefined)) {
    const code = outer === undefined ? 'empty' : 'conflict';
    const expected = 'either outer sizes or inner ones';
    faults.push({
      code,
      path: 'box.outer',
      got: outer === undefined ? outer : 'both',
      expected,
      remedy: 'Give one of the two.',
    });
  }
  const apart = typeof thickness === 'object' && thickness !== null;
  const ends = length.read(faults, apart ? thickness.ends : thickness, apart ? 'box.thickness.ends' : 'box.thickness');
  const sides = apart
    ? { value: thickness.sides, path: 'box.thickness.sides' }
    : { value: ends === undefined ? 1 : thickness, path: 'box.thickness' };
  const written = outer ?? inner;
  const list: readonly unknown[] = Array.isArray(written) ? written : written === undefined ? [] : [written];
  const name = outer === undefined ? 'box.inner' : 'box.outer';
  if (written !== undefined && (list.length === 0 || list.length > 100)) {
    faults.push({
      code: 'empty',
      path: name,
      got: list.length,
      expected: '1 to 100 layers',
      remedy: 'Give each layer once.',
    });
  }
  const layers = list.map((one, i) => readLayer(faults, one, Array.isArray(written) ? `${name}[${i}]` : name, sides));
  for (let i = 1; i < layers.length; i++) {
    const [before, layer] = [layers[i - 1], layers[i]];
    if (!before || !layer || within(layer.outline, before.outline) || within(before.outline, layer.outline)) continue;
    const expected = 'a section within that of the layer before it, or around it';
    const remedy = 'Move its corners; sides may lie on each other.';
    faults.push({
      code: 'inconsistent',
      path: `${name}[${i}].outline`,
      got: `${layer.outline.length} corners`,
      expected,
      remedy,
    });
  }
  refuse(faults);
  return { along, ends: ends as number, layers: layers as readonly ReadLayer[], isInner: outer === undefined };
}

/** The air of a stack: where the section changes, a panel closes the larger one. */
function airOf(outer: readonly OuterLayer[], ends: number): readonly Layer[] | Impossible {
  const layers = outer.map((layer, i): Layer => {
    const [before, after] = [outer[i - 1], outer[i + 1]];
    const behindStep = (next: OuterLayer | undefined) =>
      next === undefined || (areaOf(layer.within) > areaOf(next.within) && !alike(layer.outline, next.outline));
    const beyond = (next: OuterLayer | undefined) =>
      behindStep(next) ? -ends : next && alike(layer.outline, next.outline) ? 0 : ends;
    return { outline: layer.within, from: layer.from - beyond(before), to: layer.to + beyond(after) };
  });
  const empty = layers.findIndex(({ from, to }) => to - from <= NANOMETRE);
  if (empty < 0) return layers;
  const { from, to } = outer[empty]!;
  const text = told`A layer of ${to - from} is not longer than the panels that close it, each of ${ends}.`;
  return { ok: false, because: [reasonOf('panels-meet', text, 4)] };
}

/**
 * A box whose section is drawn out along an axis, or a stack of several sections, with its panels: from its outer sizes, or from its inner ones.
 *
 * Its sides meet in mitres, and the panels across the axis cover them. Where the section of a stack changes, one more panel closes the
 * larger section, so that the air continues through the smaller one.
 *
 * @validity flat panels, and panels bent along the axis
 * @neglects round edges, glue
 * @returns outlines of the outside and of the air, or why the panels leave none
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `empty`, `conflict`, `unknown-field`, `inconsistent` where sides cross
 * @source own geometry of prisms
 * @example boxShape({ along: 'width', outer: { outline: [['0 mm', '0 mm'], ['400 mm', '0 mm'], ['150 mm', '340 mm'], ['0 mm', '340 mm']], length: '600 mm' }, thickness: '18 mm' }).ok // true
 */
export function boxShape(input: BoxShapeInput): BoxShape | Impossible {
  const { along, ends, layers, isInner } = read(input);
  const outer: OuterLayer[] = [];
  const origin = [Infinity, Infinity] as [number, number];
  let at = 0;
  for (const { outline, bent, length: far, thickness } of layers) {
    const around = isInner
      ? insetOf(
          outline,
          thickness.map((t) => -t),
        )
      : { ok: true as const, outline, lost: [] };
    if (!around.ok) return around;
    if (around.lost.length > 0) {
      return impossible('panels-meet', `Outside its panels, side ${around.lost[0]} of the figure has no room.`);
    }
    const inset = insetOf(around.outline, thickness);
    if (!inset.ok) return inset;
    const isFlat = (side: number) => !bent.some(({ first, count }) => side >= first && side < first + count);
    const short = inset.lost.find(isFlat);
    if (short !== undefined) {
      const text = `The panels beside side ${short}, which starts at corner ${short}, leave it no room inside. Make it longer, or leave it out.`;
      return impossible('side-too-short', text);
    }
    const [least] = boundsOf(around.outline);
    for (const k of [0, 1] as const) origin[k] = Math.min(origin[k], least[k]);
    const to = at + far + (isInner ? 2 * ends : 0);
    outer.push({
      outline: around.outline,
      from: at,
      to,
      thickness,
      bent,
      within: inset.outline,
      corners: inset.corners,
      lost: inset.lost,
    });
    at = to;
  }
  const placed = outer.map((layer) => ({
    ...layer,
    outline: moved(layer.outline, origin),
    within: moved(layer.within, origin),
  }));
  const inner = airOf(placed, ends);
  return 'ok' in inner ? inner : { ok: true, along, ends, outer: placed, inner };
}

/** The places of width, height and depth in a point of the section and the place along the axis: across, up, along. */
export const axesOf: Readonly<Record<Along, readonly [across: number, up: number, along: number]>> = {
  width: [2, 1, 0],
  height: [0, 2, 1],
  depth: [0, 1, 2],
};

/** The faces of the cuboid: at both ends across, at both ends up, and at both ends of the axis. */
export const cuboidFaces: Readonly<Record<Along, readonly Face[]>> = {
  width: facesBy('width'),
  height: facesBy('height'),
  depth: facesBy('depth'),
};
function facesBy(along: Along): readonly Face[] {
  return axesOf[along].flatMap((axis) => [faces[2 * axis]!, faces[2 * axis + 1]!]);
}
