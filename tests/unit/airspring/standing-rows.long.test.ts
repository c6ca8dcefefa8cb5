import { type Retrofit, retrofit, retrofitText } from 'airspring';
import { expect, test } from 'vitest';
import unknownDrivers from '../../../packages/airspring/briefs/unknown-drivers.json' with { type: 'json' };
import { demoStanding } from '../../arbitrary/standing.js';
import { faultsOf } from '../../refusal/faults.js';

type Phrase = readonly (string | readonly [number, string])[];
/** A phrase as its words, with its quantities in SI units times a thousand. */
const said = (phrase: Phrase): string =>
  phrase.map((part) => (typeof part === 'string' ? part : (part[0] * 1e3).toFixed(1))).join('');
const rowOf = ({ rows }: Retrofit, change: string) => rows.find((row) => row.change === change)!;
const work = (answer: Retrofit, change: string): string => {
  const row = rowOf(answer, change);
  return row.ok ? [...row.steps, row.measure ?? []].map(said).join(' ') : said(row.because);
};

const outer = { width: '240 mm', height: '500 mm', depth: '300 mm' };
const drivers = [
  { face: 'front', across: '120 mm', up: '390 mm' },
  { face: 'front', across: '120 mm', up: '210 mm' },
];
const vent = { diameter: '44 mm', length: '150 mm', place: { face: 'front', across: '120 mm', up: '60 mm' } };
/** The box of the demonstration with every place known, and what else a test says of it. */
const placed = (standing: object = {}, more: object = {}) => ({
  ...demoStanding,
  standing: { outer, panelThickness: '15 mm', drivers, vents: [vent], keep: ['box'], ...standing },
  workshop: {},
  printer: undefined,
  ...more,
});
const answered = (brief: object): Retrofit => retrofit(JSON.parse(JSON.stringify(brief)));
const air = (standing: object = {}, more: object = {}) => ({
  ...demoStanding,
  standing: { ...demoStanding.standing, keep: [], ...standing },
  ...more,
});

test('a vent with rounded ends has its tubes for one flange, none shorter than its roundings', () => {
  const { tubeSets } = answered(air({ vents: [{ diameter: '44 mm', length: '150 mm', rounding: '12 mm' }] }));
  expect(tubeSets.length).toBeGreaterThan(0);
  for (const { options } of tubeSets) for (const { length } of options) expect(length).toBeGreaterThanOrEqual(0.024);
});

test('no tube is told twice: a wider hole is cut only for a tube that no narrower one passes', () => {
  for (const brief of [
    placed({ vents: [{ ...vent, hole: '60 mm' }] }),
    placed({ vents: [{ ...vent, hole: '50 mm' }] }, { workshop: { holeSaws: ['57 mm', '65 mm', '76 mm', '92 mm'] } }),
  ]) {
    const wider = answered(brief).rows.filter(({ change }) => /^a wider vent (in|through)/.test(change));
    const sizes = wider.flatMap((row) => (row.ok ? [JSON.stringify(row.box.tubes)] : []));
    expect(sizes.length).toBeGreaterThan(0);
    expect(new Set(sizes).size).toBe(sizes.length);
  }
  const held = answered(placed({ vents: [{ ...vent, hole: '60 mm' }] }));
  for (const row of held.rows)
    if (row.ok && row.change.includes('glued behind'))
      expect(row.steps.map(said).join(' ')).not.toContain('fits through the existing hole');
});

test('a tube that is much narrower than its hole gets a ring around it', () => {
  const loose = answered(placed({ vents: [{ ...vent, hole: '90 mm' }] }));
  expect(work(loose, 'a longer vent')).toContain('The hole is 40.0 wider than the tube: close the gap all round');
  expect(work(answered(placed()), 'a longer vent')).not.toContain('close the gap');
});

