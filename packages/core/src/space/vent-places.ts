import { NANOMETRE } from '../quantity/nanometre.js';
import { ordersOf } from './body-orders.js';
import type { Layout } from './fit-input.js';
import { noPlace, type Place, type Seat } from './place.js';
import { look, turn, type View } from './placement.js';
import { emptyScene, type Stand } from './scene.js';
import { compileSeats } from './seats.js';
import { besideVent } from './touching.js';
import { compileVentAmong } from './vent-among.js';
import { type BentPlace, bentReach, straightReach } from './vent-reach.js';
import type { VentShape } from './vent-solids.js';
import { footMargin, wallsOf } from './walls.js';

/** A search for places, and what the last one found. */
export interface Places {
  /** `most` bounds the whole vent; a vent of the length `asked` ends the search. */
  readonly search: (width: number, height: number, depth: number, most: number, asked?: number) => void;
  /** Whether the bodies fit without a vent. `straight` then holds their places. */
  readonly alone: (width: number, height: number, depth: number) => boolean;
  /** The vent that is looked for; the caller writes it before a search. */
  readonly vent: VentShape;
  readonly straight: Readonly<Place>;
  readonly bent: Readonly<Place>;
}

/**
 * Compiles the search for the longest vent, straight and bent, each with its place. longestVent and fit share it, so that both
 * give the same answer. `longest` bounds the whole vent. It matters only for a bent vent, whose first leg may then be no longer
 * than what is left for it. The caller writes `vent` before the search.
 *
 * Which places are tried: one body at the corners of its limits, the vent across both legs at the limit opposite to
 * it, for a straight one also along. That is enough: two convex bodies that stay apart do so on the two sides
 * of a plane, and each may move to the corner that is farthest on its own side. The two legs of a bent vent share their place
 * across, so the corner that is farther from one is not nearer to the other. Among several bodies the vent tries all its
 * corners, and where it just passes each of them, where each of three bodies is placed first once. What is found stands, but a longer
 * one may exist: it is a lower bound. In an interior that is no cuboid, bodies and vent also start from a small grid and move on
 * to the walls.
 */
