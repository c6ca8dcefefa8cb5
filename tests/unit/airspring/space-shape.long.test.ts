import type { ShapeChoice } from '@airspring/core/space';
import { collisions } from '@airspring/core/space';
import { filesToBuildFrom } from '@airspring/workshop/dossier';
import { standardShapes } from '@airspring/workshop/shape';
import { briefFields, briefJsonSchema, type Design, design, printPage, reportText, standard } from 'airspring';
import { expect, test } from 'vitest';
import tower from '../../../packages/airspring/briefs/clock-tower.json' with { type: 'json' };
import van from '../../../packages/airspring/briefs/whale-van.json' with { type: 'json' };
import { run } from '../../../packages/airspring/src/command/run.js';
import { workOf } from '../../../packages/airspring/src/page/work.js';
import { memory } from '../../../packages/airspring/src/search/search.js';
import { balanced, searchFor } from '../../arbitrary/brief.js';
import { faultsOf, pathsOf } from '../../refusal/faults.js';

const options = { shapes: standardShapes };
const space = { width: '520 mm', height: '420 mm', depth: '400 mm', panelThickness: '15 mm', bracing: '0.5 L' };
const shaped = (shape: object, more: object = {}) => ({
  ...van,
  space: { ...space, shape },
  // One diameter: how a vent stands in a shape does not depend on how many were tried.
  vent: { ...van.vent, quiet: false, smallest: '60 mm', largest: '60 mm' },
  ...more,
});
const answers = memory((brief: string) => balanced(searchFor(JSON.parse(brief), standard, options), 2)!);
const designsOf = (brief: object): readonly Design[] => answers(JSON.stringify(brief)).designs;
const wedge = shaped({ wedge: { top: '180 mm' } });

/** A prism of a given area within its panels. */
const innerAreas: Readonly<Record<string, number>> = {
  // The slanted panel leans by 220 mm over 420 mm: within, its edge lies 15 mm / cos further in.
  wedge: (() => {
    const lean = 0.22 / 0.42;
    const back = (y: number) => 0.4 - lean * y - 0.015 * Math.hypot(1, lean) - 0.015;
    return ((back(0.015) + back(0.405)) / 2) * 0.39;
  })(),
  underSeat: 0.37 * 0.27 + 0.17 * 0.12,
};

test('the air of a design is what its section and its length leave, less what is in it', () => {
  const seat = shaped({ underSeat: { front: '300 mm', step: '200 mm' } }, { box: { kinds: ['vented'] } });
  const arrangements = [wedge, seat];
  for (const [i, name] of ['wedge', 'underSeat'].entries()) {
    for (const { box, vent, kind } of designsOf(arrangements[i]!)) {
      const length = box.outer[0] - 0.03;
      const tube = (Math.PI / 4) * vent!.outerDiameter ** 2 * (vent!.length - 0.015) * vent!.count;
      expect(kind).toBe('vented');
      expect(box.netVolume).toBeCloseTo(innerAreas[name]! * length - 0.0016 - 0.0005 - tube, 9);
    }
  }
});

test('drivers, vents and holes stand in the box, and the panels add up to it', () => {
  for (const { box } of designsOf(wedge)) {
    const [, , , panelThickness] = [...box.outer, box.panelThickness];
    const shape = standardShapes[0]!.shape(
      { top: 0.18 },
      { outer: [0.52, 0.42, 0.4], panelThickness: panelThickness! },
    );
    if ('ok' in shape) throw new Error('no shape');
    expect(collisions(shape.interior(box.outer), box.solids)).toEqual([]);
    const front = box.panels.find(({ name }) => name === 'front')!;
    for (const hole of box.holes) {
      const radius = hole.form === 'circle' ? hole.diameter / 2 : 0;
      expect(hole.board?.name).toBe('front');
      expect(hole.across - radius).toBeGreaterThan(0);
      expect(hole.across + radius).toBeLessThan(front.length);
      expect(hole.up + radius).toBeLessThan(front.width);
    }
    expect(front.length + 2 * box.panelThickness).toBeCloseTo(box.outer[0], 12);
    expect(box.panels.reduce((count, panel) => count + panel.count, 0)).toBe(6);
    expect(box.outerVolume).toBeCloseTo(((0.4 + 0.18) / 2) * 0.42 * box.outer[0], 12);
    expect([box.outer[1], box.outer[2]]).toEqual([0.42, 0.4]);
  }
});

