import { isInputError } from '@airspring/core/fault';
import { type Brief, design, type Hole, type Met, reportText } from 'airspring';
import { expect, test } from 'vitest';
import { briefFacts } from '../../../docs-site/src/brief-facts.js';
import { boxFigure } from '../../../docs-site/src/figures/box-drawing.js';
import { forcesCancel } from '../../../packages/airspring/src/kind/forces-cancel.js';
import { bestOf, demo, demoRadiator, metByWeights } from '../../arbitrary/brief.js';

const space = { ...demo.space, width: '700 mm', height: '420 mm', depth: '420 mm', volume: '110 L' };
const roomy = { ...demo, space } as Brief;
const [one] = demo.drivers;

const withDrivers = (more: object, rest: object = {}): Brief =>
  ({ ...roomy, ...rest, drivers: [{ ...one, ...more }] }) as unknown as Brief;
const flat = (text: string) => text.replace(/\s+/g, ' ');
const holesOf = ({ box }: Met['designs'][number], what: string) => box.holes.filter((hole) => hole.what === what);

const directions: Readonly<Record<Hole['face'], readonly [number, number, number]>> = {
  left: [1, 0, 0],
  right: [-1, 0, 0],
  bottom: [0, 1, 0],
  top: [0, -1, 0],
  front: [0, 0, 1],
  back: [0, 0, -1],
};
/** Force and moment of unit forces inwards, one at each hole. */
function loadOf(holes: readonly Hole[], [width, height, depth]: readonly [number, number, number]): number[] {
  const sums = [0, 0, 0, 0, 0, 0];
  for (const { face, across, up } of holes) {
    const f = directions[face];
    const [x, y, z] = {
      left: [0, up, across],
      right: [width, up, across],
      bottom: [across, 0, up],
      top: [across, height, up],
      front: [across, up, 0],
      back: [across, up, depth],
    }[face] as [number, number, number];
    const moment = [y * f[2] - z * f[1], z * f[0] - x * f[2], x * f[1] - y * f[0]];
    [...f, ...moment].forEach((part, i) => {
      sums[i] = sums[i]! + part;
    });
  }
  return sums;
}

test('opposed drivers stand back to back, their forces cancel, and the report says so', { timeout: 30_000 }, () => {
  for (const kind of ['closed', 'vented']) {
    const wanted = { ...demo.wanted, lowest: '45 Hz' };
    const uses = { wirings: [{ parallel: 2 }], faces: ['left', 'right'], spread: 'opposed' };
    const answer = metByWeights(withDrivers(uses, { wanted, box: { kinds: [kind] } }), 2);
    for (const found of answer.designs) {
      const holes = holesOf(found, 'driver');
      expect(holes.map(({ face }) => face).sort()).toEqual(['left', 'right']);
      for (const part of loadOf(holes, found.box.outer)) expect(Math.abs(part)).toBeLessThan(1e-9);
      expect(found.drivers.forcesCancel).toBe(true);
      // Both magnets stand between the panels.
      expect(found.box.inner[0]).toBeGreaterThanOrEqual(2 * (0.118 - 0.018) - 1e-9);
    }
    expect(flat(reportText(answer))).toContain('the forces of their cones on the box cancel');
  }
});

test('drivers on one face push the box, and nothing is said of forces', () => {
  const answer = metByWeights(
    withDrivers(
      { wirings: [{ parallel: 2 }], faces: ['front', 'back'] },
      { box: { kinds: ['closed'] }, wanted: { ...demo.wanted, lowest: '45 Hz' } },
    ),
  );
  const [first] = answer.designs;
  const holes = holesOf(first!, 'driver');
  expect(new Set(holes.map(({ face }) => face)).size).toBe(1);
  expect(first!.drivers.forcesCancel).toBe(false);
  expect(Math.abs(loadOf(holes, first!.box.outer)[2]!)).toBe(2);
  expect(reportText(answer)).not.toContain('cancel');
});

test('drivers on each of several faces are shared out equally', () => {
  const uses = { wirings: [{ parallel: 3 }], faces: ['left', 'right', 'front'], spread: 'each-face' };
  const first = bestOf(withDrivers(uses, { box: { kinds: ['closed'] }, wanted: { ...demo.wanted, lowest: '45 Hz' } }));
  const faces = holesOf(first!, 'driver').map(({ face }) => face);
  expect(faces.sort()).toEqual(['front', 'left', 'right']);
});

test('a driver on the back is drawn there, and as a broken ring where one looks through the box', () => {
  const uses = { faces: ['back'] };
  const brief = withDrivers(uses, { box: { kinds: ['closed'] }, wanted: { ...demo.wanted, lowest: '45 Hz' } });
  const first = bestOf(brief);
  const drawing = boxFigure(first!, briefFacts(brief)).draw(640);
  expect(holesOf(first!, 'driver').map(({ face }) => face)).toEqual(['back']);
  expect(drawing).toMatch(/class="driver-body"/);
  expect(drawing).toMatch(/<circle class="cutout"/);
  expect(drawing).not.toMatch(/<circle class="driver"/);
});

