import { completeDriver } from '@airspring/core/driver';
import { lineBox } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import { collisions, cuboidInterior } from '@airspring/core/space';
import { type Brief, design, reportText } from 'airspring';
import { expect, test } from 'vitest';
import { briefFacts } from '../../../docs-site/src/brief-facts.js';
import { boxFigure } from '../../../docs-site/src/figures/box-drawing.js';
import pipe from '../../../packages/airspring/briefs/classroom-organ-pipe.json' with { type: 'json' };
import { bestOf, metByWeights, searchFor } from '../../arbitrary/brief.js';

const brief = pipe as unknown as Brief;
const flat = (text: string) => text.replace(/\s+/g, ' ');
/** As wide and as deep as a line of one fold may stand, so that its search is short. */
const narrow = { ...pipe.space, width: '200 mm', depth: '240 mm', exactly: ['width', 'depth'] };
const answer = metByWeights({ ...pipe, space: narrow }, 2);
const t = 0.015;
const five = completeDriver({
  fs: '52 Hz',
  Qts: 0.42,
  Qes: 0.48,
  Vas: '9 L',
  Sd: '95 cm²',
  Re: '5.8 Ω',
  Xmax: '5 mm',
  Pe: '40 W',
});
if (!five.ok) throw new Error('the driver of the brief');
const numberOf = ({ numbers }: (typeof answer.designs)[number], what: string) =>
  (numbers.find((one) => one.what.startsWith(what))!.value[0] as readonly [number, string])[0];

test('the line is as long as its channels and the boards between them, and holds the air of the box', () => {
  for (const { box, ...one } of answer.designs) {
    const design = { box, ...one } as (typeof answer.designs)[number];
    const [width, height, depth] = box.outer.map((edge) => edge - 2 * t) as [number, number, number];
    const board = box.panels.find(({ name }) => name.startsWith('inner boards'));
    const folds = board?.count ?? 0;
    const channel = (depth - folds * t) / (folds + 1);
    expect(numberOf(design, 'length of the line')).toBeCloseTo((folds + 1) * height + folds * t, 9);
    const boards = folds * t * width * (height - channel);
    expect(box.netVolume).toBeCloseTo(width * height * depth - boards - 0.3e-3, 9);
    if (board !== undefined) {
      expect(board.length).toBeCloseTo(width, 9);
      expect(board.width).toBeCloseTo(height - channel, 9);
    }
    // What reaches behind its panel leaves air in its channel.
    expect(channel).toBeGreaterThanOrEqual(0.066 - t + 0.0099);
    const mouth = box.holes.find(({ what }) => what === 'mouth')!;
    expect(mouth).toMatchObject({ face: 'top', form: 'rectangle' });
    expect(mouth.form === 'rectangle' && mouth.sides).toEqual([expect.closeTo(width, 9), expect.closeTo(channel, 9)]);
    expect(mouth.up + channel / 2).toBeCloseTo(depth + t, 9);
  }
});

test('it plays as a line of that length, section and fill, with its driver in the middle of the first channel', () => {
  const [first] = answer.designs;
  const { box, response } = first!;
  const length = numberOf(first!, 'length of the line');
  const height = box.outer[1] - 2 * t;
  const made = lineBox({
    drivers: five.driver,
    parts: [
      {
        length: si('length', length),
        area: si('area', box.netVolume / length),
        flowResistivity: '600 Pa·s/m²',
        wallLoss: 0,
      },
    ],
    driverAt: si('length', height / 2),
    opening: {},
  });
  const { frequencies, levelHalfSpace, driveVoltageRms } = first!.curves;
  const own = respond(made, [...frequencies], { driveVoltageRms: si('voltageRms', Number(driveVoltageRms)) });
  levelHalfSpace.forEach((level, i) => expect(Math.abs(level - own.levelHalfSpace[i]!)).toBeLessThan(1e-6));
  const [atCutoff] = respond(made, [response.cutoff], { driveVoltageRms: '1 V' }).levelHalfSpace;
  expect(Math.abs(atCutoff! - (response.referenceLevel - 6))).toBeLessThan(0.05);
});

