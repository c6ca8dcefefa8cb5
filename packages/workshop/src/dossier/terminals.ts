import { NANOMETRE } from '@airspring/core/quantity';
import { axisOf, isFar } from '../panel/box-edges.js';
import { planeOf } from '../panel/plane.js';
import type { TerminalCup } from '../solid/index.js';
import type { WorkHole } from './hole.js';
import { insideBoards, isInside } from './inside-boards.js';
import { airText, type Says } from './says.js';
import type { Work, WorkBox } from './work.js';

/** Sizes of a cup for the terminals, m: its hole, its flange, and how far it reaches behind the outer surface of the panel. */
type CupSizes = Pick<TerminalCup, 'hole' | 'flangeDiameter' | 'reach'> | typeof BOUGHT;

/** A cup for the terminals, and its hole in a panel; the hole is left out where none was sought, or none was found. */
export interface Terminals {
  readonly sizes: CupSizes;
  readonly hole?: WorkHole;
  readonly sought?: boolean;
}

/** A round cup as it is bought, where none is printed: its hole is that of a usual saw, the other sizes are the largest that have room, m (common practice). */
const BOUGHT = { hole: 0.057, flangeDiameter: 0.085, reach: 0.04 } as const;
/** Room behind a cup for the ends of its posts and the wires, and beside its flange, m (common practice). */
const [BEHIND, BESIDE] = [0.025, 0.005];
/** Steps of the search, m. */
const STEP = 0.005;

/** How far the part in a hole reaches from its middle, on the outside of the panel, m. */
const reachOf = (hole: WorkHole, { drivers }: Work): number =>
  (hole.form === 'rectangle'
    ? Math.hypot(...hole.sides)
    : Math.max(hole.diameter, hole.frame ?? drivers.outerDiameter)) / 2;

/** The cuboids of all that stands inside. */
const standing = (box: WorkBox) => [...(box.solids ?? []), ...(box.placed ?? []), ...insideBoards(box)];

/** The panels that are asked for a place in turn, with the edges that it is measured from. */
const FACES = [
  ['back', ['left', 'bottom']],
  ['left', ['front', 'bottom']],
  ['right', ['front', 'bottom']],
  ['top', ['left', 'front']],
] as const;

const AXES = ['width', 'height', 'depth'] as const;

/** Whether a hole opens into the closed chamber of a divided box, where the magnets of its drivers stand; true where it has none. */
function opensBehind({ chambers = [], thickness, outer }: WorkBox, { face, across, up, diameter }: Placed): boolean {
  const closed = chambers.filter(({ vented }) => !vented);
  if (closed.length === 0) return true;
  return closed.some((chamber) => {
    const axis = AXES.indexOf(chamber.across);
    const k = planeOf(face).axes.indexOf(axis);
    const at = [across, up][k];
    if (at !== undefined) return at - diameter / 2 >= chamber.from && at + diameter / 2 <= chamber.to;
    const surface = isFar(face) ? outer[chamber.across] - thickness : thickness;
    return surface >= chamber.from - NANOMETRE && surface <= chamber.to + NANOMETRE;
  });
}

/** A hole in a panel, and how wide it is. */
interface Placed {
  readonly face: WorkHole['face'];
  readonly across: number;
  readonly up: number;
  readonly diameter: number;
}

/** A place for a cup on a panel, as low and as near to the middle as anything inside allows; nothing where there is none. */
function placeOn(
  face: (typeof FACES)[number][0],
  work: Work,
  box: WorkBox,
  { hole, flangeDiameter, reach }: CupSizes,
  accepts: (at: Placed) => boolean,
) {
  const { thickness } = box;
  const edges = [box.outer.width, box.outer.height, box.outer.depth];
  const [one, other] = planeOf(face).axes;
  const inwards = axisOf(face);
  const far = isFar(face);
  const deep = reach + BEHIND;
  if (deep > edges[inwards]! - thickness) return undefined;
  const flange = flangeDiameter / 2;
  // The flange may lie over the edge of a panel beside it, but not past the corner of the box; the hole stays clear of the panel.
  const least = Math.ceil(1e3 * Math.max(flange + BESIDE, thickness + hole / 2 + BESIDE)) / 1e3;
  const others = box.holes.filter((at) => at.face === face && !isInside(at));
  const inside = standing(box).filter(({ least: low, greatest: high }) =>
    far ? high[inwards]! > edges[inwards]! - deep : low[inwards]! < deep,
  );
  const isFree = (across: number, up: number) =>
    others.every((at) => Math.hypot(at.across - across, at.up - up) >= reachOf(at, work) + flange + BESIDE) &&
    inside.every(
      ({ least: low, greatest: high }) =>
        across + hole / 2 <= low[one]! ||
        across - hole / 2 >= high[one]! ||
        up + hole / 2 <= low[other]! ||
        up - hole / 2 >= high[other]!,
    );
  const middle = edges[one]! / 2;
  for (let up = least; up <= edges[other]! - least; up += STEP) {
    for (let aside = 0; aside <= middle - least; aside += STEP) {
      for (const across of [middle - aside, middle + aside]) {
        const at = { face, across, up, diameter: hole };
        if (isFree(across, up) && accepts(at)) return at;
      }
    }
  }
  return undefined;
}

/** A cup for the terminals with its hole; a bought one where none is printed. */
export function terminalsOf(work: Work, box: WorkBox, sizes: CupSizes = BOUGHT): Terminals {
  if (box.joints !== undefined) return { sizes };
  for (const accepts of [(at: Placed) => opensBehind(box, at), () => true]) {
    for (const [face, from] of FACES) {
      const at = placeOn(face, work, box, sizes, accepts);
      if (at) return { sizes, hole: { what: 'terminals', ...at, from, form: 'circle', frame: sizes.flangeDiameter } };
    }
  }
  return { sizes, sought: true };
}

/** Where the hole for the terminals goes. */
export function placeText({ sizes, hole, sought }: Terminals, says: Says): string {
  if (hole) {
    return `in the ${hole.face}, ${says(hole.across)} from the ${hole.from[0]} and ${says(hole.up)} from the ${hole.from[1]}, where nothing of the design stands behind it`;
  }
  const free = `${says(sizes.reach + BEHIND)} of its outer side`;
  return sought
    ? `where a flatter cup has room: no place on the back, a side or the top was found in which nothing stands within ${free}`
    : `low on a panel that stays free, where nothing stands within ${free}`;
}

/** What is bought where no cup is printed, and that its sizes are assumed. */
export function boughtText(terminals: Terminals, work: Work, says: Says): string {
  const { hole, flangeDiameter, reach } = terminals.sizes;
  const { thickness } = work.box!;
  const takes = (Math.PI / 4) * hole ** 2 * Math.max(0, reach - thickness);
  const why = work.tools.terminals ? 'the one of the brief cannot be printed here' : 'the brief tells none';
  return `a round cup for the terminals: ${why}, so these pages assume a hole of ${says(hole)}, at most ${says(flangeDiameter)} across its flange and ${says(reach)} deep (common practice). Its hole goes ${placeText(terminals, says)}. Measure yours before you cut it, and keep the centre. It takes up to ${airText(work, takes)} of air, which the tuning does not count`;
}
