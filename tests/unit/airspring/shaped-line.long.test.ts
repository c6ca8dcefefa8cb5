import { completeDriver } from '@airspring/core/driver';
import { lineBox } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import { collisions, cuboidInterior } from '@airspring/core/space';
import { type Brief, type Design, design, reportText } from 'airspring';
import { expect, test } from 'vitest';
import pipe from '../../../packages/airspring/briefs/classroom-organ-pipe.json' with { type: 'json' };
import { bestOf, metByWeights, searchFor } from '../../arbitrary/brief.js';

const t = 0.015;
const wanted = { ...pipe.wanted, lowest: '66 Hz', level: '70 dB', rise: '40 dB', fall: '40 dB' };
const exactly = ['width', 'height', 'depth'];
const five = completeDriver({ fs: '52 Hz', Qts: 0.42, Qes: 0.48, Vas: '9 L', Sd: '95 cm²', Re: '5.8 Ω', Xmax: '5 mm' });
if (!five.ok) throw new Error('the driver of the brief');

/** A line in a box of one size. */
const fixed = (kind: string, height: string, depth: string, line: object) => ({
  ...pipe,
  wanted,
  space: { ...pipe.space, width: '200 mm', height, depth, exactly },
  box: { kinds: [kind] },
  line,
});
const numbersOf = ({ numbers }: Design, what: string) =>
  numbers
    .find((one) => one.what.startsWith(what))!
    .value.filter((part) => typeof part !== 'string')
    .map((part) => (part as readonly [number, string])[0]);

/** The level of a design, and that of core's line of these numbers. */
function off(one: Design, line: Omit<Parameters<typeof lineBox>[0], 'drivers'>): number {
  const { frequencies, levelHalfSpace, driveVoltageRms } = one.curves;
  const made = lineBox({ ...line, drivers: five.ok && five.driver } as never);
  const own = respond(made, [...frequencies], { driveVoltageRms: si('voltageRms', Number(driveVoltageRms)) });
  return Math.max(...levelHalfSpace.map((level, i) => Math.abs(level - own.levelHalfSpace[i]!)));
}

test('a stepped line plays as two parts, and its boards leave channels of two depths that fill the box', () => {
  const one = bestOf(fixed('stepped-line', '560 mm', '330 mm', { folds: [2], mouth: 0.5 }));
  const [height, depth, width] = [0.53, 0.3, 0.17];
  const [closed, far] = numbersOf(one, 'depth of the line');
  expect(far! / closed!).toBeCloseTo(0.5, 9);
  const boards = one.box.solids.filter(({ part }) => part === 'board');
  expect(boards).toHaveLength(2);
  const channels = [
    boards[0]!.least[2] - t,
    boards[1]!.least[2] - boards[0]!.greatest[2],
    depth + t - boards[1]!.greatest[2],
  ];
  const wide = channels.filter((one) => Math.abs(one - closed!) < 1e-9).length;
  expect([1, 2]).toContain(wide);
  channels.forEach((one, i) => expect(one).toBeCloseTo(i < wide ? closed! : far!, 9));
  const first = wide * height + (wide - 1) * t;
  const second = (3 - wide) * (height + t);
  expect(numbersOf(one, 'length of the line')[0]).toBeCloseTo(first + second, 9);
  // All air of the box, with gaps as deep as the channel that they lead into.
  const gaps = [1, 2].map((i) => (i < wide ? closed! : far!));
  const taken = gaps.reduce((sum, gap) => sum + t * width * (height - gap), 0);
  expect(one.box.netVolume).toBeCloseTo(width * height * depth - taken - 0.3e-3, 9);
  const area = one.box.netVolume / (first + 0.5 * second);
  const parts = [
    { length: si('length', first), area: si('area', area), wallLoss: 1.2 },
    { length: si('length', second), area: si('area', area / 2), wallLoss: 1.2 },
  ];
  expect(off(one, { parts, driverAt: si('length', height / 2), opening: {} })).toBeLessThan(1e-6);
});

test('a tapered line plays as a wedge, and its slanting boards leave the same depth at both ends', () => {
  for (const [folds, height, depth] of [
    [1, 0.7, 0.24],
    [3, 0.45, 0.42],
  ] as const) {
    const sizes = [`${height * 1e3} mm`, `${depth * 1e3} mm`] as const;
    const one = bestOf(fixed('tapered-line', ...sizes, { folds: [folds], mouth: 0.4, flowResistivity: '600 Pa·s/m²' }));
    const [closed, far] = numbersOf(one, 'depth of the line');
    expect(far! / closed!).toBeCloseTo(0.4, 9);
    const inner = [0.17, height - 2 * t, depth - 2 * t] as const;
    expect((folds + 1) * ((closed! + far!) / 2)).toBeCloseTo(inner[2] - folds * t, 9);
    const length = (folds + 1) * inner[1] + folds * t;
    const area = one.box.netVolume / (0.7 * length);
    const parts = [
      {
        length: si('length', length),
        area: si('area', area),
        wedgeTo: si('area', 0.4 * area),
        flowResistivity: '600 Pa·s/m²',
        wallLoss: 0,
      },
    ] as const;
    expect(off(one, { parts, driverAt: si('length', inner[1] / 2), opening: {} })).toBeLessThan(1e-6);
    const mouth = one.box.holes.find(({ what }) => what === 'mouth')!;
    expect(mouth.form === 'rectangle' && mouth.sides[1]).toBeCloseTo(far!, 9);
    const [width, high, deep] = one.box.outer.map((edge) => si('length', edge)) as [never, never, never];
    const interior = cuboidInterior({ outer: { width, height: high, depth: deep }, thickness: '15 mm' });
    expect(collisions(interior, one.box.solids)).toEqual([]);
  }
});

