import { si } from '@airspring/core/quantity';
import { type BoxPanelResonance, boxResonances, type PanelBox, panelBox, windowBrace } from '../panel/index.js';
import { bareBox } from './sawing.js';
import type { WorkBox, WorkTools } from './work.js';

const axes = ['width', 'height', 'depth'] as const;

/** The window brace that is proposed. */
export interface ProposedBrace {
  readonly across: (typeof axes)[number];
  /** Its middle, from the left, bottom or front outer edge of the box, m. */
  readonly at: number;
  readonly border: number;
  /** Its wood, m³: what it takes from the air. */
  readonly volume: number;
  /** The panels with it, in the order of those without. */
  readonly panels: readonly BoxPanelResonance[];
  /** How far it is moved for `moved`, m. */
  readonly shift: number;
  /** The lowest first resonance of the panels that it stands on, Hz: with half of its border, and moved. */
  readonly narrow: number;
  readonly moved: number;
}

/** Where the panels of a box ring, alone and with the brace that helps most. */
export interface Ringing {
  readonly panels: readonly BoxPanelResonance[];
  readonly brace?: ProposedBrace;
}

/** Border of a window brace: widest, m, and in parts of the shortest inner edge (common practice). */
const [WIDEST, SHARE] = [0.08, 1 / 4];
/** How far a brace is moved to show what that costs, in parts of the inner edge. */
const MOVED = 0.1;
/** Boxes whose weakest panels differ by less are alike. */
const ALIKE = 1.01;

/** The lowest first resonance that any of some panels may have, Hz. */
export const weakest = (panels: readonly BoxPanelResonance[]): number =>
  Math.min(...panels.map(({ resonance }) => resonance.lowest));

/** Panels on which a brace stands. */
export const braced = (panels: readonly BoxPanelResonance[]): readonly BoxPanelResonance[] =>
  panels.filter(({ braces }) => braces.length > 0);

/** Where the panels of a box ring; nothing where they are too short to be plates. */
export function ringingOf(box: WorkBox, tools: WorkTools, sawn: PanelBox): Ringing | undefined {
  const inner = [sawn.inner.width, sawn.inner.height, sawn.inner.depth];
  const shortest = Math.min(...inner);
  if (4 * box.thickness > shortest) return undefined;
  const panels = boxResonances(sawn);
  const bare = bareBox(box, tools);
  const border = Math.floor(1e3 * Math.min(WIDEST, SHARE * shortest)) / 1e3;
  /** The panels with a brace in the middle of an axis, or beside it. */
  const made = (axis: number, wide: number, aside: number) => {
    const form = windowBrace({ border: si('length', wide) });
    const at = si('length', box.thickness + inner[axis]! / 2 - aside);
    const found = panelBox({ ...bare, braces: [{ across: axes[axis]!, at, form }] });
    if (!found.ok) return undefined;
    return { at, panels: boxResonances(found), volume: found.pieces.find(({ face }) => face === undefined)!.volume };
  };
  const tried = axes.flatMap((across, axis) => {
    const found = made(axis, border, 0);
    if (found === undefined) return [];
    const together = found.panels.reduce((all, { resonance }) => all * resonance.lowest, 1);
    return [{ ...found, across, axis, together, weakest: weakest(found.panels) }];
  });
  const [best] = tried.sort((one, other) => {
    const alike = Math.max(one.weakest, other.weakest) < ALIKE * Math.min(one.weakest, other.weakest);
    return alike ? other.together - one.together : other.weakest - one.weakest;
  });
  if (best === undefined) return { panels };
  const shift = Math.round(1e3 * MOVED * inner[best.axis]!) / 1e3;
  const [narrow, moved] = [made(best.axis, border / 2, 0), made(best.axis, border, shift)];
  if (narrow === undefined || moved === undefined) return { panels };
  const { across, at, volume } = best;
  const least = (one: readonly BoxPanelResonance[]) => weakest(braced(one));
  const costs = { shift, narrow: least(narrow.panels), moved: least(moved.panels) };
  return { panels, brace: { across, at, border, volume, panels: best.panels, ...costs } };
}
