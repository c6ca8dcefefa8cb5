import { InputError } from '@airspring/core/fault';
import { si } from '@airspring/core/quantity';
import type { SpaceShape } from '@airspring/core/space';
import { areaOf } from '@airspring/workshop/outline';
import {
  type BoxShapeInput,
  boxModes,
  boxShape,
  corner,
  cuboidAround,
  cylinder,
  innerVolumeOf,
  openSize,
  outerVolumeOf,
  panelsOf,
  quarterRound,
  spreadEdges,
  standardShapes,
  underSeat,
  wedge,
  wheelArch,
} from '@airspring/workshop/shape';
import { expect, test } from 'vitest';
import { faultsOf, pathsOf } from '../../refusal/faults.js';

const rectangle = (across: number, up: number) => [
  [0, 0],
  [across, 0],
  [across, up],
  [0, up],
];
const slanted = wedge({ across: '400 mm', up: '340 mm', top: '150 mm' });
const made = (input: BoxShapeInput) => {
  const shape = boxShape(input);
  if (!shape.ok) throw new Error(shape.because[0]?.text);
  return shape;
};
const box = made({ along: 'width', outer: { ...slanted, length: '600 mm' }, thickness: '18 mm' });

test('the panels of a wedge are named by where they lie, and cut at half the angles between them', () => {
  const panels = panelsOf(box);
  expect(panels.map(({ name }) => name)).toEqual(['bottom', 'slanted', 'top', 'front', 'left', 'right']);
  const degrees = (name: string) =>
    panels.find((panel) => panel.name === name)!.angles.map((angle) => Math.round((angle * 1800) / Math.PI) / 10);
  // The back leans by atan(250 / 340) = 36.3°: 53.7° at the bottom, 126.3° at the top.
  expect(degrees('bottom')).toEqual([45, 90, 26.8, 90]);
  expect(degrees('slanted')).toEqual([90, 63.2, 90, 26.8]);
  expect(degrees('left')).toEqual([90, 90, 90, 90]);
  const front = panels.find(({ name }) => name === 'front')!;
  expect(front.face).toBe('front');
  expect(front.from![0]).toBeCloseTo(0.018, 12);
  expect(front.outline[2]![0]).toBeCloseTo(0.564, 12);
  expect(front.outline[2]![1]).toBe(0.34);
});

test('the same box by its inside and by its outside', () => {
  const [layer] = box.inner;
  const inner = {
    outline: layer!.outline.map(([x, y]) => [si('length', x), si('length', y)] as const),
    length: '564 mm',
  } as const;
  const again = made({ along: 'width', inner, thickness: '18 mm' });
  expect(outerVolumeOf(again)).toBeCloseTo(outerVolumeOf(box), 12);
  expect(Object.values(cuboidAround(again)).map((edge) => Math.round(edge * 1e6))).toEqual([600_000, 340_000, 400_000]);
});

test('a thickness for each side follows its side, in whichever direction the corners run', () => {
  const sides = ['30 mm', '12 mm', '18 mm', '24 mm'] as const;
  const outer = { ...slanted, length: '600 mm' } as const;
  const one = made({ along: 'width', outer, thickness: { sides, ends: '18 mm' } });
  const [a, b, c, d] = slanted.outline;
  const turned = { outline: [d!, c!, b!, a!], length: '600 mm' } as const;
  const other = made({
    along: 'width',
    outer: turned,
    thickness: { sides: [sides[2], sides[1], sides[0], sides[3]], ends: '18 mm' },
  });
  expect(innerVolumeOf(other)).toBeCloseTo(innerVolumeOf(one), 12);
  expect(panelsOf(one).find(({ name }) => name === 'bottom')?.thickness).toBe(0.03);
});

