import {
  type Brief,
  changedDesignPage,
  changedDesignText,
  design,
  reportText,
  retrofit,
  retrofitPage,
  retrofitText,
} from 'airspring';
import { describe, expect, test } from 'vitest';
import { demoStanding, retrofitted } from '../../arbitrary/standing.js';
import { faultsOf as refusal } from '../../refusal/faults.js';

// biome-ignore lint/suspicious/noExplicitAny: a brief broken on purpose has no type
type Loose = Record<string, any>;
const changed = (change: (brief: Loose) => void): unknown => {
  const brief = structuredClone(demoStanding) as Loose;
  change(brief);
  return brief;
};
/** The same where nothing may be changed, which is soon worked out: for what is told of the box as it stands. */
const kept = (change: (brief: Loose) => void): unknown =>
  changed((brief) => {
    change(brief);
    brief.standing.keep = ['box', 'drivers', 'wiring', 'holes', 'tuning'];
  });
const faultsOf = (brief: unknown) => refusal(() => retrofit(brief));

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
    'between the peaks, 20 and 60 Hz',
  ],
  [
    'drivers that leave no air',
    (b) => {
      delete b.standing.air;
      b.standing.outer = { width: '120 mm', height: '120 mm', depth: '120 mm' };
      b.standing.vents[0].length = '60 mm';
    },
    'standing.outer',
    'more air than drivers and bracing take up, 1 L',
  ],
  [
    'bracing that leaves no air',
    (b) => {
      b.standing.outer = { width: '300 mm', height: '400 mm', depth: '300 mm' };
      delete b.standing.air;
      b.standing.bracing = '500 L';
    },
    'standing.outer',
    'drivers and bracing take up, 501 L',
  ],
  [
    'vents that fill the box',
    (b) => {
      delete b.standing.air;
      b.standing.outer = { width: '200 mm', height: '200 mm', depth: '200 mm' };
      b.standing.vents = [{ diameter: '150 mm', length: '450 mm' }];
    },
    'standing.vents',
    'less than the air in the box, 3.9',
  ],
  [
    'more air than the sizes hold',
    (b) => {
      b.standing.outer = { width: '300 mm', height: '400 mm', depth: '300 mm' };
      delete b.standing.air;
      b.standing.air = '100 L';
    },
    'standing.air',
    'less than the inside of the box, 26.97 L',
  ],
  [
    'a place for one of two drivers',
    (b) => {
      b.standing.outer = { width: '300 mm', height: '400 mm', depth: '300 mm' };
      delete b.standing.air;
      b.standing.drivers = [{ face: 'front', across: '100 mm', up: '100 mm' }];
    },
    'standing.drivers',
    'one for each driver that shows on the outside, 2',
  ],
  [
    'a vent beside its panel',
    (b) => {
      b.standing.outer = { width: '300 mm', height: '400 mm', depth: '300 mm' };
      delete b.standing.air;
      b.standing.vents[0].place = { face: 'left', across: '900 mm', up: '100 mm' };
    },
    'standing.vents[0].place.across',
    'the left panel, which is 300 mm in this direction',
  ],
  [
    'a rounding longer than its vent',
    (b) => {
      b.standing.vents[0].rounding = '200 mm';
    },
    'standing.vents[0].rounding',
    'half the length of the vent, 150 mm',
  ],
  [
    'a pipe wider inside than outside',
    (b) => {
      b.workshop.pipes = [{ inner: '60 mm', outer: '50 mm' }];
    },
    'workshop.pipes[0].inner',
    'less than its outer diameter, 50 mm',
  ],
  [
    'a tuning of a closed box',
    (b) => {
      delete b.standing.vents;
      b.standing.measured = { tuning: '40 Hz' };
    },
    'standing.measured',
    'A closed box has no tuning',
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
  const answer = retrofitted(
    kept((b) => {
      b.standing.measured = { tuning: '38 Hz' };
    }),
  );
  const text = retrofitText(answer).replace(/\s+/g, ' ');
  expect(text).toContain('You measured a tuning of 38.0 Hz, but the sizes give 33.7 Hz. 21 % less air');
  expect(answer.now.account.fb).toBeCloseTo(38, 9);
});