test('a further hole that no saw makes is routed', () => {
  const second = (holeSaws: readonly string[]) =>
    work(answered(air({}, { workshop: { holeSaws } })), 'a second vent beside the first');
  expect(second(['57 mm'])).toContain('None of your saws makes a hole of this size: rout it along a template.');
  expect(second(['50 mm', '57 mm'])).not.toContain('None of your saws');
});

test('a pipe does not bend: its elbow is bought', () => {
  const workshop = { holeSaws: ['80 mm'], pipes: [{ inner: '70 mm', outer: '75 mm' }] };
  const text = work(answered(placed({}, { workshop })), 'a wider vent made of the pipe, with one bend');
  expect(text).toMatch(/Cut the pipe of 70\.0 inner diameter to [\d.]+ and [\d.]+, and buy an elbow of 70\.0/);
});

test('what a printer is too narrow for is bought, and no wider tube is proposed for it', () => {
  const narrow = answered(air({}, { printer: { height: '200 mm', width: '45 mm' } }));
  expect(work(narrow, 'a longer vent')).toContain('Your printer takes parts up to 45.0 wide. Buy a tube');
  for (const { change } of narrow.rows) expect(change).not.toMatch(/^a wider vent/);
  for (const { outerDiameter } of narrow.tubeSets) expect(outerDiameter).toBeLessThanOrEqual(0.045);
});

test('an elbow for which a printer is too low is bought, and one that lies on its side is printed', () => {
  const bent = (height: string, width = '200 mm') => {
    const of = answered(placed({}, { workshop: { holeSaws: ['76 mm'] }, printer: { height, width } }));
    return work(of, 'a wider vent in a hole cut with the saw, with one bend');
  };
  // The tube is 75 mm wide, and its elbow stands 126 mm high.
  expect(bent('120 mm')).toMatch(/Print a tube of [^.]*69\.0 inner and 75\.0 outer/);
  expect(bent('74 mm')).toContain(
    'Your printer takes parts up to 200.0 wide and 74.0 high, with their joints. Buy a tube',
  );
  expect(bent('74 mm')).toContain('with an elbow.');
  // Beside its bend an elbow has a spigot and a socket.
  expect(bent('120 mm', '124 mm')).toContain('Buy a tube');
});

test('a vent as short as its panel is a hole, and a second one is a second hole', () => {
  const hole = answered(air({ vents: [{ diameter: '60 mm', length: '15 mm' }] }));
  const text = work(hole, 'a second vent beside the first');
  expect(text).toContain('Cut a second hole of 60.0');
  expect(text).not.toContain('Print');
});

test('a slot that cannot be built is told with the reason', () => {
  const small = { width: '200 mm', height: '300 mm', depth: '180 mm' };
  const standing = { inner: small, outer: undefined, drivers: undefined, vents: [{ ...vent, place: undefined }] };
  const loud = answered(placed(standing, { wanted: { ...demoStanding.wanted, level: '102 dB' } }));
  expect(work(loud, 'a slot')).toBe('Its channel would take more than 70 % of the air in the box.');
  const deep = answered(placed({ drivers: undefined, vents: [{ diameter: '44 mm', length: '400 mm' }], keep: [] }));
  const [, needed, room] = /needs ([\d.]+) inwards .* room for ([\d.]+) at most/.exec(work(deep, 'a slot')) ?? [];
  // The inside of the box is 210 × 470 × 270 mm.
  expect(room).toBe('470.0');
  expect(Number(needed)).toBeGreaterThan(470);
});

test('a channel that is longer than a cubic box is wide has to fold', () => {
  const high = answered(air({ measured: { tuning: '52 Hz' } }));
  expect(work(high, 'a slot')).toContain('so look for room to fold the channel');
});

