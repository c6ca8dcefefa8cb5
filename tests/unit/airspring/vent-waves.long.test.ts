import { completeDriver } from '@airspring/core/driver';
import { lineVentedBox } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import { compileVentWithWaves } from '@airspring/core/vent';
import { briefJsonSchema, design, reportText, retrofit } from 'airspring';
import { expect, test } from 'vitest';
import thunder from '../../../packages/airspring/briefs/old-thunder-box.json' with { type: 'json' };
import bench from '../../../packages/airspring/briefs/whale-bench.json' with { type: 'json' };
import { metByWeights, searchFor } from '../../arbitrary/brief.js';

const of = (vent: object, more: object = {}) => ({
  ...bench,
  box: { kinds: ['vented'], tuning: '26 Hz' },
  vent: { ...bench.vent, smallest: '80 mm', largest: '90 mm', ...vent },
  ...more,
});
const answer = metByWeights(of({ waves: true }), 1);
const one = answer.designs[0]!;
const numberOf = (what: string) =>
  (one.numbers.find((each) => each.what.startsWith(what))!.value[0] as readonly [number, string])[0];
const sheet = completeDriver({
  ...{ fs: '24 Hz', Qts: 0.36, Qes: 0.4, Vas: '70 L', Sd: '330 cm²', Re: '5.6 Ω', Le: '0.9 mH', Xmax: '9 mm' },
});
if (!sheet.ok) throw new Error('the driver of the brief');

const { diameter, length } = one.vent!;
const ends = compileVentWithWaves({ diameter: si('length', diameter), wall: '3 mm' }).tube(length);
const box = {
  drivers: sheet.driver,
  netVolume: si('volume', one.box.netVolume),
  vent: { ...ends, solidAngle: 2 * Math.PI },
  QL: 7,
  sourceResistance: '0.1 Ω',
} as const;

test('a design plays as core says of a box with that pipe', () => {
  const { frequencies, levelHalfSpace, driveVoltageRms } = one.curves;
  const own = respond(lineVentedBox(box), [...frequencies], {
    driveVoltageRms: si('voltageRms', Number(driveVoltageRms)),
  });
  expect(Math.max(...levelHalfSpace.map((level, i) => Math.abs(level - own.levelHalfSpace[i]!)))).toBeLessThan(0.02);
  expect(numberOf('tone of the vent')).toBeCloseTo(
    343.987 / (2 * (length + ends.innerCorrection + ends.outerCorrection)),
    1,
  );
  expect(numberOf('what the walls')).toBeGreaterThan(0.02);
});

test('so it does at the tone of the pipe, where the sound that leaves the vent damps it', () => {
  const { variants } = searchFor(of({ waves: true }));
  const searched = variants[0]!.system([one.box.netVolume, numberOf('tuning'), diameter]);
  const tone = numberOf('tone of the vent');
  const near = [0.8, 0.97, 1, 1.03, 1.2].map((ratio) => ratio * tone);
  const [levels, own] = [searched, lineVentedBox(box)].map((system) => respond(system, near).levelHalfSpace);
  near.forEach((_, i) => expect(levels![i]).toBeCloseTo(own![i]!, 1));
});

test('its tuning is where the cone stands still without losses', () => {
  const { QL: _, ...tight } = box;
  const fb = numberOf('tuning');
  const near = Array.from({ length: 201 }, (_, i) => fb - 1 + 0.01 * i);
  const { displacementPeak } = respond(lineVentedBox({ ...tight, vent: { ...box.vent, wallLoss: 0 } }), near);
  expect(near[displacementPeak.indexOf(Math.min(...displacementPeak))]).toBeCloseTo(fb, 1);
});

test('it is tuned as the brief says, and the report tells the tone of the pipe', () => {
  expect(Math.abs(numberOf('tuning') - 26)).toBeLessThan(0.05);
  const text = reportText(answer).replace(/\s+/g, ' ');
  expect(text).toContain(`a tone of its own at ${numberOf('tone of the vent').toFixed(1)} Hz, like a pipe`);
  expect(text).toContain('computed as that of a straight pipe with smooth walls');
});