test('every fault of a box is told at its path', () => {
  const wrong = {
    along: 'sideways',
    outer: [
      {
        outline: [
          ['0 mm', '0 mm'],
          ['1 kg', '0 mm'],
          ['0 mm', '1 m'],
        ],
        length: '-3 mm',
        colour: 'red',
      },
    ],
    inner: {},
    thickness: { sides: ['18 mm', '18 mm'], ends: '1 L' },
  };
  expect(pathsOf(() => boxShape(wrong as never))).toEqual([
    'box.along',
    'box.outer[0].colour',
    'box.outer',
    'box.thickness.ends',
    'box.outer[0].length',
    'box.outer[0].outline[1][0]',
  ]);
  expect(
    pathsOf(() =>
      boxShape({
        along: 'width',
        outer: { ...slanted, length: '1 m' },
        thickness: { sides: ['18 mm'], ends: '18 mm' },
      }),
    ),
  ).toEqual(['box.thickness.sides']);
  const apart = {
    outline: [
      ['500 mm', '0 mm'],
      ['900 mm', '0 mm'],
      ['900 mm', '300 mm'],
    ],
    length: '1 m',
  } as const;
  expect(
    pathsOf(() => boxShape({ along: 'width', outer: [{ ...slanted, length: '1 m' }, apart], thickness: '18 mm' })),
  ).toEqual(['box.outer[1].outline']);
  expect(
    pathsOf(() =>
      boxShape({
        along: 'width',
        outer: { ...cylinder({ diameter: '300 mm' }), bent: [{ first: 0, count: 900 }], length: '1 m' },
        thickness: '18 mm',
      }),
    ),
  ).toEqual(['box.outer.bent']);
  expect(pathsOf(() => wedge({ across: '300 mm', up: '1 m', top: '300 mm' }))).toEqual(['wedge.top']);
  expect(pathsOf(() => underSeat({ across: '300 mm', up: '300 mm', front: '300 mm', step: '400 mm' }))).toEqual([
    'underSeat.front',
    'underSeat.step',
  ]);
  expect(pathsOf(() => wheelArch({ across: '300 mm', up: '200 mm', arch: '250 mm' }))).toEqual(['wheelArch.arch']);
});

test('panels that leave nothing are impossible, in numbers', () => {
  const thick = (thickness: '18 mm' | '160 mm', length: '600 mm' | '30 mm') =>
    boxShape({ along: 'width', outer: { ...slanted, length }, thickness });
  expect(thick('160 mm', '600 mm')).toMatchObject({ ok: false, because: [{ code: 'panels-meet' }] });
  const short = thick('18 mm', '30 mm');
  expect(short.ok ? '' : short.because[0]!.text).toBe(
    'A layer of 30 mm is not longer than the panels that close it, each of 18 mm.',
  );
  const blunt = {
    outline: [
      ['0 mm', '0 mm'],
      ['400 mm', '0 mm'],
      ['400 mm', '290 mm'],
      ['390 mm', '300 mm'],
      ['0 mm', '300 mm'],
    ],
    length: '1 m',
  } as const;
  expect(boxShape({ along: 'width', outer: blunt, thickness: '18 mm' })).toMatchObject({
    ok: false,
    because: [{ code: 'side-too-short' }],
  });
});

test('where no size holds the air, the numbers say why', () => {
  const open = (netVolume: '90 L' | '1 L') =>
    openSize({
      box: (length) => ({ along: 'width', outer: { ...slanted, length }, thickness: '18 mm' }),
      from: '200 mm',
      to: '600 mm',
      netVolume,
      contents: { chamber: '2 L' },
    });
  const [more, less] = [open('90 L'), open('1 L')];
  expect(more.ok ? '' : more.because[0]!.text).toBe(
    'The air and what is in it take 92 L inside. At the greatest size, 600 mm, the box holds 40.23 L. Allow a greater size, or less air.',
  );
  expect(less.ok ? '' : less.because[0]!.code).toBe('too-large');
});

test('a length that is open is exact, with what stands in the box', () => {
  const found = openSize({
    box: (length) => ({ along: 'width', outer: { ...slanted, length }, thickness: '18 mm' }),
    from: '50 mm',
    to: '3 m',
    netVolume: '30 L',
    contents: { driver: { displacedVolume: '1.6 L' }, bracing: { fraction: si('ratio', 0.05) } },
  });
  expect(found.ok && innerVolumeOf(found.shape) * 0.95 - 0.0016).toBeCloseTo(0.03, 15);
});

test('modes across a section that is no rectangle are not computed, and the answer says so', () => {
  const { modes, notComputed } = boxModes(box, '700 Hz');
  expect(modes.map(({ order }) => order)).toEqual([
    [1, 0, 0],
    [2, 0, 0],
  ]);
  expect(notComputed).toContain('not computed');
  const outline = [
    ['0 mm', '0 mm'],
    ['300 mm', '0 mm'],
    ['300 mm', '200 mm'],
    ['0 mm', '200 mm'],
  ] as const;
  const cuboid = made({ along: 'depth', outer: { outline, length: '400 mm' }, thickness: '18 mm' });
  expect(boxModes(cuboid, '1 kHz').notComputed).toBeUndefined();
  expect(boxModes(cuboid, '1 kHz').modes[0]!.order).toEqual([0, 0, 1]);
});