test('the report, the sheet and the data tell the shape, its cuts and its corners', () => {
  const brief = shaped({ wedge: { top: '180 mm' } });
  const answer = answers(JSON.stringify(brief));
  const text = reportText(answer);
  expect(text.replace(/\s+/g, ' ')).toContain('it is a wedge, 180 mm deep at the top.');
  expect(text.replace(/\s+/g, ' ')).toContain('45° at the front, 31.2° at the slanted');
  expect(text.replace(/\s+/g, ' ')).toContain('the least rectangle that holds a whole panel');
  // 31.2° is 58.8° away from a square cut.
  expect(text.replace(/\s+/g, ' ')).toContain('Blades of most saws tilt by 45° at most');
  expect(text.replace(/\s+/g, ' ')).toContain('0 | 0, 400 | 0, 180 | 420, 0 | 420 mm.');
  expect(text).not.toMatch(/NaN|Infinity|undefined/);
  const page = printPage('A wedge', designsOf(brief));
  expect(page).toContain('meet in mitres');
  expect(page).toContain('Blades of most saws');
  expect(JSON.parse(JSON.stringify(answer))).toEqual(answer);
});

test('under a seat the boards of the step are listed as wide as their wood, with both surfaces', () => {
  const seat = shaped({ underSeat: { front: '300 mm', step: '200 mm' } }, { box: { kinds: ['vented'] } });
  for (const { box } of designsOf(seat)) {
    const step = box.panels.find(({ name }) => name === 'step 2')!;
    // 200 mm outside: a mitre in front, and 15 mm more inside where the step begins.
    expect(step.length).toBeCloseTo(0.215, 12);
    expect(step.surfaces!.outer[0]).toBeCloseTo(0.2, 12);
    expect(step.surfaces!.inner[0]).toBeCloseTo(0.2, 12);
    expect(step.meets).toEqual(['left', 'front', 'right', 'step 1']);
  }
});

/** Two cuboids on each other, 520 × 400 mm and 380 × 300 mm. */
const rectangle = (across: string, up: string) => [
  ['0 mm', '0 mm'],
  [across, '0 mm'],
  [across, up],
  ['0 mm', up],
];
const stacked = shaped(
  {
    stack: {
      along: 'height',
      layers: [
        { corners: rectangle('520 mm', '400 mm') },
        { corners: rectangle('380 mm', '300 mm'), length: '100 mm' },
      ],
    },
  },
  { box: { kinds: ['closed', 'vented'] } },
);

test('a brief may ask for a stack: its open layer is found, and its shelf has an opening', () => {
  const answer = answers(JSON.stringify(stacked));
  expect(answer.ok).toBe(true);
  for (const { box, vent } of designsOf(stacked)) {
    const lower = box.outer[1] - 0.1;
    const tube = vent ? (Math.PI / 4) * vent.outerDiameter ** 2 * (vent.length - 0.015) * vent.count : 0;
    expect([box.outer[0], box.outer[2]]).toEqual([0.52, 0.4]);
    expect(box.netVolume).toBeCloseTo(0.49 * 0.37 * (lower - 0.03) + 0.35 * 0.27 * 0.1 - 0.0016 - 0.0005 - tube, 9);
    expect(box.outerVolume).toBeCloseTo(0.52 * 0.4 * lower + 0.38 * 0.3 * 0.1, 12);
    const panel = (name: string | undefined) => box.shape!.panels.find((one) => one.name === name)!;
    for (const hole of box.holes) {
      if (hole.form !== 'circle') throw new Error('a round hole');
      const [across, up] = panel(hole.board?.name ?? hole.face).blank;
      for (const [at, size] of [
        [hole.across, across],
        [hole.up, up],
      ] as const) {
        expect(at - hole.diameter / 2).toBeGreaterThan(0.002);
        expect(at + hole.diameter / 2).toBeLessThan(size - 0.002);
      }
    }
    const shelf = box.panels.find(({ name }) => name === 'shelf')!;
    expect([shelf.length, shelf.width]).toEqual([0.52, 0.4]);
    expect(shelf.opening).toHaveLength(4);
  }
  const text = reportText(answer).replace(/\s+/g, ' ');
  expect(text).toContain(
    'it is a stack of 2 sections along its height, from the bottom: 4 sides over the rest, then 4 sides over 100 mm.',
  );
  expect(text).toContain('a shelf covers the larger section where it meets a smaller one');
  expect(text).toContain('Opening in the shelf: 15 | 15, 365 | 15, 365 | 285, 15 | 285 mm.');
  expect(JSON.parse(JSON.stringify(answer))).toEqual(answer);
  expect(briefFields(options).map(({ path }) => path)).toContain('space.shape.stack.layers[].corners');
});

