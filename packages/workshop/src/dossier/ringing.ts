import { si } from '@airspring/core/quantity';
import { type BraceInput, boxResonances, windowBrace } from '../panel/index.js';
import { type BraceAxis, braceAxes, freePlaces, inTheWay } from './brace-place.js';
import { asBrace, insideBoards, isBeside } from './inside-boards.js';
import { listed } from './listed.js';
import type { ChosenBrace, Ringing, RingingPanel } from './ringing-record.js';
import { panelsOf } from './sawing.js';
import { shapedRinging } from './shaped-ringing.js';
import type { WorkBox, WorkTools } from './work.js';

/** Border of a window brace: widest, m, and in parts of the shortest inner edge (common practice). */
const [WIDEST, SHARE] = [0.08, 1 / 4];
/** Boxes whose weakest panels differ by less are alike. */
export const ALIKE = 1.01;

/** The lowest first resonance that any of some panels may have, Hz. */
export const weakest = (panels: readonly RingingPanel[]): number =>
  Math.min(...panels.map(({ resonance }) => resonance.lowest));

/** Panels on which a brace stands, with it; without it they have the boards that stand inside alone. */
export const braced = (panels: readonly RingingPanel[], without: readonly RingingPanel[]): readonly RingingPanel[] =>
  panels.filter(({ braces }, i) => braces.length > without[i]!.braces.length);

/** Why a brace that meets something is not made. */
const isInTheWay = (names: readonly string[], everywhere: boolean): string =>
  `${listed(names.map((name) => `the ${name}`))} ${names.length > 1 ? 'are' : 'is'} in its way${everywhere ? ' everywhere' : ''}`;

/** Where the panels of a box ring, and the brace that the workshop asks for or that helps most of those for which there is room. */
export function ringingOf(
  box: WorkBox,
  { bolts: _, recess: __, roundOver: ___, brace: asked = {}, ...tools }: WorkTools,
): Ringing {
  if (box.joints !== undefined) return shapedRinging(box, tools);
  const boards = insideBoards(box).filter((board) => !isBeside(box, board));
  const inside = boards.map((board) => asBrace(board, box));
  // A hole nearer to a board than a saw could cut it there is no fault of the panels: they are then told without the boards.
  const divided = panelsOf(box, tools, inside);
  const held = divided.ok ? inside : [];
  const bare = divided.ok ? divided : panelsOf(box, tools);
  if (!bare.ok) return { because: 'its panels cannot be cut so' };
  const shortest = Math.min(...Object.values(bare.inner));
  if (4 * box.thickness > shortest) return { because: 'the box is too small for one' };
  const panels = boxResonances(bare);
  const dividing = held.length > 0 ? [...new Set(boards.map(({ name }) => name))] : [];
  const border = asked.border ?? Math.floor(1e3 * Math.min(WIDEST, SHARE * shortest)) / 1e3;
  const input = (across: BraceAxis, at: number, wide: number): BraceInput => ({
    across,
    at: si('length', at),
    form: windowBrace({ border: si('length', wide) }),
  });
  /** The panels with a brace. */
  const made = (across: BraceAxis, at: number, wide: number) => {
    const one = input(across, at, wide);
    const found = panelsOf(box, tools, [one, ...held]);
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
  const tried = sides.flatMap((across) =>
    borders.flatMap((wide) => {
      const places = asked.at === undefined ? freePlaces(box, across, wide) : [asked.at];
      if (places.length === 0) met.push(...inTheWay(box, across, wide));
      return places.flatMap((at) => {
        const what = asked.at === undefined ? [] : inTheWay(box, across, wide, at);
        met.push(...what);
        const found = what.length > 0 ? undefined : made(across, at, wide);
        if (found === undefined) return [];
        const together = found.panels.reduce((all, { resonance }) => all * resonance.lowest, 1);
        return [{ ...found, across, at, border: wide, together, weakest: weakest(found.panels) }];
      });
    }),
  );
  const [best] = tried.sort((one, other) => {
    const alike = Math.max(one.weakest, other.weakest) < ALIKE * Math.min(one.weakest, other.weakest);
    return alike ? other.together - one.together : other.weakest - one.weakest;
  });
  if (best === undefined) {
    const names = [...new Set(met)];
    const because =
      names.length === 0
        ? 'a board with that border does not fit between the panels there'
        : isInTheWay(names, asked.at === undefined);
    return { panels, dividing, because };
  }
  const narrow = made(best.across, best.at, best.border / 2);
  return {
    panels,
    dividing,
    brace: {
      ...best,
      narrow: narrow === undefined ? weakest(braced(best.panels, panels)) : weakest(braced(narrow.panels, panels)),
    },
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
