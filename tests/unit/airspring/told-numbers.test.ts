import { si } from '@airspring/core/quantity';
import { butt, mitre, panelBox, rabbet } from '@airspring/workshop/panel';
import { type Brief, type Design, design } from 'airspring';
import { describe, expect, test } from 'vitest';
import { briefFacts } from '../../../docs-site/src/brief-facts.js';
import { building } from '../../../docs-site/src/sections/building.js';
import { sheetOf } from '../../../packages/airspring/src/page/sheet.js';
import { freeOutsideOf } from '../../../packages/airspring/src/record/free-outside.js';
import { buildText } from '../../../packages/airspring/src/words/build-text.js';
import { comparison } from '../../../packages/airspring/src/words/comparison.js';
import { impedanceFound } from '../../../packages/airspring/src/words/impedance-text.js';
import { phrasing } from '../../../packages/airspring/src/words/phrasing.js';
import { loudText, protectionText } from '../../../packages/airspring/src/words/play-text.js';
import { faultsOf } from '../../refusal/faults.js';

const brief = {
  version: 1,
  title: 'Two numbers of one report',
  drivers: [
    {
      name: 'invented',
      fs: '22 Hz',
      Qts: 0.42,
      Qes: 0.46,
      Vas: '150 L',
      Sd: '529 cm²',
      Re: '3.3 Ω',
      Le: '1.6 mH',
      Xmax: '14 mm',
      Pe: '350 W',
      outerDiameter: '315 mm',
      cutoutDiameter: '282 mm',
      depth: '150 mm',
    },
  ],
  space: { width: '457 mm', height: '457 mm', depth: '406 mm', panelThickness: '19 mm' },
  wanted: { lowest: '32 Hz', highest: '90 Hz', level: '100 dB', fall: '6 dB' },
  amplifier: { power: '250 W', into: '4 Ω' },
  box: { kinds: ['closed'] },
};
const answer = design(brief);
const box = (answer.ok ? answer.designs[0] : undefined) as Design;
const say = phrasing({ length: 'mm', volume: 'L' });
const plain = (texts: readonly string[]): string => texts.join(' ').replaceAll(/\s+/g, ' ');

test('travel gives way to the voltage of the amplifier where the full voltage becomes safe', () => {
  const { stretches } = box.loudness;
  expect(stretches.map(({ binding }) => binding).slice(0, 2)).toEqual(['travel', 'amplifier voltage']);
  const safe = box.protection.atFullVoltage.lowestSafeFrequency as number;
  expect(stretches[0]!.to / safe).toBeCloseTo(1, 5);
  for (const [i, { from }] of stretches.slice(1).entries()) expect(from).toBe(stretches[i]!.to);
});

test('a dip is called close to the tuning only where it is', () => {
  const impedance = {
    ...box.impedance,
    maxima: [
      { frequency: 20, value: 30 },
      { frequency: 60, value: 30 },
    ],
    minima: [{ frequency: 39, value: 4 }],
  };
  const found = (...at: number[]) =>
    plain([impedanceFound({ impedance, told: { playing: [], dip: { of: 'the tuning', at } } }, say)]);
  expect(found(40)).toContain('39.0 Hz, close to the tuning.');
  expect(found(52.7)).toContain('39.0 Hz; the tuning is at 52.7 Hz.');
});

test('a drive that the amplifier cannot give is not told as one that plays', () => {
  expect(plain(loudText(box, say))).toContain('rms gives the wanted level where the response is flat');
  const weak = { ...box, protection: { ...box.protection, driveVoltageRms: 2 * box.amplifier.voltage } } as Design;
  expect(plain(loudText(weak, say))).toContain('which is more than the amplifier gives');
  expect(plain(protectionText(weak, say))).not.toContain('which gives the wanted level');
});

test('a board of 5/8 inch, the way to the listener and the air of the room are told in the units of the reader', () => {
  const inches = phrasing({ length: 'in', volume: 'ft³' });
  expect(inches.length(0.015875)).toBe('0.625 in');
  expect([inches.metres(3.048), inches.cubicMetres(48.93)]).toEqual(['10 ft', '1728 ft³']);
  expect([say.metres(3.048), say.cubicMetres(48.93)]).toEqual(['3.05 m', '48.9 m³']);
});

test('the work on parts is no vent where there is none', () => {
  const line = { depth: 40, level: 100, volume: 0.05, effort: 1 } as Parameters<typeof comparison>[0];
  expect(comparison({ ...line, effort: 0.66 }, line)).toEqual(['two thirds of the work on its parts']);
  expect(comparison(line, { ...line, effort: 0 })).toEqual(['parts to make']);
});