export function compilePlaces(layout: Layout): Places {
  const { thickness, edgeMargin, cutoutMargin, vent: wanted } = layout;
  const view: View = { axes: [0, 1, 2], turned: [false, false, false], size: [0, 0, 0] };
  const inner: [number, number, number] = [0, 0, 0];
  const stands = layout.bodies.reduce((n, { opposed }) => n + (opposed ? 2 : 1), 0);
  /** A single body that may move in a cuboid: its corners are enough, and mirror images need not be tried. */
  const single = stands === 1 && layout.bodies[0]?.held === undefined && !layout.interior;
  const walls = layout.interior && wallsOf(layout.interior, view, thickness);
  const scene = emptyScene(view.size, stands, walls);
  const vent: VentShape = scene.vent;
  /** The same interior without bodies: what no vent beside them exceeds. A cuboid needs no search for that. */
  const empty: Places | undefined = walls && stands > 0 ? compilePlaces({ ...layout, bodies: [] }) : undefined;
  const seatings = ordersOf(layout.bodies, scene.stands).map(({ bodies, stands }) =>
    compileSeats({ ...layout, bodies }, view, { ...scene, stands }, hopeless, (stand, k, shifts) =>
      besideVent(scene, alongLimit, acrossLimit, wanted.bend, stand, k, shifts),
    ),
  );
  const { corner, mirrors, limitsOf } = seatings[0]!;
  const acrossAxis = [0, 1, 2].map((axis) =>
    layout.bodies.some(({ faces }) => faces.some((face) => face >> 1 === axis)),
  );
  const alongLimit = new Float64Array(2);
  const acrossLimit = new Float64Array(2);
  const bent: BentPlace = { along: 0, firstLeg: 0, secondLeg: 0 };
  const straightPlace = noPlace(stands);
  const bentPlace = noPlace(stands);
  /**
   * The most that a straight and a bent vent can reach on this face, and the bound of the whole; a typed array, so that nothing is
   * allocated.
   */
  const bounds = new Float64Array(3);
  /** A vent of this length ends the search; whether one is reached is all that is asked, so that shorter ones are of no use. */
  let enough = Number.POSITIVE_INFINITY;
  let useful = 0;
  let straightHopeless = false;
  let bentHopeless = false;
  let ventFace = 0;
  let along = 0;
  let backwards = false;

  function keepSeat(kept: Seat, stand: Stand): void {
    kept.face = stand.face;
    kept.columns = stand.columns;
    kept.rows = stand.rows;
    for (let k = 0; k < 3; k++) {
      kept.centre[view.axes[k]!] = turn(view, k, (stand.block.low[k]! + stand.block.high[k]!) / 2);
    }
  }

  function keep(place: Place, length: number, at: number, across: number): void {
    place.length = length;
    for (let s = 0; s < stands; s++) keepSeat(place.seats[s]!, scene.stands[s]!);
    place.ventFace = ventFace;
    place.ventCentre[view.axes[0]] = turn(view, 0, 0);
    place.ventCentre[view.axes[1]] = turn(view, 1, at);
    place.ventCentre[view.axes[2]] = turn(view, 2, across);
    place.along = along;
    place.backwards = backwards;
  }

  function tryStraight(at: number, across: number): void {
    const length = straightReach(scene, at, across);
    if (length > straightPlace.length) keep(straightPlace, length, at, across);
  }

  function tryBent(across: number): void {
    const deepest = bounds[2]! - vent.panel - vent.bendLength - vent.leastLeg;
    const length = bentReach(scene, alongLimit[0]!, alongLimit[1]!, across, deepest, bentPlace.length, bent);
    if (length <= 0) return;
    keep(bentPlace, length, bent.along, across);
    bentPlace.firstLeg = bent.firstLeg;
    bentPlace.secondLeg = bent.secondLeg;
  }

  const among = compileVentAmong(scene, view, wanted, alongLimit, acrossLimit, tryStraight, tryBent);

  /** Whether it is certain that no other place of the bodies gives a longer vent that is of use. */
  function hopeless(): boolean {
    const done = straightPlace.length >= enough || bentPlace.length >= enough;
    straightHopeless = done || bounds[0]! <= straightPlace.length || bounds[0]! < useful;
    bentHopeless = done || bounds[1]! <= bentPlace.length || bounds[1]! < useful;
    return straightHopeless && bentHopeless;
  }

  /** Places the vent, with all bodies in their places. */
  function visit(): boolean {
    if (single) {
      const across = acrossLimit[1 - corner[2]]!;
      if (!straightHopeless) tryStraight(alongLimit[1 - corner[1]]!, across);
      if (!bentHopeless) tryBent(across);
      return false;
    }
    if (!straightHopeless) among.straight();
    if (!bentHopeless) among.bent();
    return false;
  }

  function visitFace(): void {
    bounds[0] = backwards ? -1 : vent.panel + view.size[0] - vent.clearance;
    bounds[1] = wanted.bend
      ? vent.panel +
        vent.bendLength +
        view.size[0] -
        vent.bendRadius -
        vent.radius +
        view.size[1] -
        vent.clearance -
        vent.bendRadius -
        alongLimit[0]!
      : -1;
    if (empty) {
      bounds[0] = Math.min(bounds[0], empty.straight.length);
      bounds[1] = Math.min(bounds[1]!, empty.bent.length);
    }
    // Where both panels along are alike, only bodies across that axis make a difference to which way the vent turns.
    if (hopeless()) return;
    if (backwards && single && mirrors[along]! && !acrossAxis[along]!) return;
    const mirrored = backwards && single && mirrors[along]! ? along : -1;
    for (const { seat } of seatings) seat(0, ventFace, false, mirrored, visit);
  }

  /** Limits of a side of the vent: free, on a panel that stands for a board, or from one such panel to the other. */
  function sideLimits(k: number, half: number, outside: number, panels: number, limit: Float64Array): boolean {
    if (panels <= 0) return limitsOf(k, half + cutoutMargin, outside + edgeMargin, limit);
    if (panels > 1) {
      limit[0] = limit[1] = view.size[k]! / 2;
      return Math.abs(view.size[k]! - 2 * half) <= NANOMETRE;
    }
    limit[0] = half;
    limit[1] = view.size[k]! - half;
    return limit[0] <= limit[1]!;
  }

  const search = (
    width: number,
    height: number,
    depth: number,
    most: number,
    asked = Number.POSITIVE_INFINITY,
  ): void => {
    enough = asked;
    walls?.stand(width, height, depth);
    if (empty) {
      Object.assign(empty.vent, vent);
      empty.search(width, height, depth, most, asked);
    }
    // The bounds of a face may be less than a vent that just fits there by their rounding.
    useful = asked < Number.POSITIVE_INFINITY ? asked - NANOMETRE : 0;
    inner[0] = width;
    inner[1] = height;
    inner[2] = depth;
    bounds[2] = most;
    straightPlace.length = 0;
    bentPlace.length = 0;
    for (ventFace of wanted.faces) {
      vent.panel = thickness[ventFace]!;
      if (walls) vent.footMargin = footMargin(layout, ventFace, vent.flangeRadius - vent.radius);
      for (along = 0; along < 3; along++) {
        if (along === ventFace >> 1) continue;
        for (let turned = 0; turned < (wanted.bend ? 2 : 1); turned++) {
          backwards = turned === 1;
          look(view, inner, ventFace, along, backwards);
          // Between equal panels, reversing the view leaves the limits as they are.
          if (!backwards || !mirrors[along]!) {
            if (!sideLimits(1, vent.radius, vent.flangeRadius, Math.min(1, wanted.walls), alongLimit)) break;
            if (!sideLimits(2, vent.halfAcross, vent.flangeHalfAcross, wanted.walls - 1, acrossLimit)) break;
          }
          visitFace();
        }
      }
    }
  };

  /** Whether the bodies fit without a vent. `straight` then holds their places. */
  const alone = (width: number, height: number, depth: number): boolean => {
    walls?.stand(width, height, depth);
    inner[0] = width;
    inner[1] = height;
    inner[2] = depth;
    look(view, inner, 4, 1, false);
    bounds[0] = Number.POSITIVE_INFINITY;
    let found = false;
    const keepSeats = () => {
      for (let s = 0; s < stands; s++) keepSeat(straightPlace.seats[s]!, scene.stands[s]!);
      found = true;
      return true;
    };
    for (const { seat } of seatings) if (!found) seat(0, -1, true, -1, keepSeats);
    return found;
  };
  return { search, alone, vent, straight: straightPlace, bent: bentPlace };
}
