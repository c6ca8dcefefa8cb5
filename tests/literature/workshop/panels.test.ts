/** Panels of boxes, against `solids.py` beside this file: walls as what lies between two cuboids. */
import { si } from '@airspring/core/quantity';
import {
  board,
  butt,
  cutList,
  cutoutOf,
  mitre,
  type PanelBox,
  panelBox,
  rabbet,
  shelf,
  windowBrace,
} from '@airspring/workshop/panel';
import { check } from '../../ledger/check.js';
import fixtures from './solids.json' with { type: 'json' };

const { boxes, windows, shear, program } = fixtures;
const byPython = (how: string) => ({
  key: 'scipy',
  locator: `${program}: ${how}; tests/literature/workshop/solids.py`,
});
const base = { status: 'derived', kind: 'program' } as const;
const exact = {
  relative: 1e-12,
  why: 'double precision on both sides; volumes of slopes by the rule of Simpson',
} as const;
const rows = (list: readonly unknown[]) => ({ row: { value: list.map((_, i) => i), unit: 'row' } });
const m = (metres: number) => si('length', metres);

function made(row: number, joint = butt): PanelBox {
  const { outer, thickness } = boxes[row]!;
  const [width, height, depth] = outer.map(m) as [never, never, never];
  const box = panelBox({ outer: { width, height, depth }, thickness: m(thickness), joint });
  if (!box.ok) throw new Error(box.because[0]?.text);
  return box;
}
const volume = ({ pieces }: PanelBox) => pieces.reduce((sum, piece) => sum + piece.volume, 0);
const walls = boxes.map((box) => box.walls);

check('panel.volume.butt', {
  ...base,
  formula: 'panel/panelBox',
  source: byPython('the walls between two cuboids; butt joints'),
  given: rows(boxes),
  got: ({ row }) => volume(made(row)),
  expected: walls,
  unit: 'm³',
  tolerance: exact,
});

check('panel.volume.mitre', {
  ...base,
  formula: 'panel/panelBox',
  source: byPython('the walls between two cuboids; mitred edges'),
  given: rows(boxes),
  got: ({ row }) => volume(made(row, mitre)),
  expected: walls,
  unit: 'm³',
  tolerance: { relative: 1e-11, why: 'sections are taken a billionth of the thickness inside the board' },
});

check('panel.volume.rabbet', {
  ...base,
  formula: 'panel/rabbet',
  source: byPython('the walls between two cuboids; rabbets of half the thickness'),
  given: rows(boxes),
  got: ({ row }) => volume(made(row, rabbet({ depth: m(boxes[row]!.thickness / 2) }))),
  expected: walls,
  unit: 'm³',
  tolerance: exact,
});

check('panel.list.butt', {
  ...base,
  formula: 'panel/cutList',
  source: byPython('the sides stand between front and back, bottom and top; their area'),
  given: rows(boxes),
  got: ({ row }) => {
    const sides = cutList(made(row)).find(({ names }) => names.includes('left'));
    return sides === undefined ? Number.NaN : sides.length * sides.width * sides.count;
  },
  expected: boxes.map(({ buttSide: [up, deep] }) => 2 * up! * deep!),
  unit: 'm²',
  tolerance: exact,
});

check('panel.brace.window', {
  ...base,
  formula: 'panel/windowBrace',
  source: byPython('a border around one opening'),
  given: rows(windows),
  got: ({ row }) => {
    const { space, border } = windows[row]!;
    const [one] = windowBrace({ border: m(border) })([space[0]!, space[1]!])!.windows;
    return (one!.greatest[0] - one!.least[0]) * (one!.greatest[1] - one!.least[1]);
  },
  expected: windows.map(({ opening: [across, up] }) => across! * up!),
  unit: 'm²',
  tolerance: exact,
});

check('panel.brace.shelf', {
  ...base,
  formula: 'panel/shelf',
  source: byPython('a board as wide as the space that reaches a part of the way'),
  given: rows(windows),
  got: ({ row }) => {
    const { space, border } = windows[row]!;
    const { least, greatest } = shelf({ reach: m(border) })([space[0]!, space[1]!])!;
    return (greatest[0] - least[0]) * (greatest[1] - least[1]);
  },
  expected: windows.map(({ space, border }) => space[0]! * border),
  unit: 'm²',
  tolerance: exact,
});