describe.each([
  ['butt', butt, {}, 'The top and the bottom lie between them.'],
  ['rabbet', rabbet({ depth: '7 mm' }), { joint: { rabbet: { depth: '7 mm' } } }, 'a rabbet 7 mm deep and 19 mm wide'],
  ['mitre', mitre, { joint: { mitre: {} } }, 'All edges are cut at 45°'],
] as const)('with the joint %s', (name, joint, workshop, words) => {
  const answered = design({ ...brief, workshop });
  const made = (answered.ok ? answered.designs[0] : undefined) as Design;

  test('the list of a design tells the sizes that the pages to build from tell', () => {
    const [width, height, depth] = made.box.outer.map((edge) => si('length', edge));
    const sawn = panelBox({ outer: { width: width!, height: height!, depth: depth! }, thickness: '19 mm', joint });
    if (!sawn.ok) throw new Error('the panels fit');
    const sizes = (...both: number[]) =>
      both
        .map((size) => size.toFixed(10))
        .sort()
        .join(' × ');
    const told = made.box.panels.flatMap(({ count, length, width }) => Array(count).fill(sizes(length, width)));
    expect(told.sort()).toEqual(sawn.pieces.map((piece) => sizes(piece.width, piece.height)).sort());
  });

  test('and how its edges are made', () => {
    expect(plain(buildText(made, say))).toContain(words);
    expect(plain([sheetOf(made, say)])).toContain(words);
    expect(made.box.joint?.name ?? 'butt').toBe(name);
    const page = building(made, [made], briefFacts({ ...brief, workshop } as Brief)).markup;
    const onPage = { butt: 'with butt joints', rabbet: 'with rabbets 7 mm deep', mitre: 'with mitres' };
    expect(plain([page])).toContain(onPage[name]);
  });
});

test('the tube between two drivers is named where the list leaves it out', () => {
  const pair = { ...box, drivers: { ...box.drivers, count: 2, isobaric: true } };
  expect(plain(buildText(pair, say))).toContain('the tube that joins the drivers of the pair');
  expect(plain(buildText(box, say))).not.toContain('the tube that joins');
});

test('a rabbet as deep as its panel, and a pipe that is wider inside than outside, are refused', () => {
  const faults = (workshop: object) => faultsOf(() => design({ ...brief, workshop })).map(({ path }) => path);
  expect(faults({ joint: { rabbet: { depth: '19 mm' } } })).toEqual(['workshop.joint.rabbet.depth']);
  expect(faults({ pipes: [{ inner: '75 mm', outer: '71 mm' }] })).toEqual(['workshop.pipes[0].inner']);
});

test('a box that opens downwards stands on feet, and one that opens backwards has room behind it', () => {
  const [hole] = box.box.holes;
  const turned = (face: 'bottom' | 'back', what = 'vent') => {
    const holes = [{ ...hole!, face, what, form: 'circle', diameter: 0.08 } as const];
    const freeOutside = freeOutsideOf(holes);
    return { freeOutside, text: plain(buildText({ ...box, box: { ...box.box, holes, freeOutside } }, say)) };
  };
  expect(turned('bottom').freeOutside).toEqual({ bottom: 0.08 });
  expect(turned('bottom').text).toContain('stand the box on feet that leave at least 80 mm free below it');
  expect(turned('bottom', 'driver').text).toContain('at least 20 mm free below it');
  expect(turned('back').freeOutside).toEqual({ back: 0.08 });
  expect(turned('back').text).toContain('leave at least 80 mm free behind it');
  // A panel that covers a part of the bottom lies on the outside, a board behind it does not.
  const inBoard = (inwards: number) => {
    const board = { name: 'floor', size: [0.3, 0.2], from: [0, 0.1, inwards] } as const;
    return freeOutsideOf([{ ...hole!, face: 'bottom', what: 'vent', form: 'circle', diameter: 0.08, board }]);
  };
  expect(inBoard(0)).toEqual({ bottom: 0.08 });
  expect(inBoard(0.1)).toEqual({});
  expect(box.box.freeOutside).toEqual({});
  expect(plain(buildText(box, say))).not.toMatch(/is open/);
  const downwards = design({ ...brief, drivers: [{ ...brief.drivers[0]!, faces: ['bottom'] }] });
  expect(downwards.ok && downwards.designs[0]!.box.freeOutside.bottom).toBeCloseTo(0.282 / 4, 12);
});
