import { si } from '@airspring/core/quantity';
import { type BoxPanelResonance, type BraceInput, boxResonances, windowBrace } from '../panel/index.js';
import { type BraceAxis, braceAxes, freePlace, inTheWay, isDivided } from './brace-place.js';
import { panelsOf } from './sawing.js';
import type { WorkBox, WorkTools } from './work.js';

/** The window brace that is proposed, or cut where the workshop asks for it. */
export interface ChosenBrace {
  readonly across: BraceAxis;
  /** Its middle, from the left, bottom or front outer edge of the box, m. */
  readonly at: number;
  readonly border: number;
  /** Its wood, m³: what it takes from the air. */
  readonly volume: number;
  /** The panels with it, in the order of those without. */
  readonly panels: readonly BoxPanelResonance[];
  /** The lowest first resonance of the panels that it stands on with half of its border, Hz. */
  readonly narrow: number;
  /** As the panels of the box take it. */
  readonly input: BraceInput;
}

/** Where the panels of a box ring, alone and with a brace; or why none is made. */
export interface Ringing {
  /** Left out where they are too short to be plates. */
  readonly panels?: readonly BoxPanelResonance[];
  readonly brace?: ChosenBrace;
  /** Why there is no brace, as the end of a sentence. */
  readonly because?: string;
}

/** Border of a window brace: widest, m, and in parts of the shortest inner edge (common practice). */
const [WIDEST, SHARE] = [0.08, 1 / 4];
/** Boxes whose weakest panels differ by less are alike. */
export const ALIKE = 1.01;

/** The lowest first resonance that any of some panels may have, Hz. */
export const weakest = (panels: readonly BoxPanelResonance[]): number =>
  Math.min(...panels.map(({ resonance }) => resonance.lowest));

/** Panels on which a brace stands. */
export const braced = (panels: readonly BoxPanelResonance[]): readonly BoxPanelResonance[] =>
  panels.filter(({ braces }) => braces.length > 0);

/** Where the panels of a box ring, and the brace that the workshop asks for or that helps most of those for which there is room. */
export function ringingOf(box: WorkBox, { bolts: _, brace: asked = {}, ...tools }: WorkTools): Ringing {
  if (box.joints !== undefined) return { because: 'the box is no cuboid' };
  const bare = panelsOf(box, tools);
  if (!bare.ok) return { because: 'its panels cannot be cut so' };
  const shortest = Math.min(...Object.values(bare.inner));
  if (4 * box.thickness > shortest) return { because: 'the box is too small for one' };
  const panels = boxResonances(bare);
  if (isDivided(box)) return { panels, because: 'boards divide the air of the box' };
  const border = asked.border ?? Math.floor(1e3 * Math.min(WIDEST, SHARE * shortest)) / 1e3;
  const input = (across: BraceAxis, at: number, wide: number): BraceInput => ({
    across,
    at: si('length', at),
    form: windowBrace({ border: si('length', wide) }),
  });
  /** The panels with a brace. */
  const made = (across: BraceAxis, at: number, wide: number) => {
    const one = input(across, at, wide);
    const found = panelsOf(box, tools, [one]);
    if (!found.ok) return undefined;
    return {
      panels: boxResonances(found),
      volume: found.pieces.find(({ face }) => face === undefined)!.volume,
      input: one,
    };
  };
  const borders = asked.border === undefined ? [border, border / 2] : [border];
  const sides = asked.across === undefined ? braceAxes : [asked.across];
  const met: string[] = [];
  const tried = sides.flatMap((across) => {
    for (const wide of borders) {
      const at = asked.at ?? freePlace(box, across, wide);
      const what = at === undefined ? 'what stands inside' : inTheWay(box, across, wide, at);
      if (what !== undefined) met.push(what);
      if (at === undefined || what !== undefined) continue;
      const found = made(across, at, wide);
      if (found === undefined) continue;
      const together = found.panels.reduce((all, { resonance }) => all * resonance.lowest, 1);
      return [{ ...found, across, at, border: wide, together, weakest: weakest(found.panels) }];
    }
    return [];
  });
  const [best] = tried.sort((one, other) => {
    const alike = Math.max(one.weakest, other.weakest) < ALIKE * Math.min(one.weakest, other.weakest);
    return alike ? other.together - one.together : other.weakest - one.weakest;
  });
  if (best === undefined) {
    const [what] = met;
    if (what === undefined)
      return { panels, because: 'a board with that border does not fit between the panels there' };
    return {
      panels,
      because: `${what === 'what stands inside' ? what : `the ${what}`} is in its way${asked.at === undefined ? ' everywhere' : ''}`,
    };
  }
  const narrow = made(best.across, best.at, best.border / 2);
  return {
    panels,
    brace: { ...best, narrow: narrow === undefined ? weakest(braced(best.panels)) : weakest(braced(narrow.panels)) },
  };
}

/** The cuboids of the four sides of a brace, for whoever looks for room beside it. */
export function solidsOf(
  { across, at, border }: ChosenBrace,
  { outer, thickness }: WorkBox,
): NonNullable<WorkBox['solids']> {
  const axis = braceAxes.indexOf(across);
  const edges = braceAxes.map((one) => outer[one]);
  return [0, 1, 2]
    .filter((side) => side !== axis)
    .flatMap((side) =>
      [0, 1].map((far) => {
        const least = edges.map((_, k) => (k === axis ? at - thickness / 2 : thickness));
        const greatest = edges.map((edge, k) => (k === axis ? at + thickness / 2 : edge - thickness));
        if (far) least[side] = edges[side]! - thickness - border;
        else greatest[side] = thickness + border;
        return { what: 'brace', least, greatest };
      }),
    );
}
