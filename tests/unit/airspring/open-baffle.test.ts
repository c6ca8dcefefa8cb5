import { completeDriver } from '@airspring/core/driver';
import { openBaffle } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import { type Brief, design, reportText, toBuild } from 'airspring';
import { expect, test } from 'vitest';
import { metByWeights, searchFor } from '../../arbitrary/brief.js';

const sheet = {
  fs: '34 Hz',
  Qts: 0.8,
  Qes: 0.95,
  Vas: '130 L',
  Sd: '530 cm²',
  Re: '5.8 Ω',
  Xmax: '9 mm',
  Pe: '120 W',
} as const;
const sizes = { outerDiameter: '310 mm', cutoutDiameter: '280 mm', depth: '120 mm' } as const;
const brief = {
  version: 1,
  title: 'A board on a stage, invented',
  drivers: [{ name: 'twelve-inch driver, invented', ...sheet, ...sizes }],
  space: { width: '700 mm', height: '800 mm', depth: '400 mm', panelThickness: '18 mm' },
  wanted: { lowest: '65 Hz', highest: '130 Hz', level: '82 dB', fall: '6 dB', rise: '6 dB' },
  amplifier: { voltage: '30 V' },
  box: { kinds: ['open-baffle'] },
} as const;
const answer = metByWeights(brief);
const [one] = answer.designs;

test('it plays as two opposite sources, half the board and the depth of the sides behind it apart', () => {
  const { box, curves } = one!;
  const [width, height, depth] = box.outer;
  const path = Math.min(width, height) / 2 + depth - 0.018;
  // Where the formula of low tones holds.
  expect(path).toBeLessThan(343.4 / (4 * 130));
  const driver = completeDriver(sheet);
  if (!driver.ok) throw new Error('the driver of the brief');
  const made = openBaffle({ drivers: driver.driver, path: si('length', path) });
  const drive = { driveVoltageRms: si('voltageRms', Number(curves.driveVoltageRms)) };
  const own = respond(made, [...curves.frequencies], drive);
  curves.levelHalfSpace.forEach((level, i) => expect(Math.abs(level - own.levelHalfSpace[i]!)).toBeLessThan(1e-6));
});

test('it has no back panel, and the report says how it goes together', () => {
  const { box } = one!;
  const [width, height, depth] = box.outer;
  expect(box.panels.map(({ count, length, width }) => [count, length, width])).toEqual([
    [1, width, height],
    [2, width, expect.closeTo(depth - 0.018, 12)],
    [2, expect.closeTo(height - 0.036, 12), expect.closeTo(depth - 0.018, 12)],
  ]);
  const text = reportText(answer).replace(/\s+/g, ' ');
  expect(text).toContain('The front covers the whole box, which has no back.');
  expect(text).not.toContain('Put the back on last');
  // No panel closes it, so that its air is no matter.
  expect(box.inner[2]).toBeCloseTo(depth - 0.018, 12);
  expect(box.netVolume).toBeCloseTo(box.inner[0] * box.inner[1] * box.inner[2], 12);
  expect(text).toContain('inside, up to its open back.');
  expect(text).not.toMatch(/of air\b|driver takes up [0-9]/);
});

test('no files are made for it, and the reason is told', () => {
  const built = toBuild(brief as unknown as Brief);
  expect(built.ok || built.line).toMatch(
    /^no files are made for an open baffle, since they are of boxes with six panels/,
  );
});

test('where the formula would not hold up to the end of the band, the refusal names the end of the band', () => {
  const answer = design({ ...brief, wanted: { ...brief.wanted, highest: '300 Hz' } } as unknown as Brief);
  if (answer.ok) throw new Error('a baffle beyond its formula');
  expect(answer.conflict.map(({ path }) => path)).toEqual(['wanted.lowest', 'wanted.highest']);
  expect(answer.conflict[1]?.wish).toBe('frequency up to which the formula of the baffle holds at least 300 Hz');
  const path = Number(answer.nearest?.answer.designs[0]?.numbers[0]?.value[0]?.[0]);
  expect(343.4 / (4 * path)).toBeGreaterThan(300);
});

test('it is tried only where a brief names it, and its driver stands on the front', () => {
  const { box: _, ...rest } = brief;
  expect(searchFor(rest).variants.map(({ kind }) => kind.name)).not.toContain('open-baffle');
  const seated = (more: object) => ({
    ...brief,
    drivers: [{ ...brief.drivers[0], wirings: [{ parallel: 2 }], ...more }],
  });
  for (const [more, path] of [
    [{ faces: ['back'] }, 'drivers[0].faces'],
    [{ faces: ['front', 'back'], spread: 'opposed' }, 'drivers[0].spread'],
  ] as const) {
    expect(() => searchFor(seated(more))).toThrow(
      expect.objectContaining({ faults: [expect.objectContaining({ path, code: 'inconsistent' })] }),
    );
    const both = { ...seated(more), box: { kinds: ['open-baffle', 'closed'] } };
    expect(searchFor(both).variants.map(({ kind }) => kind.name)).toEqual(['closed']);
  }
});