test('its inner boards stand where they are drawn, clear of the driver, and leave a way from end to end', () => {
  const wanted = { ...pipe.wanted, lowest: '66 Hz', level: '76 dB', rise: '14 dB', fall: '14 dB' };
  const exactly = ['width', 'height', 'depth'];
  for (const [folds, height, depth] of [
    [1, '700 mm', '240 mm'],
    [2, '560 mm', '330 mm'],
    [3, '450 mm', '420 mm'],
  ] as const) {
    const space = { ...pipe.space, width: '200 mm', height, depth, exactly };
    const one = bestOf({ ...pipe, space, wanted, line: { ...pipe.line, folds: [folds] } });
    const { box } = one;
    const boards = box.solids.filter(({ part }) => part === 'board');
    expect(boards).toHaveLength(folds);
    const outer = box.outer.map((edge) => si('length', edge)) as [never, never, never];
    const [width, high, deep] = outer;
    const interior = cuboidInterior({ outer: { width, height: high, depth: deep }, thickness: '15 mm' });
    expect(collisions(interior, box.solids)).toEqual([]);
    const channel = ((deep as number) - 2 * t - folds * t) / (folds + 1);
    const made = box.panels.find(({ name }) => name.startsWith('inner boards'))!;
    boards.forEach(({ least, greatest }, i) => {
      expect(least[2]).toBeCloseTo(t + (i + 1) * channel + i * t, 9);
      expect(greatest[1] - least[1]).toBeCloseTo(made.width, 9);
      expect(greatest[0] - least[0]).toBeCloseTo(made.length, 9);
      // The gaps alternate, and the last channel opens at the top.
      const below = least[1] - t > channel / 2;
      expect(below).toBe((folds - i) % 2 === 1);
    });
    const drawing = String(boxFigure(one, briefFacts(brief)).draw(640));
    expect(drawing.match(/class="behind"/g)!.length).toBeGreaterThanOrEqual(3 * folds);
  }
});

test('it is told, with its folds, boards, fill and mouth', () => {
  const text = reportText(answer);
  for (const line of text.split('\n')) expect([...line].length).toBeLessThanOrEqual(80);
  expect(flat(text)).toContain('is a box with a line for one "five-inch driver, invented"');
  expect(flat(text)).toMatch(/Behind the driver runs a line of [\d.]+ mm, folded once, that is closed at one end/);
  expect(flat(text)).toContain('Glue one inner board between the sides');
  expect(flat(text)).toContain('a flow resistivity of 600 Pa·s/m²');
  expect(flat(text)).toMatch(/Up to [\d.]+ dB the opening is quiet: it stays below every one of them\./);
  expect(flat(text)).not.toContain('loses pressure');
  expect(flat(text)).toContain('Every cutout for a driver is at least');
  expect(flat(text)).toMatch(/clear depth for the driver [\d.]+ mm at least 66 mm/);
  const depth = Number(/clear depth for the driver\s+([\d.]+) mm/.exec(text)![1]);
  expect(depth).toBeLessThan(120);
});

test('it is tried only where a brief names it, and its fields need it', () => {
  const { box: _, line: __, ...rest } = pipe;
  const other = { ...rest, wanted: { ...rest.wanted, lowest: '70 Hz' } } as unknown as Brief;
  expect(searchFor(other).variants.map(({ kind }) => kind.name)).toEqual(['closed', 'vented']);
  expect(() => design({ ...rest, line: { folds: [1] } } as unknown as Brief)).toThrow(
    expect.objectContaining({ faults: [expect.objectContaining({ path: 'line' })] }),
  );
});

test('a brief for lines alone whose drivers may not stand on the front is refused', () => {
  const drivers = [{ ...pipe.drivers[0], faces: ['back'] }];
  expect(() => design({ ...pipe, drivers } as unknown as Brief)).toThrow(
    expect.objectContaining({ faults: [expect.objectContaining({ path: 'drivers[0].faces', code: 'inconsistent' })] }),
  );
});
