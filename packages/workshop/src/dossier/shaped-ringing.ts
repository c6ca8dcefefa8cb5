import { isInputError } from '@airspring/core/fault';
import { format, si } from '@airspring/core/quantity';
import type { ShapedPanel } from '@airspring/core/space';
import { boundsOf, isRectangle } from '../outline/measures.js';
import { panelResonance } from '../panel/index.js';
import { listed } from './listed.js';
import type { Ringing, RingingPanel } from './ringing-record.js';
import { boardOf } from './sawing.js';
import type { WorkBox, WorkTools } from './work.js';

/** A square cut differs from a right angle by no more than this, rad. */
const SQUARE = 1e-9;
/** Sides that turn by less are those of an arc, rad. */
const ARC = (16 * Math.PI) / 180;

/**
 * The clear rectangle of a flat board: between the two that it meets in mitres what both of its surfaces have, and of one that covers a
 * rectangular section the air within the panels around that.
 */
function clearOf(panel: ShapedPanel): readonly [number, number] | undefined {
  const { outline, inner, angles, bent, opening, thickness } = panel;
  if (bent || outline.length !== 4) return undefined;
  const isOblique = angles.map((angle) => Math.abs(angle - Math.PI / 2) > SQUARE);
  if (!isOblique.includes(true)) {
    const [[left, low], [right, high]] = boundsOf(outline);
    return opening || !isRectangle(outline) ? undefined : [right - left - 2 * thickness, high - low - 2 * thickness];
  }
  if (!((isOblique[0] && isOblique[2]) || (isOblique[1] && isOblique[3]))) return undefined;
  const [[left, low], [right, high]] = boundsOf(outline);
  const [[innerLeft, innerLow], [innerRight, innerHigh]] = boundsOf(inner);
  return [Math.min(right, innerRight) - Math.max(left, innerLeft), Math.min(high, innerHigh) - Math.max(low, innerLow)];
}

/** Whether a figure is round outwards somewhere. */
const bulges = (outline: ShapedPanel['outline']): boolean =>
  outline.some(([x, y], i) => {
    const [before, after] = [outline.at(i - 1)!, outline[(i + 1) % outline.length]!];
    const turn = Math.atan2(after[1] - y, after[0] - x) - Math.atan2(y - before[1], x - before[0]);
    const straightened = Math.atan2(Math.sin(turn), Math.cos(turn));
    return straightened > 1e-6 && straightened < ARC;
  });

/**
 * Why a panel is in no row, as a sentence. A plate of even stiffness whose straight edges may turn has the lowest frequency of a membrane, squared. A
 * membrane rings lower the larger it is; so the plate rings no lower than one that fills the rectangle around it. An edge that is hollow outwards
 * only stiffens it.
 */
function untold({ outline, thickness, bent, opening }: ShapedPanel, tools: WorkTools): (names: string) => string {
  const board = boardOf(tools);
  const none = (why: string) => (names: string) => `The first resonance of the ${names} is not worked out: ${why}.`;
  if (bent) return none('what is bent is stiffer than a flat panel');
  if (opening) return none('an opening takes its middle');
  if (board.grained) return none('that is no rectangle, and its board is stiffer along the grain');
  if (bulges(outline)) return none('that is no rectangle, and round at its edge');
  const [[left, low], [right, high]] = boundsOf(outline);
  const width = si('length', right - left - 2 * thickness);
  const height = si('length', high - low - 2 * thickness);
  const { lowest } = panelResonance({ width, height, thickness: si('length', thickness), board });
  const from = format('frequency', si('frequency', Math.floor(lowest)), 'Hz', 4);
  return (names) =>
    `The first resonance of the ${names}, no rectangle, lies at ${from} or higher: that is where the plate in the rectangle around it would ring, and a smaller plate rings higher.`;
}

/** Sentences that differ in their names alone as one. */
function together(others: readonly { readonly name: string; readonly says: (names: string) => string }[]): string[] {
  const alike = new Map<string, string[]>();
  for (const { name, says } of others) alike.set(says(''), [...(alike.get(says('')) ?? []), name]);
  return [...alike.values()].map((names) => others.find(({ name }) => name === names[0])!.says(listed(names)));
}

/** Where the panels of a box that is no cuboid ring, as far as they are rectangles between others. */
export function shapedRinging(box: WorkBox, tools: WorkTools): Ringing {
  const because = 'the box is no cuboid';
  const shaped = box.boards.flatMap(({ panel }) => (panel ? [panel] : []));
  const rows: RingingPanel[] = [];
  const others: { readonly name: string; readonly says: (names: string) => string }[] = [];
  for (const panel of shaped) {
    try {
      const clear = clearOf(panel);
      if (clear === undefined) {
        others.push({ name: panel.name, says: untold(panel, tools) });
        continue;
      }
      const [width, height] = clear.map((size) => si('length', size)) as [
        RingingPanel['width'],
        RingingPanel['height'],
      ];
      const thickness = si('length', panel.thickness);
      // Boards are laid with their grain along the longer side.
      const grain = panel.blank[0] < panel.blank[1] ? 'height' : 'width';
      const resonance = panelResonance({ width, height, thickness, board: boardOf(tools), grain });
      const cut = box.holes.some((hole) => (hole.board ? hole.board.name === panel.name : hole.face === panel.face));
      rows.push({ face: panel.name, width, height, thickness, braces: [], cut, resonance });
    } catch (error) {
      if (!isInputError(error)) throw error;
      const short = (names: string) =>
        `The first resonance of the ${names} is not worked out: it is too short to be a plate.`;
      others.push({ name: panel.name, says: short });
    }
  }
  return { ...(rows.length > 0 && { panels: rows }), because, untold: together(others) };
}