test('edges in the ratio that is found hold the volume', () => {
  const { inner } = spreadEdges({ innerVolume: '40 L' });
  expect(inner.width * inner.height * inner.depth).toBeCloseTo(0.04, 12);
  expect(faultsOf(() => spreadEdges({ innerVolume: '-1 L' as never }))[0]).toMatchObject({ path: 'box.innerVolume' });
});

test.each([
  ['cylinder', {}],
  ['corner', {}],
  ['quarterRound', {}],
  ['wedge', {}],
  ['underSeat', { front: 0.2, step: 0.2 }],
  ['wheelArch', { arch: 0.2 }],
])('the volumes of a shape for a brief are those of the box of that length: %s', (name, fields) => {
  const choice = standardShapes.find((one) => one.name === name)!;
  const outer = [0.4, 0.5, 0.4] as const;
  const shape = choice.shape(fields, { outer, panelThickness: 0.018 });
  if ('ok' in shape) throw new Error(shape.because[0]?.text);
  const sections = {
    cylinder: () => cylinder({ diameter: '400 mm' }),
    corner: () => corner({ across: '400 mm', up: '400 mm' }),
    quarterRound: () => quarterRound({ radius: '400 mm' }),
    wedge: () => wedge({ across: '400 mm', up: '500 mm' }),
    underSeat: () => underSeat({ across: '400 mm', up: '500 mm', front: '200 mm', step: '200 mm' }),
    wheelArch: () => wheelArch({ across: '400 mm', up: '500 mm', arch: '200 mm' }),
  };
  for (const length of [0.2, 0.35]) {
    const whole = made({
      along: shape.open as never,
      outer: { ...sections[name as keyof typeof sections](), length: si('length', length) },
      thickness: '18 mm',
    });
    const edges = outer.map((edge, axis) => (['width', 'height', 'depth'][axis] === shape.open ? length : edge));
    const [cuboid, within] = [0, 0.036].map((t) => edges.reduce((product, edge) => product * (edge - t), 1));
    expect(shape.outerIn(cuboid!)).toBeCloseTo(outerVolumeOf(whole), 12);
    expect(shape.airIn(within!)).toBeCloseTo(innerVolumeOf(whole), 12);
    expect(shape.cuboidFor(shape.airIn(within!))).toBeCloseTo(within!, 14);
  }
});

test('no panel of a shape is larger than its space', () => {
  const fields: Readonly<Record<string, object>> = {
    underSeat: { front: 0.2, step: 0.3 },
    wheelArch: { arch: 0.2 },
    outline: {
      along: 'depth',
      corners: [
        [0, 0],
        [0.5, 0],
        [0.25, 0.5],
        [0, 0.5],
      ],
    },
    stack: {
      along: 'height',
      layers: [{ corners: rectangle(0.5, 0.5), length: 0.2 }, { corners: rectangle(0.3, 0.25) }],
    },
  };
  for (const choice of standardShapes) {
    const space = { outer: [0.5, 0.5, 0.5], panelThickness: 0.018 } as const;
    const shape = choice.shape((fields[choice.name] ?? {}) as never, space);
    if (!('panels' in shape)) throw new Error(choice.name);
    for (const { name, outline, bent } of shape.panels(space.outer)) {
      if (bent || name === 'slanted') continue;
      for (const point of outline)
        for (const at of point) expect(at, `${choice.name} ${name}`).toBeLessThanOrEqual(0.5 + 1e-9);
    }
  }
});

const stackOf = (layers: readonly object[], outer: readonly [number, number, number] = [0.5, 0.6, 0.4]) =>
  standardShapes
    .find(({ name }) => name === 'stack')!
    .shape({ along: 'height', layers }, { outer, panelThickness: 0.02 }) as SpaceShape;

