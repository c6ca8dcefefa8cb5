import { ROUNDING } from '../quantity/rounding.js';
import type { Layout, VentBody } from './fit-input.js';
import { arrangements, centreLimits, look, turn, type View } from './placement.js';
import { emptyBlock, isFar, span } from './solids.js';
import { type BentPlace, bentReach, type Scene, straightReach } from './vent-reach.js';
import { bendLength } from './vent-solids.js';

/** The best place that was found; faces by number, coordinates in the inner box. */
export interface Place {
  length: number;
  driverFace: number;
  columns: number;
  rows: number;
  readonly driverCentre: [number, number, number];
  ventFace: number;
  readonly ventCentre: [number, number, number];
  along: number;
  backwards: boolean;
  firstLeg: number;
  secondLeg: number;
}

const noPlace = (): Place => ({
  length: 0,
  driverFace: 0,
  columns: 1,
  rows: 1,
  driverCentre: [0, 0, 0],
  ventFace: 0,
  ventCentre: [0, 0, 0],
  along: 0,
  backwards: false,
  firstLeg: 0,
  secondLeg: 0,
});

/**
 * Compiles the search for the longest vent: straight and bent, each with its place. Shared by longestVent and
 * fit, so that both say the same. `longest` bounds the whole vent: it only matters to a bent one, whose first leg may then
 * be no longer than what is left for it.
 *
 * Which places are tried: the driver at the corners of its limits, the vent across both legs at the limit opposite to
 * the driver, for a straight one also along. That is enough: two convex bodies that stay apart do so on the two sides
 * of a plane, and each may go on to the corner farthest on its own side. The two legs of a bent vent share their place
 * across, so the driver's corner that is farther from one is not nearer to the other.
 */