test('one driver of several keeps its own share of the air', () => {
  for (const [count, share] of [
    [2, 1 / 2],
    [3, 2 / 3],
    [4, 3 / 4],
  ] as const) {
    const brief = air({ air: '40 L' }, { drivers: [{ ...demoStanding.drivers[0], wirings: [{ parallel: count }] }] });
    const { what } = rowOf(answered(brief), 'one driver in less air');
    const filled = what.flatMap((part) => (typeof part === 'string' ? [] : [part[0]]))[0]!;
    const taken = (Math.PI / 4) * 0.05 ** 2 * 0.135;
    expect(filled).toBeCloseTo((0.04 + taken) * share, 6);
  }
});

test('two drivers one behind the other must find their depth', () => {
  const flat = { width: '600 mm', height: '300 mm', depth: '170 mm' };
  const told = answered(placed({ outer: flat, drivers: undefined, vents: [{ ...vent, place: undefined }] }));
  expect(work(told, 'an isobaric pair')).toBe(
    'Two drivers need 156.0 of depth behind one cutout; there is room for 155.0 at most.',
  );
});

test('no size of a driver without a sheet is told as nothing', () => {
  const told = answered({ ...unknownDrivers, standing: { ...unknownDrivers.standing, keep: [] } });
  expect(JSON.stringify(told.rows.map((row) => (row.ok ? [row.steps, row.measure] : [])))).not.toContain(
    '[0,"length"]',
  );
});

test('a hole beside panels that leave no room is told as such, not as a length', () => {
  const low = answered(placed({ vents: [{ ...vent, hole: '90 mm' }], keep: ['box', 'holes'] }));
  expect(work(low, 'a wider vent glued behind the hole')).toMatch(/does not stand clear of the panels and drivers/);
});

test('a passive radiator that keeps the tuning as it is needs no added mass', () => {
  const radiator = { name: 'r', fs: '20 Hz', Qms: 8, Sd: '500 cm²', Xmax: '14 mm', outerDiameter: '310 mm' };
  const sizes = { cutoutDiameter: '280 mm', depth: '90 mm' };
  const told = (Vas: string) =>
    rowOf(answered(air({}, { radiators: [{ ...radiator, ...sizes, Vas }] })), 'a passive radiator');
  const fbOf = (row: ReturnType<typeof told>) => (row.ok ? row.account.fb : undefined);
  // fb = fs √(1 + Vas / Vb), with Vb the 22 L and what the tube took; the box is tuned to 33.68 Hz.
  const Vb = 22 + 1e3 * (Math.PI / 4) * 0.05 ** 2 * 0.135;
  const near = told(`${((33.5 / 20) ** 2 - 1) * Vb} L`);
  expect(fbOf(near)).toBeCloseTo(33.5, 1);
  expect(near.ok && near.steps.map(said).join(' ')).not.toContain('Fix');
  expect(fbOf(told(`${((33 / 20) ** 2 - 1) * Vb} L`))).toBeUndefined();
});

test('several other wirings have names of their own', () => {
  const four = air({}, { drivers: [{ ...demoStanding.drivers[0], wirings: [{ series: 2, parallel: 2 }] }] });
  const names = answered(four).rows.map(({ change }) => change);
  expect(names.filter((name) => name.startsWith('another wiring'))).toEqual([
    'another wiring, all in parallel',
    'another wiring, all in series',
  ]);
});

test('openings that would meet on their panel are refused with both numbers', () => {
  const meets = placed({ vents: [{ ...vent, hole: '44 mm', place: { ...vent.place, up: '200 mm' } }] });
  const [fault] = faultsOf(() => answered(meets));
  expect(fault).toMatchObject({
    path: 'standing.vents[0].place',
    got: '10 mm from the centre of standing.drivers[1]',
    expected: 'at least 95 mm, so that the hole of 44 mm and the cutout of 146 mm do not meet',
  });
});