test('driver and opening stand where the brief says, and the line plays so', () => {
  const line = { folds: [0], driverAt: [0.3], openAt: [0.9] };
  const one = bestOf(fixed('line', '1100 mm', '200 mm', line));
  const [length, area] = [1.07, one.box.netVolume / 1.07];
  const hole = (what: string) => one.box.holes.find((each) => each.what === what)!;
  expect(hole('driver').up).toBeCloseTo(t + 0.3 * length, 9);
  expect(hole('mouth')).toMatchObject({ face: 'back', form: 'rectangle' });
  expect(hole('mouth').up).toBeCloseTo(t + 0.9 * length, 9);
  // Both faces of the opening, and the wall between them.
  const endCorrection = si('length', 2 * 0.8217 * Math.sqrt(area / Math.PI) + t);
  const parts = [{ length: si('length', length), area: si('area', area), wallLoss: 1.2 }];
  const opening = { at: si('length', 0.9 * length), endCorrection };
  expect(off(one, { parts, driverAt: si('length', 0.3 * length), opening })).toBeLessThan(0.01);
  expect(reportText(metByWeights(fixed('line', '1100 mm', '200 mm', line), 1)).replace(/\s+/g, ' ')).toContain(
    'closed at both ends and open in the side, at 90 % of its length',
  );
});

test('what no line can have is told, and not left out in silence', () => {
  const two = { drivers: pipe.drivers.map((driver) => ({ ...driver, wirings: [{ parallel: 2 }, { series: 2 }] })) };
  for (const [kinds, line, path, more = {}] of [
    [['line'], { folds: [1, 2], driverAt: [0.5] }, 'line.driverAt'],
    [['line', 'closed'], { folds: [1], openAt: [0.5] }, 'line.openAt'],
    [['tapered-line'], { folds: [2] }, 'line.folds'],
    [['stepped-line', 'tapered-line'], { folds: [0] }, 'line.folds'],
    [['line', 'stepped-line'], { driverAt: [0.2] }, 'line.driverAt', two],
  ] as const) {
    expect(() => searchFor({ ...fixed('line', '700 mm', '240 mm', line), box: { kinds }, ...more })).toThrow(
      expect.objectContaining({ faults: [expect.objectContaining({ path, code: 'inconsistent' })] }),
    );
  }
  const pair = { drivers: pipe.drivers.map((driver) => ({ ...driver, wirings: [{ parallel: 2, isobaric: true }] })) };
  const line = { folds: [1], driverAt: [0.3], openAt: [0.9] };
  expect(searchFor({ ...fixed('line', '700 mm', '240 mm', line), ...pair }).variants).toHaveLength(1);
});

test('a driver too near the end of a line is told with what its place would take', () => {
  const { line: _, ...rest } = fixed('line', '700 mm', '240 mm', {});
  const answer = design({ ...rest, line: { folds: [0], driverAt: [0.99] } } as Brief);
  // 135 mm wide, 5 mm from the edge, less the panel: 57.5 mm; the cutout of 116 mm with its play: 60 mm.
  expect(answer.ok || answer.because).toEqual([
    expect.stringMatching(/^No box of the allowed kinds has room/),
    'A driver at 0.99 of the length (line.driverAt) must keep its middle 60 mm from both ends of its channel. With 0 folds that takes a channel 6000 mm high; in this brief no channel is higher than 670 mm.',
  ]);
});

test('no box is shallower than its channels with the driver in the first of them', () => {
  // The driver is 66 mm deep, its panel 15 mm, and 10 mm stay free behind it.
  const first = 0.066 - t + 0.01;
  const { exactly: _, ...space } = fixed('stepped-line', '700 mm', '600 mm', {}).space;
  const free = { ...fixed('stepped-line', '700 mm', '600 mm', { folds: [2], mouth: 3 }), space };
  const leastDepths = searchFor(free).variants.map(({ least }) => least[2]);
  expect(leastDepths[0]).toBeCloseTo(first * (1 + 3 + 3) + 2 * t, 9);
  expect(leastDepths[1]).toBeCloseTo(first * (1 + 1 + 3) + 2 * t, 9);
});