export function compilePlaces(layout: Layout) {
  const { thickness, gap, edgeMargin, driver } = layout;
  const blocks = arrangements(driver.count);
  const pitch = driver.outerDiameter + gap;
  const alike = [0, 1, 2].map((axis) => thickness[2 * axis] === thickness[2 * axis + 1]);
  const inner: [number, number, number] = [0, 0, 0];
  const view: View = { axes: [0, 0, 0], turned: [false, false, false], size: [0, 0, 0] };
  const vent = {
    radius: 0,
    halfAcross: 0,
    flangeRadius: 0,
    flangeHalfAcross: 0,
    clearance: 0,
    bendRadius: 0,
    panel: 0,
  };
  const scene: Scene = {
    size: view.size,
    vent,
    driver: emptyBlock(),
    driverInside: false,
    frame: emptyBlock(),
    frameOnFace: false,
  };
  const [alongLimit, acrossLimit, firstLimit, secondLimit] = [0, 1, 2, 3].map(() => new Float64Array(2)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const bent: BentPlace = { along: 0, firstLeg: 0, secondLeg: 0 };
  const straightPlace = noPlace();
  const bentPlace = noPlace();
  const halves = [0, 0];
  let longest = 0;
  let ventFace = 0;
  let along = 0;
  let backwards = false;

  function keep(place: Place, length: number, face: number, columns: number, rows: number, at: number, across: number) {
    place.length = length;
    place.driverFace = face;
    place.columns = columns;
    place.rows = rows;
    for (let k = 0; k < 3; k++) {
      place.driverCentre[view.axes[k]!] = turn(view, k, (scene.driver.low[k]! + scene.driver.high[k]!) / 2);
    }
    place.ventFace = ventFace;
    place.ventCentre[view.axes[0]] = turn(view, 0, 0);
    place.ventCentre[view.axes[1]] = turn(view, 1, at);
    place.ventCentre[view.axes[2]] = across;
    place.along = along;
    place.backwards = backwards;
  }

  /** Writes driver and frame at one corner of its limits into the view. */
  function setDriver(face: number, reach: number, corner: number, single: boolean): void {
    const axis = face >> 1;
    const first = axis === 0 ? 1 : 0;
    for (let k = 0; k < 3; k++) {
      const boxAxis = view.axes[k]!;
      if (boxAxis === axis) {
        const far = isFar(face) !== view.turned[k];
        span(scene.driver, k, far ? view.size[k]! - reach : 0, far ? view.size[k]! : reach);
        span(scene.frame, k, -1, 0);
        scene.driver.axis = single ? k : -1;
        scene.frame.axis = scene.driver.axis;
      } else {
        const isFirst = boxAxis === first;
        const limit = isFirst ? firstLimit : secondLimit;
        const at = turn(view, k, limit[isFirst ? corner & 1 : corner >> 1]!);
        const offset = halves[isFirst ? 0 : 1]!;
        span(scene.driver, k, at - offset - driver.cutoutDiameter / 2, at + offset + driver.cutoutDiameter / 2);
        const frame = offset + driver.outerDiameter / 2 + gap;
        span(scene.frame, k, at - frame, at + frame);
      }
    }
  }

  /** Away from the driver: the other end of the limits, or the end that is not the driver's face. */
  function away(boxAxis: number, face: number, corner: number): number {
    const axis = face >> 1;
    if (boxAxis === axis) return isFar(face) ? 0 : 1;
    return (boxAxis === (axis === 0 ? 1 : 0) ? corner & 1 : corner >> 1) === 0 ? 1 : 0;
  }

  function tryDrivers(straightToo: boolean, near: number, far: number): void {
    const { size } = view;
    const bentBound = layout.vent.bend
      ? vent.panel +
        bendLength(vent) +
        size[0] -
        vent.bendRadius -
        vent.radius +
        size[1] -
        vent.clearance -
        vent.bendRadius -
        near
      : -1;
    for (const face of driver.faces) {
      const axis = face >> 1;
      const first = axis === 0 ? 1 : 0;
      const second = 3 - axis - first;
      const behindPanel = Math.max(0, driver.depth - thickness[face]!);
      if (behindPanel > inner[axis]! + ROUNDING) continue;
      const reach = Math.min(behindPanel, inner[axis]!);
      // Where both panels across an axis are alike, the mirror image of what was tried need not be tried again.
      if (backwards && axis !== along && alike[along]!) continue;
      const acrossBit = !alike[view.axes[2]]! || axis === view.axes[2] ? 0 : view.axes[2] === first ? 1 : 2;
      scene.driverInside = reach > 0;
      scene.frameOnFace = face === ventFace;
      for (const [columns, rows] of blocks) {
        halves[0] = ((columns - 1) * pitch) / 2;
        halves[1] = ((rows - 1) * pitch) / 2;
        const behind = driver.cutoutDiameter / 2;
        const outside = driver.outerDiameter / 2 + edgeMargin;
        if (!centreLimits(inner[first]!, halves[0] + behind, halves[0] + outside, thickness, first, firstLimit))
          continue;
        if (!centreLimits(inner[second]!, halves[1] + behind, halves[1] + outside, thickness, second, secondLimit))
          continue;
        for (let corner = 0; corner < 4; corner++) {
          if ((corner & acrossBit) !== 0) continue;
          const straightHopeless = !straightToo || vent.panel + size[0] - vent.clearance <= straightPlace.length;
          const bentHopeless = bentBound <= bentPlace.length;
          if (straightHopeless && bentHopeless) return;
          setDriver(face, reach, corner, driver.count === 1);
          const across = acrossLimit[away(view.axes[2], face, corner)]!;
          if (!straightHopeless) {
            const at = turn(view, 1, alongLimit[away(view.axes[1], face, corner)]!);
            const length = straightReach(scene, at, across);
            if (length > straightPlace.length) keep(straightPlace, length, face, columns, rows, at, across);
          }
          if (!bentHopeless) {
            const deepest = longest - vent.panel - bendLength(vent);
            const length = bentReach(scene, near, far, across, deepest, bentPlace.length, bent);
            if (length > 0) {
              keep(bentPlace, length, face, columns, rows, bent.along, across);
              bentPlace.firstLeg = bent.firstLeg;
              bentPlace.secondLeg = bent.secondLeg;
            }
          }
        }
      }
    }
  }

  const search = (width: number, height: number, depth: number, body: VentBody, most: number): void => {
    inner[0] = width;
    inner[1] = height;
    inner[2] = depth;
    longest = most;
    straightPlace.length = 0;
    bentPlace.length = 0;
    const row = ((layout.vent.count - 1) * (body.flangeDiameter + gap)) / 2;
    vent.radius = body.outerDiameter / 2;
    vent.halfAcross = vent.radius + row;
    vent.flangeRadius = body.flangeDiameter / 2;
    vent.flangeHalfAcross = vent.flangeRadius + row;
    vent.clearance = body.clearance;
    vent.bendRadius = body.bendRadius;
    for (ventFace of layout.vent.faces) {
      vent.panel = thickness[ventFace]!;
      for (along = 0; along < 3; along++) {
        if (along === ventFace >> 1) continue;
        const across = 3 - (ventFace >> 1) - along;
        const outside = vent.flangeRadius + edgeMargin;
        if (!centreLimits(inner[along]!, vent.radius, outside, thickness, along, alongLimit)) continue;
        if (!centreLimits(inner[across]!, vent.halfAcross, outside + row, thickness, across, acrossLimit)) continue;
        backwards = false;
        look(view, inner, ventFace, along, false);
        tryDrivers(true, alongLimit[0]!, alongLimit[1]!);
        if (!layout.vent.bend) continue;
        backwards = true;
        look(view, inner, ventFace, along, true);
        tryDrivers(false, inner[along]! - alongLimit[1]!, inner[along]! - alongLimit[0]!);
      }
    }
  };
  return { search, straight: straightPlace as Readonly<Place>, bent: bentPlace as Readonly<Place> };
}