test('opposed radiators beside opposed drivers: each set cancels by itself', () => {
  const brief = withDrivers(
    { wirings: [{ parallel: 2 }], faces: ['front', 'back'], spread: 'opposed' },
    {
      box: { kinds: ['radiator'] },
      radiators: [{ ...demoRadiator, counts: [2], faces: ['left', 'right'], spread: 'opposed' }],
    },
  );
  const answer = metByWeights(brief, 2);
  for (const found of answer.designs) {
    for (const what of ['driver', 'radiator']) {
      const holes = holesOf(found, what);
      expect(holes).toHaveLength(2);
      for (const part of loadOf(holes, found.box.outer)) expect(Math.abs(part)).toBeLessThan(1e-9);
    }
  }
  expect(flat(reportText(answer))).toContain('The radiators stand back to back on opposite panels');
});

test('forces on opposite panels that do not face each other turn the box: they do not cancel', () => {
  const hole = (face: Hole['face'], across: number): Hole =>
    ({ what: 'driver', face, form: 'circle', diameter: 0.2, across, up: 0.2, from: ['left', 'bottom'] }) as Hole;
  expect(forcesCancel([hole('front', 0.2), hole('back', 0.2)])).toBe(true);
  expect(forcesCancel([hole('front', 0.2), hole('back', 0.21)])).toBe(false);
  expect(forcesCancel([hole('front', 0.1), hole('front', 0.3), hole('back', 0.1), hole('back', 0.3)])).toBe(true);
  expect(forcesCancel([hole('front', 0.2), hole('left', 0.2)])).toBe(false);
  expect(forcesCancel([])).toBe(false);
});

test('each cutout keeps the play that was asked for, and the report says what is left', () => {
  for (const cutoutPlay of ['2 mm', '12 mm']) {
    const answer = metByWeights({ ...demo, space: { ...demo.space, cutoutPlay } }, 2);
    for (const { box } of answer.designs) {
      const [width, height] = box.outer;
      const [hole] = box.holes.filter(({ what }) => what === 'driver') as [Hole & { diameter: number }];
      const t = box.panelThickness;
      const { across, up } = hole;
      const left = Math.min(across, width - across, up, height - up) - t - hole.diameter / 2;
      expect(box.cutoutLeft).toBeCloseTo(left, 9);
      expect(left).toBeGreaterThanOrEqual(Number.parseFloat(cutoutPlay) / 1000 - 1e-9);
    }
    expect(flat(reportText(answer))).toMatch(/Every cutout for a driver is at least [\d.]+ mm away/);
    expect(reportText(answer)).not.toContain('Around each cutout, 2 mm is kept clear');
  }
});

function faultsOf(brief: unknown): string[] {
  try {
    design(brief);
    return [];
  } catch (error) {
    if (!isInputError(error)) throw error;
    return error.faults.map(({ path, code, expected }) => `${path}: ${code}: ${expected}`);
  }
}

test('faces and numbers that contradict each other are told where they are written', () => {
  expect(faultsOf(withDrivers({ spread: 'opposed', wirings: [{ parallel: 2 }] }))).toEqual([
    'drivers[0].faces: inconsistent: two opposite faces, such as left and right, since spread is opposed',
  ]);
  expect(
    faultsOf(withDrivers({ spread: 'opposed', faces: ['left', 'right'], wirings: [{ parallel: 2 }, {}] })),
  ).toEqual(['drivers[0].wirings[1]: inconsistent: a multiple of 2, since spread is opposed']);
  expect(faultsOf(withDrivers({ spread: 'each-face', faces: ['left', 'right'] }))).toEqual([
    'drivers[0].spread: inconsistent: a multiple of 2, since spread is each-face',
  ]);
  const opposed = { ...demoRadiator, spread: 'opposed', faces: ['left', 'right'], counts: [2, 3] };
  expect(faultsOf({ ...roomy, box: { kinds: ['radiator'] }, radiators: [opposed] })).toEqual([
    'radiators[0].counts: inconsistent: a multiple of 2, since spread is opposed',
  ]);
});

test('faults of passive radiators stand at their own path, in the unit of the reader', () => {
  const asked = (radiators: unknown) => ({ ...roomy, box: { kinds: ['radiator'] }, radiators });
  expect(faultsOf({ ...roomy, box: { kinds: ['radiator'] } })).toEqual([
    'radiators: empty: a list of passive radiators to choose from, since box.kinds names radiator',
  ]);
  expect(faultsOf(asked([]))).toEqual(['radiators: empty: at least one passive radiator']);
  const { Qms: _, ...rest } = demoRadiator;
  expect(faultsOf(asked([demoRadiator, rest]))[0]).toMatch(/^radiators\[1\]: empty: data from which Rms follows/);
  expect(faultsOf(asked([{ ...rest, Qms: '6 Hz' }])).map((text) => text.split(':')[0])).toEqual(['radiators[0].Qms']);
  expect(faultsOf(asked([{ ...demoRadiator, colour: 'red' }]))[0]).toMatch(/^radiators\[0\].colour: unknown-field/);
  const contradicted = faultsOf(asked([{ ...demoRadiator, Mms: '60 g' }]));
  expect(contradicted).toHaveLength(1);
  expect(contradicted[0]).toMatch(/^radiators\[0\]\.\w+: inconsistent: .*(g|Hz|L)/);
});