test('the clock tower holds the air that its two sections leave, and its pages cut the shelf', async () => {
  const brief = { ...tower, box: { kinds: ['vented'] } };
  const [{ box, vent }] = designsOf(brief) as [Design];
  // Five sides, one of them across a corner of 60 mm: 15 mm further in both sides lose less of it.
  const cut = 0.06 - 0.015 * (2 - Math.SQRT2);
  const opening = 0.25 * 0.21 - cut ** 2 / 2;
  const plinth = box.outer[1] - 0.26;
  const tube = (Math.PI / 4) * vent!.outerDiameter ** 2 * (vent!.length - 0.015);
  expect(box.netVolume).toBeCloseTo(0.37 * 0.31 * (plinth - 0.03) + opening * 0.26 - 0.001 - 0.0003 - tube, 9);
  expect(box.outerVolume).toBeCloseTo(0.4 * 0.34 * plinth + (0.28 * 0.24 - 0.06 ** 2 / 2) * 0.26, 12);
  const { files, notes } = await filesToBuildFrom(
    workOf(designsOf(brief)[0]!, searchFor(brief, standard, options).job),
  );
  expect(notes).toEqual([]);
  const list = String(files.find(({ path }) => path === 'cut-list.csv')!.contents);
  expect(list).toContain('shelf,1,400,340,15,birch plywood,along the length,,opening');
  expect(list).toContain('bottom,1,400,340,15,birch plywood,along the length,,\r\n');
});

test('a joint that a box of a shape does not have is told, and the last panel is one across', () => {
  const brief = shaped({ wedge: { top: '180 mm' } }, { workshop: { joint: { rabbet: { depth: '8 mm' } } } });
  const answer = answers(JSON.stringify(brief));
  expect(reportText(answer).replace(/\s+/g, ' ')).toContain('The brief asks for rabbets ("workshop.joint")');
  expect(reportText(answers(JSON.stringify(wedge)))).not.toContain('workshop.joint');
  const job = searchFor(brief, standard, options).job;
  const { box } = workOf(designsOf(brief)[0]!, job);
  expect(box.closes).toBe('right');
  expect(box.joints).toContain('rabbets');
  expect(box.boards.map(({ name }) => name)).toEqual(['bottom', 'slanted', 'top', 'front', 'left', 'right']);
});

test('over an arch the outer side is grooved, and its layers grow shorter inwards', () => {
  const arch = shaped(
    { wheelArch: { arch: '200 mm' } },
    { box: { kinds: ['closed'] }, wanted: { ...van.wanted, lowest: '50 Hz', level: '90 dB' } },
  );
  const text = reportText(answers(JSON.stringify(arch))).replace(/\s+/g, ' ');
  expect(text).not.toContain('Blades of most saws');
  expect(text).toContain('groove its outer side, which is the hollow one,');
  expect(text).toContain('bent by 90° in all');
  // 13 mm deep over a quarter of a turn.
  expect(text).toContain('all of them together are 20.4 mm wide');
});