/** Magnitude of the impedance of one driver in a leaky vented box, by hand: fs 42 Hz, Qes 0.43, Qms 4, Vas 14 L, 6.2 Ω; 22 L tuned to 33 Hz. */
function impedanceAt(f: number, QL: number): number {
  const [fs, Qes, Qms, ratio, Re, fb] = [42, 0.43, 4, 14 / 22, 6.2, 33];
  // In units of the stiffness of the suspension: cone, and the spring of the air beside vent and leak.
  const [x, y] = [f / fs, f / fb];
  const [leak, rest] = [1 / (QL * y), 1 - 1 / y ** 2];
  const size = leak ** 2 + rest ** 2;
  // The pressure over the travel is ratio / (rest − j leak).
  const re = 1 - x ** 2 + (ratio * rest) / size;
  const im = x / Qms + (ratio * leak) / size;
  // Z = Re (1 + j x / (Qes (re + j im)))
  const d = Qes * (re ** 2 + im ** 2);
  return Re * Math.hypot(1 + (x * im) / d, (x * re) / d);
}

test('a leaky box tells its drivers by the leak that is assumed, and a tight one within the ranges', () => {
  const toldOf = (QL: number) => {
    const at = Array.from({ length: 300_000 }, (_, i) => 8 * 20 ** (i / 300_000));
    const z = at.map((f) => impedanceAt(f, QL));
    const turns = at.flatMap((f, i) =>
      i > 0 && (z[i]! - z[i - 1]!) * ((z[i + 1] ?? Infinity) - z[i]!) < 0 ? [f] : [],
    );
    const [lower, dip, upper] = turns as [number, number, number];
    const hertz = (f: number) => `${f.toFixed(4)} Hz`;
    const ohms = (f: number) => `${impedanceAt(f, QL).toFixed(4)} Ω`;
    const measured = {
      peaks: [hertz(lower), hertz(upper)],
      tuning: hertz(dip),
      peakImpedance: ohms(upper),
      flank: { frequency: hertz(1.1 * upper), impedance: ohms(1.1 * upper) },
      Re: '6.2 Ω',
    };
    const { standing } = unknownDrivers;
    const alone = { name: 'unknown', coneDiameter: '130 mm' };
    const answer = answered({ ...unknownDrivers, drivers: [alone], standing: { ...standing, measured } });
    const values = answer.measuredDrivers?.values ?? [];
    return Object.fromEntries(values.map((one) => [one.field, one]));
  };
  const tight = toldOf(1e9);
  const leaky = toldOf(7);
  for (const [field, truth] of [
    ['fs', 42],
    ['Qms', 4],
    ['Qes', 0.43],
    ['Vas', 0.014],
  ] as const) {
    expect(leaky[field]!.value / truth, field).toBeCloseTo(1, 3);
    expect(tight[field]!.from, field).toBeLessThan(truth);
    expect(tight[field]!.to, field).toBeGreaterThan(truth);
  }
  // Taken as a box that leaks, the tight one is farther off than its readings are.
  expect(tight.fs!.value).toBeGreaterThan(1.02 * 42);
  expect(tight.Qms!.value).toBeGreaterThan(1.3 * 4);
});

test('published losses span what steady losses take, also where a greater loss leaves more sound', () => {
  const { rows } = answered({
    ...demoStanding,
    drivers: [{ ...demoStanding.drivers[0], wirings: [{ parallel: 1 }] }],
    standing: {
      outer: { width: '206 mm', height: '387 mm', depth: '166 mm' },
      panelThickness: '15 mm',
      vents: [{ diameter: '60 mm', length: '162 mm', hole: '66 mm' }],
    },
    wanted: { lowest: '39 Hz', highest: '150 Hz', level: '93 dB', fall: '6 dB' },
  });
  const told = rows.flatMap((row) => (row.ok && row.account.compression ? [row.account.compression] : []));
  expect(told.length).toBeGreaterThan(3);
  for (const { low, nominal, high } of told) {
    expect(low).toBeLessThanOrEqual(nominal);
    expect(nominal).toBeLessThanOrEqual(high);
  }
});

