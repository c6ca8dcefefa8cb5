import { isInputError } from '@airspring/core/fault';
import { type Brief, design, reportText, retrofit, retrofitText } from 'airspring';
import { describe, expect, test } from 'vitest';
import { demoStanding } from '../../arbitrary/standing.js';

// biome-ignore lint/suspicious/noExplicitAny: a brief broken on purpose has no type
type Loose = Record<string, any>;
const changed = (change: (brief: Loose) => void): unknown => {
  const brief = structuredClone(demoStanding) as Loose;
  change(brief);
  return brief;
};
const faultsOf = (brief: unknown) => {
  try {
    retrofit(brief);
  } catch (error) {
    if (isInputError(error)) return error.faults;
    throw error;
  }
  return [];
};

const broken: readonly [what: string, change: (brief: Loose) => void, path: string, says: string][] = [
  [
    'both sizes',
    (b) => {
      b.standing.outer = { width: '300 mm', height: '300 mm', depth: '300 mm' };
      b.standing.inner = b.standing.outer;
    },
    'standing.inner',
    'one of them',
  ],
  ['neither sizes nor air', (b) => delete b.standing.air, 'standing', 'the sizes of the box'],
  [
    'a panel thicker than the box',
    (b) => {
      b.standing.outer = { width: '300 mm', height: '300 mm', depth: '25 mm' };
    },
    'standing.panelThickness',
    'less than half',
  ],
  [
    'a vent shorter than its panel',
    (b) => {
      b.standing.vents[0].length = '10 mm';
    },
    'standing.vents[0].length',
    'at least the panel, 15 mm',
  ],
  [
    'a hole narrower than its vent',
    (b) => {
      b.standing.vents[0].hole = '40 mm';
    },
    'standing.vents[0].hole',
    'inner diameter of the vent, 44 mm',
  ],
  [
    'a vent longer than the box',
    (b) => {
      b.standing.outer = { width: '300 mm', height: '300 mm', depth: '300 mm' };
      b.standing.vents[0].length = '1200 mm';
    },
    'standing.vents[0].length',
    '810 mm',
  ],
  [
    'a hole wider than its panel',
    (b) => {
      b.standing.outer = { width: '300 mm', height: '120 mm', depth: '900 mm' };
      b.standing.vents[0].hole = '140 mm';
    },
    'standing.vents[0].hole',
    'front panel, 90 mm',
  ],
  [
    'peaks in the wrong order',
    (b) => {
      b.standing.measured = { peaks: ['70 Hz', '20 Hz'] };
    },
    'standing.measured.peaks',
    'the lower peak first',
  ],
  [
    'a dip outside its peaks',
    (b) => {
      b.standing.measured = { peaks: ['20 Hz', '60 Hz'], tuning: '80 Hz' };
    },
    'standing.measured.tuning',
    'between the two peaks',
  ],
  ['two wirings', (b) => b.drivers[0].wirings.push({ series: 2 }), 'drivers', 'one kind of driver in one wiring'],
  [
    'an unknown field',
    (b) => {
      b.standing.vents[0].diametre = '1 mm';
    },
    'standing.vents[0].diametre',
    'Did you mean diameter?',
  ],
];

describe('a brief that contradicts what stands', () => {
  test.each(broken)('%s', (_, change, path, says) => {
    const faults = faultsOf(changed(change));
    const fault = faults.find((one) => one.path === path);
    expect(fault, JSON.stringify(faults)).toBeDefined();
    expect(`${fault?.expected} ${fault?.remedy}`).toContain(says);
  });
});

test('a measured tuning far from the computed one is told with both numbers and what would explain it', () => {
  const answer = retrofit(
    changed((b) => {
      b.standing.measured = { tuning: '38 Hz' };
    }),
  );
  const text = retrofitText(answer).replace(/\s+/g, ' ');
  expect(text).toContain('You measured a tuning of 38.0 Hz, but the sizes give 33.7 Hz. 21 % less air');
  expect(answer.now.account.fb).toBeCloseTo(38, 9);
});

test('two peaks tell the tuning', () => {
  // Without losses the product of both peaks is that of fs and fb.
  const answer = retrofit(
    changed((b) => {
      b.standing.measured = { peaks: ['21 Hz', '68 Hz'] };
    }),
  );
  expect(answer.now.account.fb).toBeCloseTo((21 * 68) / 42, 9);
});

test('the first thing to do is a wider tube, and its row meets what is wanted', () => {
  const { rows, first, asked, now } = retrofit(demoStanding);
  const row = rows[first!]!;
  expect(row.ok && row.box.tubes).toEqual([{ diameter: 0.05, length: 0.201, count: 1 }]);
  expect(row.ok && row.account.loudest.level).toBeGreaterThan(asked.level);
  expect(row.ok && row.account.wanted.airSpeed!.value).toBeLessThan(asked.airSpeedPeak);
  expect(now.account.wanted.airSpeed!.value).toBeGreaterThan(asked.airSpeedPeak);
});

test('a pair does better than each of its changes alone', () => {
  const { rows } = retrofit(demoStanding);
  const pairs = rows.filter((row) => row.change.includes(', and '));
  expect(pairs.length).toBeGreaterThan(0);
});

test('the answer survives JSON, and its report names each proposed tube', () => {
  const answer = retrofit(demoStanding);
  expect(JSON.parse(JSON.stringify(answer))).toEqual(answer);
  const text = retrofitText(answer);
  for (const { option } of answer.tubes!.proposed) {
    expect(text).toContain(String(Math.round(answer.tubes!.options[option]!.length * 1e3)));
  }
  expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
});

test('a brief about a box that stands is refused where a new box is designed', () => {
  expect(() => design(demoStanding as unknown as Brief)).toThrow(/Ask retrofit/);
  expect(reportText).toBeTypeOf('function');
});

test('every change has a name', () => {
  for (const { change } of retrofit(demoStanding).rows) expect(change).toMatch(/^[a-z]/);
});