test('a brief that cannot be met gets wider in the edge that is open, and in no other', () => {
  const answer = design(
    {
      ...wedge,
      wanted: { ...van.wanted, lowest: '26 Hz', level: '104 dB' },
      space: { ...wedge.space, width: '340 mm' },
      vent: { ...wedge.vent, bends: 0 },
    },
    options,
  );
  expect(answer.ok).toBe(false);
  const paths = answer.ok ? [] : answer.nearest!.changes.map(({ path }) => path);
  expect(paths).toContain('space.width');
  expect(paths).not.toContain('space.height');
  expect(paths).not.toContain('space.depth');
  if (!answer.ok) for (const { box } of answer.nearest!.answer.designs) expect(box.outer.slice(1)).toEqual([0.42, 0.4]);
});

const told = (brief: unknown, shapes: readonly ShapeChoice[] = standardShapes) =>
  pathsOf(() => design(brief, { shapes }));

test.each<[string, object, string[]]>([
  ['no such shape', shaped({ sphere: {} }), ['space.shape.sphere']],
  ['no shape named', shaped({}), ['space.shape']],
  ['two shapes', shaped({ wedge: {}, corner: {} }), ['space.shape']],
  ['a misspelt field', shaped({ wedge: { tpo: '1 mm' } }), ['space.shape.wedge.tpo']],
  ['a wrong unit', shaped({ wedge: { top: '1 kg' } }), ['space.shape.wedge.top']],
  ['a missing field', shaped({ wheelArch: {} }), ['space.shape.wheelArch.arch']],
  ['a top as deep as the bottom', shaped({ wedge: { top: '400 mm' } }), ['space.shape.wedge.top']],
  ['a round box that is not square', shaped({ cylinder: {} }), ['space.shape.cylinder']],
  [
    'corners beside the space',
    shaped({
      outline: {
        along: 'width',
        corners: [
          ['0 mm', '0 mm'],
          ['300 mm', '0 mm'],
          ['0 mm', '420 mm'],
        ],
      },
    }),
    ['space.shape.outline.corners'],
  ],
  [
    'sides that cross',
    shaped({
      outline: {
        along: 'width',
        corners: [
          ['0 mm', '0 mm'],
          ['400 mm', '420 mm'],
          ['400 mm', '0 mm'],
          ['0 mm', '420 mm'],
        ],
      },
    }),
    ['space.shape.outline.corners[2]'],
  ],
  [
    'a corner without its height',
    shaped({ outline: { along: 'width', corners: [['0 mm'], ['400 mm', '0 mm'], ['0 mm', '420 mm']] } }),
    ['space.shape.outline.corners[0][1]'],
  ],
  [
    'panels that leave nothing',
    { ...shaped({ wedge: {} }), space: { ...space, panelThickness: '150 mm', shape: { wedge: {} } } },
    ['space.shape.wedge'],
  ],
  [
    'a stack of one layer',
    shaped({ stack: { along: 'height', layers: [{ corners: rectangle('520 mm', '400 mm') }] } }),
    ['space.shape.stack.layers'],
  ],
  [
    'a misspelt field of a layer',
    shaped({ stack: { along: 'height', layers: [{ corners: rectangle('520 mm', '400 mm') }, { corner: [] }] } }),
    ['space.shape.stack.layers[1].corner', 'space.shape.stack.layers[1].corners'],
  ],
  [
    'layers neither within each other nor around each other',
    shaped({
      stack: {
        along: 'height',
        layers: [
          { corners: rectangle('520 mm', '300 mm'), length: '150 mm' },
          { corners: rectangle('380 mm', '400 mm') },
        ],
      },
    }),
    ['space.shape.stack.layers[1].corners'],
  ],
  ['a kind that needs a cuboid', shaped({ wedge: {} }, { box: { kinds: ['closed', 'line'] } }), ['box.kinds']],
  ['a vent where there is no panel', shaped({ wedge: {} }, { vent: { ...van.vent, faces: ['back'] } }), ['vent.faces']],
  ['a shape without a front', shaped({ corner: {} }), ['vent.faces', 'drivers[0].faces']],
  [
    'a round shape without a front',
    { ...shaped({ cylinder: {} }), space: { ...space, width: '400 mm', depth: '400 mm', shape: { cylinder: {} } } },
    ['vent.faces', 'drivers[0].faces'],
  ],
  [
    'a vent at a wall of the room',
    shaped(
      { corner: {} },
      { drivers: [{ ...van.drivers[0], faces: ['top'] }], vent: { ...van.vent, faces: ['right'] } },
    ),
    ['vent.faces'],
  ],
])('%s is told at its path', (_, brief, paths) => {
  expect(told(brief)).toEqual(paths);
});

