import { NANOMETRE } from '../quantity/nanometre.js';
import type { Layout } from './fit-input.js';
import type { View } from './placement.js';
import type { Scene } from './scene.js';
import { emptyBlock } from './solids.js';
import { passing } from './touching.js';
import { bend, firstLeg, flange, secondLeg } from './vent-solids.js';
import type { Walls } from './walls.js';

const part = emptyBlock();

/** Places along each axis from which a vent moves on to the walls of an interior that is no cuboid. */
const GRID = 5;
const onGrid = (limit: Float64Array, n: number) => limit[0]! + (n / (GRID - 1)) * (limit[1]! - limit[0]!);
const within = (at: number, limit: Float64Array) => at >= limit[0]! && at <= limit[1]!;

/**
 * Compiles the places at which a vent is tried among several bodies: its corners, and where it just passes each body. In an interior
 * that is no cuboid it also starts from a small grid, and moves on to the walls.
 */
export function compileVentAmong(
  scene: Scene,
  view: View,
  wanted: Layout['vent'],
  alongLimit: Float64Array,
  acrossLimit: Float64Array,
  tryStraight: (at: number, across: number) => void,
  tryBent: (across: number) => void,
) {
  const { vent, walls, stands } = scene;
  const tries = new Float64Array(2 + 8 * stands.length + (walls ? 3 * GRID : 0));

  function straightFrom(at: number, across: number): void {
    tryStraight(at, across);
    for (let k = 1; k <= 2; k++) {
      // A slot stays on the panels that serve as its boards.
      if (wanted.walls >= k) continue;
      firstLeg(part, vent, at, across, view.size[0]);
      let n = passing(scene, part, k, k === 1 ? at : across, k === 1 ? alongLimit : acrossLimit, false, tries, 0);
      flange(part, vent, at, across);
      n = passing(scene, part, k, k === 1 ? at : across, k === 1 ? alongLimit : acrossLimit, true, tries, n);
      for (let i = 0; i < n; i++) tryStraight(k === 1 ? tries[i]! : at, k === 2 ? tries[i]! : across);
    }
  }

  /** How far the vent's place on its face can move along an axis from here; negative when it is not inside. */
  function wayOnFace(walls: Walls, at: number, across: number, k: number, down: boolean): number {
    firstLeg(part, vent, at, across, 2 * NANOMETRE, -vent.footMargin);
    return walls.holds(part) ? walls.way(part, k, down) : -1;
  }

  function straight(): void {
    for (let c = 0; c < 4; c++) straightFrom(alongLimit[c & 1]!, acrossLimit[c >> 1]!);
    if (!walls) return;
    for (let c = 0; c < GRID * GRID; c++) {
      const at = onGrid(alongLimit, c % GRID);
      const across = onGrid(acrossLimit, Math.floor(c / GRID));
      if (wayOnFace(walls, at, across, 1, false) < 0) continue;
      straightFrom(at, across);
      for (let side = 0; side < 4; side++) {
        const way = wayOnFace(walls, at, across, 1 + (side & 1), side > 1) * (side > 1 ? -1 : 1);
        const [a, b] = side & 1 ? [at, across + way] : [at + way, across];
        if (within(a, alongLimit) && within(b, acrossLimit)) straightFrom(a, b);
      }
    }
  }

  function bent(): void {
    const near = alongLimit[0]!;
    const from = acrossLimit[0]!;
    tries[0] = from;
    tries[1] = acrossLimit[1]!;
    let n = 2;
    if (wanted.walls < 2) {
      const most = view.size[0] - vent.bendRadius - vent.radius;
      flange(part, vent, near, from);
      n = passing(scene, part, 2, from, acrossLimit, true, tries, n);
      firstLeg(part, vent, near, from, most);
      n = passing(scene, part, 2, from, acrossLimit, false, tries, n);
      bend(part, vent, near, from, most);
      n = passing(scene, part, 2, from, acrossLimit, false, tries, n);
      secondLeg(part, vent, near + vent.bendRadius, view.size[1], from, most);
      n = passing(scene, part, 2, from, acrossLimit, false, tries, n);
    }
    if (walls) {
      const middle = onGrid(alongLimit, (GRID - 1) / 2);
      for (let c = 0; c < GRID; c++) {
        const over = onGrid(acrossLimit, c);
        tries[n++] = over;
        for (const sign of [1, -1]) {
          const way = wayOnFace(walls, middle, over, 2, sign < 0);
          if (way > 0 && within(over + sign * way, acrossLimit)) tries[n++] = over + sign * way;
        }
      }
    }
    for (let i = 0; i < n; i++) tryBent(tries[i]!);
  }

  return { straight, bent };
}
