/** Whatever vent is asked for: a solid, a refusal, or a reason why it cannot be made. */

import { crossings, extentOf, meshFaults, preview, stl } from '@airspring/workshop/mesh';
import {
  ellipticFlare,
  exponentialFlare,
  type Flare,
  flareThrough,
  holeBySaw,
  printedTuning,
  roundFlare,
  twoPartVent,
  ventSegments,
  ventSolid,
} from '@airspring/workshop/solid';
import { expect } from 'vitest';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { lengthOf, maybe, noNumber, oddly } from '../../arbitrary/odd-input.js';
import { fc, test } from '../../arbitrary/property.js';
import { allFinite, answered } from '../answered.js';

/** Solids are dear: a quarter of the cases of other properties. */
const DEAR = Math.ceil(fuzzRuns / 4);

const sizes = oddly(fc.record({ depth: lengthOf(3, 60), widening: lengthOf(1, 25) }));
const point = fc.tuple(
  fc.double({ min: 0, max: 0.05, noNaN: true }),
  fc.double({ min: -1e-3, max: 0.02, noNaN: true }),
);
/** Flares that rise by any slope, or by none that is a number. */
const own = (slope: number): Flare => ({
  name: 'odd',
  depth: 0.02,
  widening: 0.02 * slope,
  curve: (t) => [0.02 * t, 0.02 * slope * t],
  sources: [],
});
const flare = fc.oneof(
  oddly(fc.record({ radius: lengthOf(2, 25) })).map((input) => answered(() => roundFlare(input))),
  sizes.map((input) => answered(() => ellipticFlare(input))),
  sizes.map((input) => answered(() => exponentialFlare(input))),
  fc
    .array(point, { maxLength: 5 })
    .map((points) => answered(() => flareThrough([[0, 0], ...points.sort(([a], [b]) => a - b)]))),
  fc.oneof(fc.double({ min: 0, max: 2 }), fc.double()).map(own),
);
/** Corners of triangles. */
const MANY = 60_000;
const fineness = fc.constantFrom('0.5 mm', '2 mm');
const screws = fc.record({
  count: fc.integer({ min: 0, max: 25 }),
  diameter: lengthOf(3, 6),
  circle: maybe(lengthOf(100, 150)),
  head: maybe(lengthOf(5, 12)),
});
const flange = fc.record({ reach: lengthOf(5, 60), thickness: maybe(lengthOf(2, 12)), screws: maybe(screws) });
const bend = fc.record({
  leg: lengthOf(30, 200),
  angle: fc.integer({ min: -1, max: 190 }).map((x) => `${x} deg`),
  centreLineRadius: lengthOf(30, 200),
  roll: maybe(fc.integer({ min: -400, max: 400 }).map((x) => `${x} deg`)),
});
const common = {
  length: lengthOf(60, 900),
  wall: maybe(lengthOf(0.8, 8)),
  nozzle: maybe(lengthOf(0.2, 0.8)),
  outerFlare: maybe(flare),
  innerFlare: maybe(flare),
  flange: maybe(flange),
  bends: maybe(fc.array(bend, { maxLength: 2 })),
  fineness,
};
const vent = fc.oneof(
  fc.record({ diameter: lengthOf(20, 120), ...common }),
  fc.record({ width: lengthOf(30, 300), height: lengthOf(5, 60), ...common }),
);
const litres = fc.integer({ min: 1, max: 500 }).map((volume) => `${volume} L` as const);

test.prop([oddly(vent), litres], { numRuns: DEAR })(
  'a vent is a solid that is drawn and tuned, or refused',
  (input, netVolume) => {
    const made = answered(() => ventSolid(input));
    if (made === undefined) return;
    allFinite([made.drawing.length, made.drawing.wall, extentOf(made.mesh)]);
    expect(meshFaults(made.mesh)).toEqual([]);
    // What is as fine as that is judged the same way, only slower.
    if (made.mesh.triangles.length > MANY) return;
    if (made.drawing.bends.length === 0) expect(crossings(made.mesh, 1)).toEqual([]);
    expect(stl(made.mesh).length).toBe(84 + (50 * made.mesh.triangles.length) / 3);
    expect(preview(made.mesh, { title: 'it' })).not.toMatch(noNumber);
    const tuned = answered(() => printedTuning({ vent: made, netVolume }));
    if (tuned) allFinite([tuned.drawn, tuned.printed, tuned.difference, tuned.narrowest, tuned.effectiveLength]);
  },
);

const segments = fc.record({
  vent,
  printer: fc.record({ width: lengthOf(90, 400), depth: lengthOf(90, 400), height: lengthOf(60, 400) }),
  overlap: maybe(lengthOf(4, 30)),
  clearance: maybe(lengthOf(0.05, 0.5)),
});
test.prop([oddly(segments)], { numRuns: DEAR })(
  'pieces of a vent are solids that the printer takes, or a reason',
  (input) => {
    const made = answered(() => ventSegments(input));
    if (made?.ok === false) expect(made.because[0]!.text).not.toMatch(noNumber);
    if (!made?.ok) return;
    for (const { mesh } of made.parts) {
      expect(meshFaults(mesh)).toEqual([]);
      expect(extentOf(mesh).least[2]).toBeGreaterThan(made.drawing.bends.length > 0 ? -Infinity : -1e-9);
    }
  },
);

const twoParts = fc.record({
  diameter: lengthOf(25, 120),
  length: lengthOf(80, 500),
  panelThickness: lengthOf(9, 40),
  wall: maybe(lengthOf(3, 8)),
  nozzle: maybe(lengthOf(0.2, 0.8)),
  outerFlare: maybe(flare),
  innerFlare: maybe(flare),
  widestInnerFlare: maybe(flare),
  clearance: maybe(lengthOf(0.1, 1)),
  cord: maybe(lengthOf(1, 4)),
  saws: maybe(fc.array(lengthOf(40, 250), { minLength: 1, maxLength: 4 })),
  play: maybe(lengthOf(0.1, 3)),
  cover: maybe(lengthOf(1, 15)),
  fineness,
});
test.prop([oddly(twoParts)], { numRuns: DEAR })(
  'a vent in two parts is two solids, or refused, or there is a reason',
  (input) => {
    const made = answered(() => twoPartVent(input));
    if (!made?.ok) return;
    allFinite([made.hole, made.flangeDiameter, made.proud, made.seat, made.clearance, made.cord]);
    for (const mesh of [made.flange, made.tube.mesh].filter((one) => one.triangles.length <= MANY))
      expect([meshFaults(mesh), crossings(mesh, 1)]).toEqual([[], []]);
  },
);

const saw = fc.record({
  through: lengthOf(5, 300),
  saws: fc.array(lengthOf(5, 300), { maxLength: 5 }),
  play: maybe(lengthOf(0.1, 9)),
});
test.prop([oddly(saw)], { numRuns: fuzzRuns })('a hole, or why no saw makes it', (input) => {
  const made = answered(() => holeBySaw(input));
  if (made?.ok) allFinite(made);
});