test('without shapes one is refused, and it says where some are', () => {
  const [fault, ...others] = faultsOf(() => design(wedge));
  expect(others).toEqual([]);
  expect(fault).toMatchObject({ path: 'space.shape' });
  expect(fault!.remedy).toContain('@airspring/workshop');
  expect(briefFields().some(({ path }) => path.startsWith('space.shape'))).toBe(false);
  expect(briefFields(options).map(({ path }) => path)).toContain('space.shape.wedge.top');
  expect(JSON.stringify(briefJsonSchema(options))).toContain('wheelArch');
});

test('where the package is not installed, one line says how to install it', async () => {
  const missing = async () => {
    throw Object.assign(new Error("Cannot find package '@airspring/workshop' imported from here"), {
      code: 'ERR_MODULE_NOT_FOUND',
    });
  };
  const brief = new URL('../../../packages/airspring/briefs/whale-van.json', import.meta.url).pathname;
  const { status, error } = await run(['design', brief], '.', undefined, { shapes: missing });
  expect(status).toBe(7);
  expect(error).toBe('a box that is no cuboid is drawn by another package: npm install @airspring/workshop\n');
});

test('a shape of a stranger is searched as ours are', () => {
  // A box whose lower half alone may be used: a cuboid half as high.
  const half: ShapeChoice = {
    name: 'lowerHalf',
    what: 'the lower half of the space',
    fields: {},
    shape: (_, { outer: [, height, depth], panelThickness: t }) => {
      const inside = (height / 2 - 2 * t) / (height - 2 * t);
      return {
        called: ['the lower half'],
        open: 'width',
        faces: ['left', 'right', 'bottom', 'front', 'back'],
        airIn: (cuboid) => cuboid * inside,
        cuboidFor: (air) => air / inside,
        outerIn: (cuboid) => cuboid / 2,
        interior: ([width]) => {
          const [low, high] = [
            [t, t, t],
            [width - t, height / 2 - t, depth - t],
          ];
          return {
            faces: ['left', 'right', 'bottom', 'front', 'back'],
            contains: ({ least, greatest }) =>
              least.every((at, k) => at >= low[k]! - 1e-9 && greatest[k]! <= high[k]! + 1e-9),
            way: ({ least, greatest }, towards) => {
              const face = ['left', 'right', 'bottom', 'top', 'front', 'back'].indexOf(towards);
              const k = face >> 1;
              return (face & 1 ? high[k]! - greatest[k]! : least[k]! - low[k]!) as never;
            },
          };
        },
        panels: () => [],
      };
    },
  };
  const brief = {
    ...van,
    box: { kinds: ['closed'] },
    wanted: { ...van.wanted, lowest: '50 Hz', level: '90 dB' },
    space: { ...space, width: '600 mm', height: '700 mm', shape: { lowerHalf: {} } },
  };
  const { shape: _, ...plain } = brief.space;
  const mine = design(brief, { shapes: [half] });
  const cuboid = design({ ...brief, space: { ...plain, height: '350 mm', exactly: ['height', 'depth'] } });
  expect(mine.ok && mine.designs[0]!.box.netVolume).toBeCloseTo(cuboid.ok ? cuboid.designs[0]!.box.netVolume : 0, 9);
});