test('a vent whose hole was not measured needs the room of its tube beside a cutout, and the fault says what was assumed', () => {
  // The cutout of 146 mm ends 73 mm from its centre; the vent is 44 mm inside and 50 mm outside.
  const beside = (up: string, more: object = {}) =>
    placed({ vents: [{ ...vent, place: { ...vent.place, up }, ...more }] });
  const [fault, ...others] = faultsOf(() => answered(beside('113 mm')));
  expect(others).toEqual([]);
  expect(fault).toMatchObject({
    path: 'standing.vents[0].place',
    got: '97 mm from the centre of standing.drivers[1]',
    expected:
      'at least 98 mm, so that the hole of 50 mm (assumed: 44 mm inside, and a wall of 3 mm) and the cutout of 146 mm do not meet',
  });
  expect(fault?.remedy).toContain('standing.vents[].hole');
  for (const fits of [beside('112 mm'), beside('113 mm', { wall: '2 mm' }), beside('113 mm', { hole: '48 mm' })])
    expect(answered(fits).rows.length).toBeGreaterThan(0);
  // A vent as short as its panel has no tube.
  expect(answered(beside('115 mm', { length: '15 mm' })).rows.length).toBeGreaterThan(0);
});

const mm = (metres: number): number => Math.round(metres * 1e4) / 10;

test('the flange of a set covers the edge of its hole, and is no wider than the printer', () => {
  const sets = (standing: object, more: object = {}) => answered(air(standing, more));
  const wide = { vents: [{ diameter: '44 mm', length: '150 mm', hole: '90 mm' }] };
  const [, loose] = sets(wide, { workshop: { pipes: [{ inner: '40 mm', outer: '44 mm' }] } }).tubeSets;
  expect(mm(loose!.flangeDiameter)).toBe(100);
  const [rounded] = sets({ vents: [{ diameter: '44 mm', length: '150 mm', rounding: '12 mm' }] }).tubeSets;
  expect(mm(rounded!.flangeDiameter)).toBe(51 + 2 * 12 + 20);
  const workshop = { holeSaws: ['57 mm', '76 mm'], pipes: [{ inner: '68 mm', outer: '75 mm' }] };
  const narrow = sets({}, { workshop, printer: { height: '180 mm', width: '96 mm' } });
  expect(narrow.tubeSets.map(({ flangeDiameter }) => mm(flangeDiameter))).toEqual([70, 76, 95]);
  expect(narrow.tubeSetsLeftOut.map(said)).toEqual([
    'Tubes of 68.0: their flange is 101.2 wide, and your printer takes parts up to 96.0 wide.',
  ]);
  expect(sets({}, { workshop, printer: { height: '180 mm', width: '102 mm' } }).tubeSetsLeftOut).toEqual([]);
});

test('tubes of a set pass their hole', () => {
  const { tubeSets } = answered(air({ vents: [{ diameter: '44 mm', length: '150 mm', hole: '44 mm' }] }));
  for (const { outerDiameter, hole } of tubeSets) expect(outerDiameter).toBeLessThanOrEqual(hole.hole + 1e-9);
});

test('where there is no set of tubes, the answer says why', () => {
  const told = (standing: object) => answered(air(standing)).tubeSetsLeftOut.map(said).join(' ');
  expect(told({})).toBe('');
  expect(told({ keep: ['tuning'] })).toContain('you want to keep the tuning');
  expect(told({ keep: ['holes'] })).toBe(
    'Tubes for a hole of 57.0: you want to keep the holes. Tubes for a hole of 76.0: you want to keep the holes.',
  );
  expect(told({ vents: [{ diameter: '44 mm', length: '150 mm', count: 2 }] })).toContain('List them one by one');
  expect(told({ vents: undefined })).toBe('');
  const kept = retrofitText(answered(air({ keep: ['tuning'] })));
  expect(kept.replace(/\s+/g, ' ')).toContain(
    'Sets of tubes for one flange ---------------------------- There is none. Each tube',
  );
});