check('panel.board.shear', {
  ...base,
  formula: 'panel/board',
  source: byPython('the shear modulus of a board that is alike in all directions, with the mean of both moduli'),
  given: rows(shear),
  got: ({ row }) => {
    const { along, across, nu } = shear[row]!;
    return board({
      name: 'a board',
      density: '700 kg/m³',
      modulusAlong: si('elasticModulus', along),
      modulusAcross: si('elasticModulus', across),
      poissonRatio: si('ratio', nu),
    }).shearModulus;
  },
  expected: shear.map((one) => one.shear),
  unit: 'Pa',
  tolerance: exact,
});

check('panel.cutout.place', {
  ...base,
  formula: 'panel/cutoutOf',
  source: byPython('a hole of the side is measured from the front and from the bottom'),
  given: { at: { value: [0.1, 0.15, 0.2], unit: 'm' } },
  got: ({ at }) => {
    const centre = [m(0), m(0.12), m(at)] as const;
    return cutoutOf({ part: 'driver', face: 'left', form: 'circle', diameter: m(0.1), centre }).across as number;
  },
  expected: [0.1, 0.15, 0.2],
  unit: 'm',
  tolerance: exact,
});

check('panel.brace.window-place', {
  ...base,
  formula: 'panel/windowBrace',
  source: byPython('the far corner of the opening: the space less the border'),
  given: rows(windows),
  got: ({ row }) => {
    const { space, border } = windows[row]!;
    const brace = windowBrace({ border: m(border) })([space[0]!, space[1]!])!;
    return brace.windows[0]!.greatest[0] + brace.windows[0]!.cornerRadius + brace.greatest[1];
  },
  expected: windows.map(({ space, border }) => space[0]! - border + border / 4 + space[1]!),
  unit: 'm',
  tolerance: exact,
});

check('panel.brace.shelf-place', {
  ...base,
  formula: 'panel/shelf',
  source: byPython('the shelf ends at the upper side of the space'),
  given: rows(windows),
  got: ({ row }) => {
    const { space, border } = windows[row]!;
    return shelf({ reach: m(border) })([space[0]!, space[1]!])!.greatest[1];
  },
  expected: windows.map(({ space }) => space[1]!),
  unit: 'm',
  tolerance: exact,
});

check('panel.box.inside', {
  ...base,
  formula: 'panel/panelBox',
  source: byPython('the inner cuboid: the outer one less its walls'),
  given: rows(boxes),
  got: ({ row }) => {
    const { width, height, depth } = made(row).inner;
    return width * height * depth;
  },
  expected: boxes.map(({ outer: [w, h, d], walls: around }) => w! * h! * d! - around),
  unit: 'm³',
  tolerance: exact,
});

check('panel.box.pieces', {
  ...base,
  formula: 'panel/panelBox',
  source: byPython('boards of butt joints are cuboids: width, height and thickness multiplied'),
  given: rows(boxes),
  got: ({ row }) => made(row).pieces.reduce((sum, { width, height, thickness }) => sum + width * height * thickness, 0),
  expected: walls,
  unit: 'm³',
  tolerance: exact,
});

check('panel.box.mitre', {
  ...base,
  formula: 'panel/panelBox',
  source: byPython('panels of one thickness meet at 45°, on four edges of each'),
  given: rows(boxes),
  got: ({ row }) =>
    made(row, mitre).pieces.reduce(
      (sum, { edges }) =>
        sum +
        Object.values(edges).reduce(
          (all, { cuts }) => all + cuts.reduce((one, cut) => one + (cut.form === 'bevel' ? cut.angle : 0), 0),
          0,
        ),
      0,
    ),
  expected: boxes.map(() => 6 * 4 * (Math.PI / 4)),
  unit: 'rad',
  tolerance: exact,
});

check('panel.list.volume', {
  ...base,
  formula: 'panel/cutList',
  source: byPython('rows of a box of butt joints, multiplied'),
  given: rows(boxes),
  got: ({ row }) =>
    cutList(made(row)).reduce((sum, one) => sum + one.count * one.length * one.width * one.thickness, 0),
  expected: walls,
  unit: 'm³',
  tolerance: exact,
});

check('panel.cutout.size', {
  ...base,
  formula: 'panel/cutoutOf',
  source: byPython('the height of its centre and its diameter'),
  given: { at: { value: [0.1, 0.15, 0.2], unit: 'm' } },
  got: ({ at }) => {
    const centre = [m(0), m(0.12), m(at)] as const;
    const { up, opening } = cutoutOf({ part: 'driver', face: 'left', form: 'circle', diameter: m(at / 2), centre });
    return (up as number) + ((opening as { diameter: number }).diameter as number);
  },
  expected: [0.12 + 0.05, 0.12 + 0.075, 0.12 + 0.1],
  unit: 'm',
  tolerance: exact,
});
