import { completeDriver } from '@airspring/core/driver';
import { openBaffle } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import { type Brief, reportText, toBuild } from 'airspring';
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
});

test('no files are made for it, and the reason is told', () => {
  const built = toBuild(brief as unknown as Brief);
  expect(built.ok || built.line).toMatch(
    /^no files are made for an open baffle, since they are of boxes with six panels/,
  );
});

test('it is tried only where a brief names it, and its driver stands on the front', () => {
  const { box: _, ...rest } = brief;
  expect(searchFor(rest).variants.map(({ kind }) => kind.name)).not.toContain('open-baffle');
  const drivers = [{ ...brief.drivers[0], faces: ['back'] }];
  expect(searchFor({ ...brief, drivers }).variants).toEqual([]);
});