test('a tube with rounded ends says so, and how its inner end gets behind the hole', () => {
  const rounded = { diameter: '44 mm', length: '150 mm', rounding: '12 mm' };
  const answer = answered(air({ vents: [rounded] }));
  expect(work(answer, 'a longer vent')).toMatch(/long, its ends rounded with a radius of 12\.0/);
  expect(work(answer, 'a longer vent')).toContain(
    'The rounded inner end is wider than the hole: print it as a piece of its own, take a driver out, and glue it on from inside.',
  );
  expect(work(answer, 'a wider vent glued behind the hole, straight')).toContain('its inner end rounded');
  // Tubes of a set slide in from outside.
  expect(answer.tubeSets.map(({ diameter, hole }) => [mm(diameter), mm(hole.hole)])).toEqual([[45, 76]]);
  expect(answer.tubeSetsLeftOut.map(said).join(' ')).toMatch(
    /^Tubes for a hole of 50\.0: .* Tubes for a hole of 57\.0: /,
  );
  expect(work(answered(air()), 'a longer vent')).not.toContain('round');
});

test('a pipe is cut square, whatever the ends of the tube that it replaces', () => {
  const workshop = { holeSaws: ['76 mm'], pipes: [{ inner: '68 mm', outer: '75 mm' }] };
  const ofPipe = (more: object) => {
    const answer = answered(
      air({ vents: [{ diameter: '44 mm', length: '150 mm', hole: '50 mm', ...more }] }, { workshop }),
    );
    return answer.tubeSets.find(({ diameter }) => mm(diameter) === 68)!;
  };
  const [sharp, rounded] = [ofPipe({}), ofPipe({ rounding: '3 mm' })];
  const tuned = (set: typeof sharp) => set.options.map(({ account }) => account.fb);
  expect(tuned(rounded)).toEqual(tuned(sharp));
});

test('no tube passes a hole that is narrower, in designs of several changes too', () => {
  const answer = answered(air({ vents: [{ diameter: '44 mm', length: '150 mm', rounding: '12 mm' }] }));
  const tubes = answer.designs.flatMap(({ parts }) => parts.flatMap(({ tube }) => (tube ? [tube] : [])));
  expect(tubes.length).toBeGreaterThan(0);
  for (const tube of tubes)
    if (tube.diameter + 2 * tube.wall > tube.hole + 1e-9) expect(tube.how).toBe('joined inside');
});

test('the report names a tube by where it is told, and a bend only where the known box is too short', () => {
  const flat = (brief: object) => retrofitText(answered(brief)).replace(/\s+/g, ' ');
  expect(flat(demoStanding)).toMatch(
    /the quietest vent is tube T\d of the sets below.*A cubic box of this volume is not \d+ mm wide inside/,
  );
  const known = {
    outer: { width: '9.5 in', height: '20 in', depth: '12 in' },
    panelThickness: '5/8 in',
    vents: [{ diameter: '1.75 in', length: '6 in' }],
    keep: ['box', 'drivers'],
  };
  const sized = flat({ ...demoStanding, standing: known, workshop: { holeSaws: ['3 in'] } });
  expect(sized).not.toContain('A cubic box');
  expect(sized).toMatch(/No inner edge of the box is [\d.]+ mm long, so it has to bend: measure first\./);
});

test('a report in inches says that tubes are in whole millimetres', () => {
  const text = (units: object) => retrofitText(answered(demoStanding), units).replace(/\s+/g, ' ');
  expect(text({ length: 'in' })).toContain('Tubes are in whole millimetres: 1 in is 25.4 mm.');
  expect(text({})).not.toContain('25.4');
});

test('of a closed box nothing is told about a vent that it does not have', () => {
  const answer = answered(air({ vents: [], keep: [] }));
  for (const row of answer.rows) if (row.ok) expect(row.holds).not.toContain('length');
  const text = retrofitText(answer).replace(/\s+/g, ' ');
  expect(text).toContain('Both in series. It keeps the air in the box.');
  expect(text).not.toMatch(/Lengths of vents|the vent stays below/);
});