test('a stack has the air of both of its layers, whichever is open', () => {
  // Two cuboids: 0.5 × 0.4 outside, and 0.3 × 0.3. The shelf between them belongs to the larger one, and the air goes on through it.
  const low = { corners: rectangle(0.5, 0.4) };
  const high = { corners: rectangle(0.3, 0.3) };
  const air = (lower: number, upper: number) => 0.46 * 0.36 * (lower - 0.04) + 0.26 * 0.26 * upper;
  const outside = (lower: number, upper: number) => 0.5 * 0.4 * lower + 0.3 * 0.3 * upper;
  for (const [layers, lower, upper] of [
    [[{ ...low, length: 0.2 }, high], 0.2, 0.3],
    [[{ ...low, length: 0.2 }, high], 0.2, 0.05],
    [[low, { ...high, length: 0.2 }], 0.15, 0.2],
    [[low, { ...high, length: 0.2 }], 0.4, 0.2],
  ] as const) {
    const stack = stackOf(layers);
    const whole = lower + upper;
    const within = 0.46 * 0.36 * (whole - 0.04);
    expect(stack.open).toBe('height');
    expect(stack.airIn(within)).toBeCloseTo(air(lower, upper), 12);
    expect(stack.cuboidFor(air(lower, upper))).toBeCloseTo(within, 12);
    expect(stack.outerIn(0.5 * 0.4 * whole)).toBeCloseTo(outside(lower, upper), 12);
    const panels = stack.panels([0.5, whole, 0.4]);
    const shelf = panels.find(({ name }) => name === 'shelf')!;
    expect(shelf.blank).toEqual([0.5, 0.4]);
    expect(shelf.volume).toBeCloseTo((0.5 * 0.4 - 0.26 * 0.26) * 0.02, 12);
    // Wood and air fill the outside.
    const wood = panels.reduce((sum, { volume }) => sum + volume, 0);
    expect(wood + air(lower, upper)).toBeCloseTo(outside(lower, upper), 12);
    const prisms = stack.prisms!([0.5, whole, 0.4])!;
    const drawn = prisms.layers.reduce((sum, { outline, from, to }) => sum + areaOf(outline) * (to - from), 0);
    expect(drawn).toBeCloseTo(outside(lower, upper), 12);
  }
});

test('too low for its layers a stack holds nothing, and its volume still rises', () => {
  const stack = stackOf([{ corners: rectangle(0.5, 0.4), length: 0.2 }, { corners: rectangle(0.3, 0.3) }]);
  const volumes = [0, 0.001, 0.01, 0.02, 0.03, 0.06].map(stack.airIn);
  volumes.slice(1).forEach((volume, i) => {
    expect(volume).toBeGreaterThan(volumes[i]!);
    expect(stack.airIn(stack.cuboidFor(volume))).toBeCloseTo(volume, 14);
  });
  const part = { part: 'driver', form: 'cylinder', axis: 'z', least: [0.1, 0.1, 0.02], greatest: [0.12, 0.12, 0.1] };
  expect(stack.interior([0.5, 0.15, 0.4]).contains(part as never)).toBe(false);
  expect(stack.panels([0.5, 0.15, 0.4])).toEqual([]);
});

test('a driver stands in one panel of a stack, and not over the joint to the next', () => {
  const interior = stackOf([{ corners: rectangle(0.5, 0.4), length: 0.3 }, { corners: rectangle(0.3, 0.3) }]).interior([
    0.5, 0.6, 0.4,
  ]);
  const at = (low: number, depth = 0.02) =>
    interior.contains({
      part: 'driver',
      form: 'cylinder',
      axis: 'z',
      least: [0.1, low, depth],
      greatest: [0.25, low + 0.15, 0.1],
    } as never);
  expect(at(0.1)).toBe(true);
  // Behind the shelf, at 280 mm, the lower panel ends.
  expect(at(0.129)).toBe(false);
  expect(at(0.2)).toBe(false);
  expect(at(0.301)).toBe(false);
  expect(at(0.303)).toBe(true);
  // Away from the panel nothing is cut.
  expect(at(0.2, 0.04)).toBe(true);
});

test.each<[string, readonly object[], string]>([
  [
    'no open layer',
    [
      { corners: rectangle(0.5, 0.4), length: 0.2 },
      { corners: rectangle(0.3, 0.3), length: 0.2 },
    ],
    'stack.layers',
  ],
  ['two open layers', [{ corners: rectangle(0.5, 0.4) }, { corners: rectangle(0.3, 0.3) }], 'stack.layers'],
  [
    'layers that take the whole height',
    [{ corners: rectangle(0.5, 0.4), length: 0.59 }, { corners: rectangle(0.3, 0.3) }],
    'stack.layers',
  ],
  [
    'corners beside the space',
    [{ corners: rectangle(0.4, 0.4), length: 0.2 }, { corners: rectangle(0.3, 0.3) }],
    'stack.layers',
  ],
  [
    'a layer neither within the other nor around it',
    [{ corners: rectangle(0.5, 0.3), length: 0.2 }, { corners: rectangle(0.3, 0.4) }],
    'stack.layers[1].corners',
  ],
])('%s is told', (_, layers, path) => {
  expect(pathsOf(() => stackOf(layers))).toEqual([path]);
});

test('a round shape needs a space that is as deep as it is wide', () => {
  const round = standardShapes.filter(({ name }) => name === 'cylinder' || name === 'quarterRound');
  for (const choice of round) {
    expect(() => choice.shape({}, { outer: [0.3, 0.5, 0.4], panelThickness: 0.018 })).toThrow(InputError);
  }
});