test('flared vents have waves too, and where none tunes so high there is still a network', () => {
  const brief = of(
    { waves: true, smallest: '30 mm' },
    { box: { kinds: ['flared-vented'] }, flare: { inner: '20 mm' } },
  );
  const [variant] = searchFor(brief).variants;
  const { netVolume } = one.box;
  const high = respond(variant!.system([netVolume, 200, 0.03]), [30]).levelHalfSpace[0]!;
  expect(Number.isFinite(high)).toBe(true);
  const parts = { extent: 0, taken: 0, effort: 0 };
  expect(variant!.parts([netVolume, 200, 0.03], parts)).toBe(false);
  expect(variant!.parts([netVolume, 26, 0.08], parts)).toBe(true);
});

test('without waves, or with waves: false, nothing changes', () => {
  expect(JSON.stringify(design(of({ waves: false }) as never))).toBe(JSON.stringify(design(of({}) as never)));
});

test('a loss that the pipe has already, a pinned shape and a box that stands are refused or told', () => {
  const faulty = (path: string) =>
    expect.objectContaining({ faults: [expect.objectContaining({ path, code: 'conflict' })] });
  const lossy = { box: { kinds: ['vented'], QP: 50 } };
  expect(() => searchFor(of({ waves: true }, lossy))).toThrow(faulty('box.QP'));
  expect(() => retrofit({ ...thunder, vent: { waves: true } } as never)).toThrow(faulty('vent.waves'));
  const pinned = design(of({ waves: true }, { box: { kinds: ['vented'] }, alignment: { name: 'QB3' } }) as never);
  expect(pinned.ok || pinned.because.join(' ')).toMatch(/poles without end/);
});

test('the schema has it, and a box with a slot alone does not take it', () => {
  expect(JSON.stringify(briefJsonSchema())).toContain('"waves"');
  expect(() => searchFor(of({ waves: true }, { box: { kinds: ['slot-vented'] }, vent: { waves: true } }))).toThrow(
    expect.objectContaining({ faults: [expect.objectContaining({ path: 'vent.waves' })] }),
  );
});

test('a default that is written out asks for nothing', () => {
  expect(() => searchFor({ ...bench, box: { kinds: ['slot-vented'] }, vent: { waves: false } })).not.toThrow();
});

test('a kind with vents in which no waves are computed tells so', () => {
  const narrow = { smallest: '40 mm', largest: '41 mm', airSpeed: '5 m/s' };
  const neglected = (waves: boolean) => {
    const [slot] = metByWeights(of({ ...narrow, waves }, { box: { kinds: ['vented', 'slot-vented'] } }), 1).designs;
    expect(slot!.kind).toBe('slot-vented');
    return slot!.warnings.flatMap((one) => ('text' in one ? [one.text] : [])).join();
  };
  expect(neglected(true)).toMatch(/vent\.waves.*not computed for a box with a slot vent.*one mass/);
  expect(neglected(false)).toBe('');
});

test('a comparison with alignments says why there are none', () => {
  const compared = metByWeights(of({ waves: true }, { alignment: 'compare' }), 1);
  expect(compared.designs[0]!.alignments).toEqual([]);
  const text = reportText(compared).replace(/\s+/g, ' ');
  expect(text).toContain('The waves in a vent have poles without end, so that no such box has one.');
  expect(JSON.stringify(answer.designs[0]!.told)).not.toContain('poles');
});

test('a tone in the band of the brief is not to be kept away from the box', () => {
  const wanted = { ...bench.wanted, highest: '400 Hz' };
  const wide = metByWeights({ ...bench, wanted, box: { kinds: ['vented'] }, vent: { ...bench.vent, waves: true } }, 1);
  const text = reportText(wide).replace(/\s+/g, ' ');
  expect(text).toContain('within the band of the brief, so the level has a peak and a dip near it');
  expect(text).not.toContain('Keep tones near it away');
});

test('of several vents each has its tone', () => {
  const two = metByWeights(of({ waves: true, counts: [2], smallest: '50 mm', largest: '60 mm' }), 1);
  const text = reportText(two).replace(/\s+/g, ' ');
  expect(text).toContain('Each vent has a tone of its own at ');
  expect(text).toContain('tone of each vent as a pipe');
  expect(text).toContain('what the walls of the vents take');
  expect(text).not.toMatch(/tone of the vent|The vent has/);
});