test('two peaks tell the tuning', () => {
  // Without losses the product of both peaks is that of fs and fb.
  const answer = retrofitted(
    kept((b) => {
      b.standing.measured = { peaks: ['21 Hz', '68 Hz'] };
    }),
  );
  expect(answer.now.account.fb).toBeCloseTo((21 * 68) / 42, 9);
});

test('the first thing to do is a wider tube, and its row meets what is wanted', () => {
  const { rows, first, asked, now } = retrofitted(demoStanding);
  const row = rows[first!]!;
  expect(row.ok && row.box.tubes).toEqual([{ vent: 0, diameter: 0.05, length: 0.201, count: 1 }]);
  expect(row.ok && row.account.loudest.level).toBeGreaterThan(asked.level);
  expect(row.ok && row.account.wanted.airSpeed!.value).toBeLessThan(asked.airSpeedPeak);
  expect(now.account.wanted.airSpeed!.value).toBeGreaterThan(asked.airSpeedPeak);
});

test('the first answer names what is quieter, what that costs, and the impedance to measure then', () => {
  const answer = retrofitted(demoStanding);
  const { rows, first, asked, quieter, tubeSets, now } = answer;
  const row = rows[first!]!;
  if (!row.ok) throw new Error('nothing helps');
  const [roomy, quietest] = quieter;
  const quietOf = (account: typeof row.account) => account.noise!.quiet.level;
  for (const { account } of quieter) {
    expect(quietOf(account)).toBeGreaterThan(quietOf(row.account) + 1);
    expect(account.loudest.level).toBeGreaterThanOrEqual(asked.level - 0.1);
    expect(account.reach).toBeLessThan(asked.lowest * 1.01);
  }
  expect(quietOf(quietest!.account)).toBeGreaterThan(quietOf(roomy!.account));
  expect([roomy!.roomy, quietest!.roomy]).toEqual([true, false]);
  // Nothing that gives as much of what is wanted is quieter.
  const tubes = tubeSets.flatMap(({ options, proposed }) => proposed.map(({ option }) => options[option]!.account));
  const able = [
    ...tubes,
    ...rows.flatMap((one) => (one.ok && one.box.level === undefined ? [one.account] : [])),
  ].filter(({ noise, loudest, reach = Infinity }) => noise && loudest.level >= asked.level && reach <= asked.lowest);
  expect(quietOf(quietest!.account)).toBe(Math.max(...able.map(quietOf)));
  const text = retrofitText(answer).replaceAll('\n', ' ');
  expect(text).toContain(
    `Of what has room and leaves level and reach as near to what you want, the quietest vent is tube ${roomy!.name} of the sets below, 69 mm wide and 218 mm long: quiet up to`,
  );
  expect(text).toContain(`The quietest of all, room or not, is tube ${quietest!.name}`);
  expect(text).toContain(
    'It costs a hole of 76 mm to saw, a clear distance of 272 mm behind the panel instead of 236 mm',
  );
  expect(row.impedance!.maxima).toHaveLength(2);
  for (const { frequency } of [...row.impedance!.maxima, ...now.impedance.maxima])
    expect(text).toContain(`${frequency.toFixed(1)} Hz`);
  // What to print is told where it is named first: its wall, its pieces, which add up to the printed tube, and how they are joined.
  const [tube] = row.box.tubes;
  const head = text.slice(0, text.indexOf('It changes:'));
  const [, count, lengths] = /It is printed, in (\d) pieces of ([^.]*(?:\.\d[^.]*)*)\./.exec(head)!;
  const pieces = [...lengths!.matchAll(/([\d.]+) mm/g)].map(([, length]) => Number(length));
  expect(pieces).toHaveLength(Number(count));
  expect(pieces.reduce((sum, one) => sum + one, 0)).toBeCloseTo(1e3 * tube!.length - 15, 6);
  expect(head).toContain(
    'The wall is 3 mm thick. Each piece but the last has a spigot of 12 mm besides, which is glued',
  );
  // The check by eye is done before anything is changed.
  const whole = retrofitText(answer);
  expect(whole.indexOf('What it does now')).toBeLessThan(whole.indexOf('Check the tuning by eye first'));
  expect(whole.indexOf('Check the tuning by eye first')).toBeLessThan(whole.indexOf('What could be done'));
  const page = retrofitPage(answer);
  expect(page.indexOf('Check the tuning by eye first')).toBeLessThan(page.indexOf('What could be done'));
  // Where the wider tube is quiet enough already, nothing else is named.
  const quiet = { ...demoStanding, wanted: { ...(demoStanding as { wanted: object }).wanted, level: '79 dB' } };
  expect(retrofitted(quiet as typeof demoStanding).quieter).toEqual([]);
});

