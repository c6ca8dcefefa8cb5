import { isInputError } from '@airspring/core/fault';
import { type Brief, design } from 'airspring';
import { expect, test } from 'vitest';
import { readBrief } from '../../../packages/airspring/src/brief/read.js';
import { standard } from '../../../packages/airspring/src/kind/standard.js';
import { bestOf, demo, put, searchFor } from '../../arbitrary/brief.js';

/** The lines that a brief is refused with. */
function lines(brief: unknown): readonly string[] {
  try {
    readBrief(brief, standard);
  } catch (error) {
    if (isInputError(error)) return error.message.split('\n');
    throw error;
  }
  return [];
}

test('panels too thick: one line, in the words of the brief, and a half that is a half', () => {
  expect(lines(put(demo, 'space.panelThickness', '200 mm'))).toEqual([
    'space.panelThickness: got "200 mm"; expected less than half of space.height, 340 mm. Correct one of the two.',
  ]);
  expect(lines(put(demo, 'space.panelThickness', '169 mm'))).toEqual([]);
});

test('bounds that cross are told as they were written', () => {
  expect(lines(put(demo, 'wanted.highest', '20 Hz'))).toEqual([
    'wanted.lowest: got "30 Hz"; expected less than wanted.highest, 20 Hz. Correct one of the two.',
  ]);
  expect(lines(put(demo, 'vent.largest', '3 cm'))).toEqual([
    'vent.smallest: got "40 mm"; expected at most vent.largest, 3 cm. Correct one of the two.',
  ]);
});

test('a bound of the vent that is left out gives way to the other', () => {
  const boundsOf = (vent: object) => {
    const [axis] = searchFor({ ...demo, box: { kinds: ['vented'] }, vent }).variants[0]!.geometric;
    return [axis?.from, axis?.to];
  };
  expect(boundsOf({ largest: '20 mm' })).toEqual([0.02, 0.02]);
  expect(boundsOf({ smallest: '200 mm' })).toEqual([0.2, 0.2]);
});

test('a number without its unit is told which units there are', () => {
  expect(lines(put(demo, 'space.width', 480))).toEqual([
    'space.width: got 480; expected a text: a number and one of m, mm, cm, in, ft. Write it like "1 m", in quotes.',
  ]);
});

test('a value of the wrong type is told what would do, in words', () => {
  const broken = { ...demo, title: 3, drivers: {}, units: { length: 'ell' }, weights: { deep: '1' }, printer: 'none' };
  expect(lines(broken)).toEqual([
    'title: got 3; expected a text, in quotes. Correct the value.',
    'drivers: got a record; expected a list, in square brackets. Correct the value.',
    'printer: got "none"; expected a record, in braces. Correct the value.',
    'units.length: got "ell"; expected one of "mm", "cm", "in". Correct the value.',
    'weights.deep: got "1"; expected a number, without quotes. Correct the value.',
  ]);
  expect(lines('brief')).toEqual(['brief: got "brief"; expected a brief: a record, in braces. Correct the value.']);
});

test('a space that holds no driver blames no wish', () => {
  const answer = design({
    ...demo,
    space: { ...demo.space, bracing: '0 L', width: '60 mm', height: '60 mm', depth: '60 mm' },
  });
  expect(answer).toMatchObject({ ok: false, conflict: [], because: [expect.stringContaining('Compare their sizes')] });
});

test('a band that ends where every box has fallen is answered with its end', () => {
  const answer = design(put(demo, 'wanted.highest', '20000 Hz'));
  if (answer.ok) throw new Error('nothing plays up to there');
  expect(answer.conflict.map(({ path }) => path)).toEqual(['wanted.lowest']);
  expect(answer.because.join(' ')).toMatch(/At the end of the band, 20000 Hz, .*Ask for a lower wanted\.highest/);
  expect(answer.nearest).toBeUndefined();
});

test.each(['0 mm', '1 mm'])('a collar of %s is answered: the hole is wider than it', (collar) => {
  expect(bestOf(put(demo, 'vent.collar', collar)).kind).toBe('vented');
});

test('an amplifier too strong at the end of the band already: the lowest safe frequency lies beyond it', () => {
  const brief = { ...demo, amplifier: { voltage: '150 V' } } as Brief;
  const first = bestOf(brief);
  const { lowestSafeFrequency = 0 } = first.protection.atFullVoltage;
  expect(lowestSafeFrequency).toBeGreaterThan(120);
  // The travel at that drive, read off the curves, which go on to 200 Hz: it is Xmax at that frequency.
  const { frequencies, displacementPeak, driveVoltageRms } = first.curves;
  const at = frequencies.findIndex((f) => f >= lowestSafeFrequency);
  const travel = [at - 1, at].map((i) => (displacementPeak[i]! * 150) / driveVoltageRms);
  expect(travel[0]).toBeGreaterThan(0.009);
  expect(travel[1]).toBeLessThanOrEqual(0.009);
});

test('an amplifier too strong for the highest tone that is heard: nothing is called safe', () => {
  const [driver] = demo.drivers;
  const quiet = { ...demo.wanted, level: '40 dB' };
  const drivers = [{ ...driver, Xmax: '0.01 mm' }];
  const brief = { ...demo, wanted: quiet, drivers, amplifier: { voltage: '100000 V' } } as Brief;
  const first = bestOf(brief);
  expect(first.protection.atFullVoltage).toEqual({ driveVoltageRms: 100_000, neverSafe: true });
  expect(first.protection.neverSafe).toBeUndefined();
});
