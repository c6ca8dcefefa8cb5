import type { TerminalCup } from '../solid/index.js';
import type { WorkHole } from './hole.js';
import type { Work } from './work.js';

/** Room behind a cup for the ends of its posts and the wires, and beside its flange, m (common practice). */
const [BEHIND, BESIDE] = [0.025, 0.005];
/** Steps of the search, m. */
const STEP = 0.005;

/** How far the part in a hole reaches from its middle, on the outside of the panel, m. */
function reachOf(hole: WorkHole, { drivers, vents }: Work): number {
  if (hole.form === 'rectangle') return Math.hypot(...hole.sides) / 2;
  const widest =
    hole.what === 'vent' ? Math.max(0, ...vents.map((vent) => vent.flangeDiameter)) : drivers.outerDiameter;
  return Math.max(hole.diameter, widest) / 2;
}

/** A place for a cup on the back, as low and as near to the middle as anything inside allows; nothing where there is none. */
export function cupPlace(
  work: Work,
  { hole, flangeDiameter, reach }: Pick<TerminalCup, 'hole' | 'flangeDiameter' | 'reach'>,
): { readonly across: number; readonly up: number } | undefined {
  const { box } = work;
  if (box === undefined || box.joints !== undefined) return undefined;
  const { outer, thickness } = box;
  const flange = flangeDiameter / 2;
  // The flange may lie over the edge of a panel beside it, but not past the corner of the box; the hole stays clear of the panel.
  const least = Math.max(flange + BESIDE, thickness + hole / 2 + BESIDE);
  const others = box.holes.filter(({ face, board }) => face === 'back' && board === undefined);
  const inwards = outer.depth - reach - BEHIND;
  const isFree = (across: number, up: number) =>
    others.every((one) => Math.hypot(one.across - across, one.up - up) >= reachOf(one, work) + flange + BESIDE) &&
    (box.solids ?? []).every(
      ({ least: low, greatest: high }) =>
        high[2]! <= inwards ||
        across + hole / 2 <= low[0]! ||
        across - hole / 2 >= high[0]! ||
        up + hole / 2 <= low[1]! ||
        up - hole / 2 >= high[1]!,
    );
  const middle = outer.width / 2;
  for (let up = least; up <= outer.height - least; up += STEP) {
    for (let aside = 0; aside <= middle - least; aside += STEP) {
      for (const across of [middle - aside, middle + aside]) if (isFree(across, up)) return { across, up };
    }
  }
  return undefined;
}