test('drivers mounted otherwise leave the air that a brief about them would find', () => {
  const sized = (wiring: object, edit = changed) =>
    edit((b) => {
      delete b.standing.air;
      b.standing.outer = { width: '300 mm', height: '420 mm', depth: '300 mm' };
      b.standing.keep = ['holes'];
      b.workshop.holeSaws = [];
      b.drivers[0].wirings = [wiring];
    });
  const { rows } = retrofitted(sized({ parallel: 2 }));
  for (const [change, wiring] of [
    ['an isobaric pair', { parallel: 2, isobaric: true }],
    ['one driver', {}],
  ] as const) {
    const row = rows.find((one) => one.change === change)!;
    const { now } = retrofitted(sized(wiring, kept));
    expect(row.ok && row.box.netVolume).toBeCloseTo(now.box.netVolume, 12);
    expect(row.ok && row.account.loudest.level).toBeCloseTo(now.account.loudest.level, 9);
  }
});

test('of vents that differ each can be closed, lengthened, replaced and doubled, and the other one is counted', () => {
  const { rows } = retrofitted(changed((b) => b.standing.vents.push({ diameter: '30 mm', length: '100 mm' })));
  const names = rows.flatMap((row) => (row.ok ? [row.change] : []));
  for (const name of ['vent 1 closed', 'vent 2 closed', 'a longer tube for vent 1', 'a second vent beside vent 2']) {
    expect(names).toContain(name);
  }
  const wider = rows.find(
    ({ change }) => change === 'a wider tube for vent 2 in a hole cut with the smaller saw, straight',
  )!;
  expect(wider.ok && wider.box.tubes.map(({ diameter }) => diameter)).toEqual([0.044, expect.any(Number)]);
  const same =
    wider.ok &&
    wider.box.fb! /
      retrofitted(changed((b) => b.standing.vents.push({ diameter: '30 mm', length: '100 mm' }))).now.box.fb!;
  expect(same).toBeCloseTo(1, 2);
});

test('a driver that is deeper than its box is refused', () => {
  const brief = changed((b) => {
    delete b.standing.air;
    b.standing.outer = { width: '400 mm', height: '900 mm', depth: '70 mm' };
    b.standing.vents[0].length = '50 mm';
  });
  expect(faultsOf(brief)).toContainEqual(expect.objectContaining({ path: 'drivers[0].depth', got: '78 mm' }));
});

test('limits are claimed for the band in which they are judged', () => {
  const answer = retrofitted(
    kept((b) => {
      b.wanted.safeFrom = '60 Hz';
    }),
  );
  expect(answer.now.account.loudest.frequency).toBeGreaterThanOrEqual(60);
  expect(retrofitText(answer).replace(/\s+/g, ' ')).toContain('at any frequency from 60 Hz to 150 Hz');
});

