/** Whatever box is asked for: pieces, drawings, sheets and volumes without a number that is none, a refusal, or a reason. */

import { boxDrawing, pieceDrawing, sheetDrawing, toSvg } from '@airspring/workshop/drawing';
import { nest } from '@airspring/workshop/nesting';
import { insetOf } from '@airspring/workshop/outline';
import { butt, cutList, cutListCsv, mitre, panelBox, rabbet, shelf, windowBrace } from '@airspring/workshop/panel';
import {
  boxModes,
  boxShape,
  corner,
  cylinder,
  innerVolumeOf,
  interiorOf,
  openSize,
  outerVolumeOf,
  panelsOf,
  quarterRound,
  spreadEdges,
  underSeat,
  wedge,
  wheelArch,
} from '@airspring/workshop/shape';
import { expect } from 'vitest';
import { cases, fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { lengthOf, maybe, noNumber, oddly } from '../../arbitrary/odd-input.js';
import { fc, test } from '../../arbitrary/property.js';
import { allFinite, answered } from '../answered.js';

const edge = lengthOf(150, 800);
const faces = ['left', 'right', 'bottom', 'top', 'front', 'back'] as const;
const form = fc.oneof(
  fc.record({ diameter: lengthOf(10, 250) }),
  fc.record({ width: lengthOf(20, 200), height: lengthOf(20, 200), cornerRadius: maybe(lengthOf(1, 20)) }),
);
const cutout = fc.record({
  face: fc.constantFrom(...faces),
  part: fc.constantFrom('driver', 'vent'),
  across: lengthOf(60, 300),
  up: lengthOf(60, 300),
  opening: form,
  recess: maybe(fc.tuple(form, lengthOf(1, 12)).map(([one, depth]) => ({ ...one, depth }))),
  bolts: maybe(
    fc.record({ count: fc.integer({ min: 1, max: 12 }), diameter: lengthOf(30, 250), hole: lengthOf(2, 8) }),
  ),
  roundOver: maybe(lengthOf(1, 12)),
});
const joint = fc.oneof(
  fc.constantFrom(butt, mitre),
  lengthOf(2, 16).map((depth) => rabbet({ depth: depth as never })),
);
const brace = fc.record({
  across: fc.constantFrom('width', 'height', 'depth'),
  at: lengthOf(50, 400),
  thickness: maybe(lengthOf(6, 30)),
  form: fc.oneof(
    lengthOf(10, 120).map((border) => windowBrace({ border: border as never })),
    lengthOf(30, 300).map((reach) => shelf({ reach: reach as never })),
  ),
});
const panels = fc.record({
  outer: fc.record({ width: edge, height: edge, depth: edge }),
  thickness: lengthOf(6, 40),
  joint: maybe(joint),
  recess: maybe(fc.record({ front: lengthOf(2, 30) })),
  innerLayer: maybe(fc.record({ front: maybe(lengthOf(6, 25)), top: maybe(lengthOf(6, 25)) })),
  roundOver: maybe(fc.record({ 'left-front': lengthOf(1, 20) })),
  braces: maybe(fc.array(brace, { maxLength: 2 })),
  cutouts: maybe(fc.array(cutout, { maxLength: 2 })),
  play: maybe(lengthOf(0.5, 5)),
});
const sawing = fc.record({
  sheets: fc.array(
    fc.record({
      length: lengthOf(300, 4000),
      width: lengthOf(300, 2500),
      count: maybe(fc.integer({ min: 1, max: 5 })),
    }),
    { minLength: 1, maxLength: 3 },
  ),
  kerf: lengthOf(1, 6),
  trim: maybe(lengthOf(2, 30)),
});

test.prop([oddly(panels), oddly(sawing)], { numRuns: fuzzRuns })(
  'a box of panels is drawn and sawn, or refused, or there is a reason',
  (input, saw) => {
    const box = answered(() => panelBox(input));
    if (box?.ok === false) expect(box.because.map(({ text }) => text).join()).not.toMatch(noNumber);
    if (!box?.ok) return;
    allFinite(JSON.parse(JSON.stringify(box, (_, value) => (Number.isNaN(value) ? 'NaN' : value))));
    const rows = cutList(box);
    expect(cutListCsv(rows)).not.toMatch(noNumber);
    expect(rows.filter(({ length, width, thickness }) => !(Math.min(length, width, thickness) > 0))).toEqual([]);
    for (const piece of box.pieces) expect(toSvg(pieceDrawing(piece))).not.toMatch(noNumber);
    expect(toSvg(boxDrawing(box))).not.toMatch(noNumber);
    const parts = rows.map(({ names, grained, ...row }) => ({
      name: names[0]!,
      length: row.length,
      width: row.width,
      count: row.count,
      grained,
    }));
    const layout = answered(() => nest({ ...(saw as { sheets: never; kerf: never }), parts }));
    if (layout?.ok === false) expect(layout.because.map(({ text }) => text).join()).not.toMatch(noNumber);
    if (!layout?.ok) return;
    allFinite(layout);
    for (const sheet of layout.sheets) expect(toSvg(sheetDrawing(sheet, box))).not.toMatch(noNumber);
  },
);

const place = fc.oneof(
  fc.integer({ min: 0, max: 12 }).map((x) => `${50 * x} mm`),
  lengthOf(1, 600),
);
const across = { across: edge, up: edge };
const section = fc.oneof(
  fc.array(fc.tuple(place, place), { minLength: 3, maxLength: 6 }).map((outline) => ({ outline })),
  oddly(fc.record({ ...across, top: maybe(lengthOf(20, 300)) })).map((x) => answered(() => wedge(x))),
  oddly(fc.record({ diameter: edge })).map((x) => answered(() => cylinder(x))),
  oddly(fc.record(across)).map((x) => answered(() => corner(x))),
  oddly(fc.record({ radius: edge })).map((x) => answered(() => quarterRound(x))),
  oddly(fc.record({ ...across, front: lengthOf(60, 300), step: lengthOf(60, 300) })).map((x) =>
    answered(() => underSeat(x)),
  ),
  oddly(fc.record({ ...across, arch: lengthOf(60, 300) })).map((x) => answered(() => wheelArch(x))),
);
const layer = fc.tuple(section, lengthOf(100, 900)).map(([one, length]) => ({ ...one, length }));
const prism = fc
  .record({
    along: fc.constantFrom('width', 'height', 'depth'),
    layers: fc.oneof({ weight: 6, arbitrary: layer }, { weight: 1, arbitrary: fc.array(layer, { maxLength: 3 }) }),
    inside: fc.boolean(),
    thickness: fc.oneof(lengthOf(3, 60), fc.record({ sides: lengthOf(3, 60), ends: lengthOf(3, 60) })),
  })
  .map(({ along, layers, inside, thickness }) => ({ along, [inside ? 'inner' : 'outer']: layers, thickness }));

test.prop([oddly(prism), layer], { numRuns: fuzzRuns })(
  'a box of any section has volumes and panels, or is refused, or there is a reason',
  (input, open) => {
    const shape = answered(() => boxShape(input));
    if (shape?.ok === false) expect(shape.because.map(({ text }) => text).join()).not.toMatch(noNumber);
    if (shape?.ok) {
      const [inner, outer] = [innerVolumeOf(shape), outerVolumeOf(shape)];
      expect(inner > 0 && inner < outer).toBe(true);
      allFinite(panelsOf(shape));
      interiorOf(shape);
      allFinite(boxModes(shape, '300 Hz').modes);
    }
    const box = (length: unknown) => ({ along: 'width', outer: { ...open, length }, thickness: '18 mm' }) as never;
    const found = answered(() => openSize({ box, from: '20 mm', to: '3 m', netVolume: '20 L' }));
    if (found?.ok) expect(innerVolumeOf(found.shape)).toBeCloseTo(0.02, 9);
  },
);

const coordinate = fc.double({ min: -1, max: 1, noNaN: true });
test.prop(
  [
    fc.array(fc.tuple(coordinate, coordinate), { minLength: 3, maxLength: 9 }),
    fc.double({ min: -0.3, max: 0.3, noNaN: true }),
  ],
  { numRuns: fuzzRuns },
)('within a figure that may cross itself: finite corners or a reason', (outline, thickness) => {
  const made = insetOf(
    outline,
    outline.map(() => thickness),
  );
  if (made.ok) allFinite(made);
  else expect(made.because[0]!.text).not.toMatch(noNumber);
});

test.prop([oddly(fc.record({ innerVolume: fc.integer({ min: 1, max: 900 }).map((x) => `${x} L`) }))], {
  numRuns: cases(9),
})('edges that keep modes apart, or refused', (input) => {
  const made = answered(() => spreadEdges(input));
  if (made) allFinite(made);
});