test('the best combinations are whole designs, each chosen by its name', () => {
  const answer = retrofitted(demoStanding);
  expect(answer.designs.map(({ name }) => name)).toEqual(['A', 'B', 'C']);
  for (const { name, steps, box, account } of answer.designs) {
    const text = changedDesignText(answer, name).replace(/\s+/g, ' ');
    for (const [i] of steps.entries()) expect(text).toContain(` ${i + 1}. `);
    expect(text).toContain(account.loudest.level.toFixed(1));
    expect(text).toContain('WHAT TO MAKE OR TO BUY');
    for (const { diameter } of box.tubes) expect(text).toContain(`${Math.round(diameter * 1e3)} mm`);
    const page = changedDesignPage({ ...answer, designs: answer.designs.filter((one) => one.name === name) });
    expect(page).toContain(`Design ${name}`);
    expect(page.match(/<article/g)).toHaveLength(1);
  }
});

test('a dust caution stands before the first hole, a caution of fumes before the first print', () => {
  const text = changedDesignText(retrofitted(demoStanding), 'A');
  const at = (words: string) => text.indexOf(words);
  expect(at('! Dust')).toBeGreaterThan(0);
  expect(at('! Dust')).toBeLessThan(at('Cut a second hole'));
  expect(at('! Fumes')).toBeLessThan(at('Print 2 tubes'));
});

test('the answer survives JSON, and its report names each proposed tube', () => {
  const answer = retrofitted(demoStanding);
  expect(JSON.parse(JSON.stringify(answer))).toEqual(answer);
  const text = retrofitText(answer);
  const lengths = answer.tubeSets.flatMap(({ options, proposed }) =>
    proposed.map(({ option }) => Math.round(options[option]!.length * 1e3)).sort((a, b) => a - b),
  );
  expect(lengths.length).toBeGreaterThan(3);
  lengths.forEach((mm, i) => {
    expect(text).toMatch(new RegExp(`\\n +T${i + 1} +${mm} `));
  });
  expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
});

test('each hole has its set of tubes, and what a tube is for is true of its numbers', () => {
  const { tubeSets, asked } = retrofitted(demoStanding);
  expect(tubeSets.map(({ diameter }) => Math.round(diameter * 1e3))).toEqual([44, 50, 69]);
  for (const { options, proposed } of tubeSets) {
    expect(proposed.length).toBeGreaterThanOrEqual(1);
    expect(proposed.length).toBeLessThanOrEqual(3);
    const able = options.filter(({ fitting }) => fitting !== 'does not fit');
    for (const { option, purpose } of proposed) {
      const { account } = options[option]!;
      if (purpose === 'deep') {
        expect(account.wanted.airSpeed!.value).toBeLessThanOrEqual(asked.airSpeedPeak);
        const calm = able.filter((one) => one.account.wanted.airSpeed!.value <= asked.airSpeedPeak);
        expect(account.reach).toBe(Math.min(...calm.map((one) => one.account.reach ?? Infinity)));
      }
      if (purpose === 'loud') {
        const deep = able.filter((one) => (one.account.reach ?? Infinity) <= asked.lowest);
        if (deep.length > 0)
          expect(account.loudest.level).toBe(Math.max(...deep.map((one) => one.account.loudest.level)));
      }
    }
  }
});

test('a brief about a box that stands is refused where a new box is designed', () => {
  expect(() => design(demoStanding as unknown as Brief)).toThrow(/call retrofit/);
  expect(reportText).toBeTypeOf('function');
});

test('every change has a name', () => {
  for (const { change } of retrofitted(demoStanding).rows) expect(change).toMatch(/^[a-z]/);
});

test('no two changes have one name: each way of a wider tube to its place is told in words', () => {
  const { rows } = retrofitted(
    changed((b) => {
      b.workshop.holeSaws = ['57 mm', '68 mm', '76 mm'];
      b.workshop.pipes = [
        { inner: '46 mm', outer: '50 mm' },
        { inner: '60 mm', outer: '64 mm' },
      ];
    }),
  );
  const names = rows.map(({ change }) => change);
  expect(new Set(names).size).toBe(names.length);
  for (const place of [
    'glued behind the hole',
    'in a hole cut with the smallest saw',
    'in a hole cut with the second smallest saw',
    'in a hole cut with the largest saw',
    'made of the smaller pipe',
    'made of the larger pipe',
  ])
    expect(names).toContain(`a wider vent ${place}, straight`);
});
