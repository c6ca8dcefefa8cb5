/** What a person with the printed pages alone has to know: the driver, the filter, the drives, the noise, the size of each printed piece. */
import { filesToBuildFrom } from '@airspring/workshop/dossier';
import { extentOf } from '@airspring/workshop/mesh';
import { type Design, toBuild } from 'airspring';
import { describe, expect, test, vi } from 'vitest';
import old from '../../../packages/airspring/briefs/old-thunder-box.json' with { type: 'json' };
import { readBrief } from '../../../packages/airspring/src/brief/read.js';
import { standardModels } from '../../../packages/airspring/src/brief/standard-models.js';
import { standard } from '../../../packages/airspring/src/kind/standard.js';
import { workOf } from '../../../packages/airspring/src/page/work.js';
import { bestOf, demo } from '../../arbitrary/brief.js';

vi.setConfig({ testTimeout: 60_000 });

type Work = Parameters<typeof filesToBuildFrom>[0];
const plain = (html: string) => html.replace(/\u00a0/g, ' ').replace(/&quot;/g, '"');
/** The rows of all tables of a page, a text for each cell. */
const rowsOf = (page: string) =>
  [...page.matchAll(/<tr>(.*?)<\/tr>/g)].map(([, row]) =>
    [...row!.matchAll(/<t[dh]>(.*?)<\/t[dh]>/g)].map(([, cell]) => cell!),
  );
async function built(work: Work) {
  const { files } = await filesToBuildFrom(work);
  const page = plain(String(files[0]!.contents));
  return {
    files,
    page,
    rows: rowsOf(page),
    section: (title: string) => page.split('<h2>').find((one) => one.startsWith(title))!,
  };
}
const workFor = (brief: object, found: Design): Work =>
  workOf(found, readBrief(brief, standard, standardModels)) as Work;

const brief = { ...demo, vent: { ...demo.vent, smallest: '74 mm', largest: '74 mm' } };
const design = bestOf(brief);
const pages = built(workFor(brief, design));

/** The solid in a binary STL file, mm. */
function edgesOf(bytes: Uint8Array): readonly number[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const corners = Float64Array.from({ length: 9 * view.getUint32(80, true) }, (_, i) =>
    view.getFloat32(84 + 50 * Math.floor(i / 9) + 12 + 4 * (i % 9), true),
  );
  return extentOf({ corners, triangles: new Uint32Array() }).edges;
}

/** Each file for the printer beside the sizes that the pages tell of its piece, in mm. */
function sizesTold({ files, rows }: Awaited<typeof pages>, folder: string) {
  return files
    .filter(({ path }) => path.startsWith(folder) && path.endsWith('.stl'))
    .map(({ path, contents }) => {
      const name = path.slice(folder.length + 1, -'.stl'.length);
      const row = rows.find(
        ([, piece = '']) =>
          piece
            .replace(/;.*/, '')
            .replace(/[^A-Za-z0-9]+/g, '-')
            .toLowerCase() === name,
      );
      return { name, file: edgesOf(contents as Uint8Array), told: row?.at(-1)?.split(' × ').map(Number.parseFloat) };
    });
}

/** The greatest difference of three told edges from those of a file, mm; told are tenths. */
const differsBy = ({ file, told = [] }: ReturnType<typeof sizesTold>[number]): number =>
  Math.max(...file.map((edge, i) => Math.abs(edge - (told[i] ?? Infinity))));

describe('each printed piece is told as large as its file lies in the printer', () => {
  test('of a new box, with its spigots', async () => {
    const all = sizesTold(await pages, 'vent');
    expect(all.length).toBeGreaterThan(1);
    for (const one of all) expect(differsBy(one)).toBeLessThan(0.051);
    // Pieces that are joined are longer together than the tube along its middle: spigots are counted.
    const straight = all.filter(({ file }) => Math.abs(file[0]! - file[1]!) < 0.1);
    expect(straight.length).toBeGreaterThan(0);
  });

  test.each(['set 1', '3'])('of a change of a box that stands: %s', async (only) => {
    const found = toBuild(old, { only });
    if (!found.ok) throw new Error(found.line);
    const all = sizesTold(await built(found.work as Work), 'print');
    expect(all.length).toBeGreaterThan(1);
    for (const one of all) expect(differsBy(one)).toBeLessThan(0.051);
  });
});

describe('the sheet of the driver', () => {
  test('holds each number of the brief, and tells which ones follow', async () => {
    const { rows } = await pages;
    const sheet = rows.filter((row) => row.length === 3 && /^(the brief|follows|assumed)/.test(row[2]!));
    const of = (start: string) => sheet.find(([what]) => what!.startsWith(start))!;
    const [driver] = demo.drivers;
    for (const field of ['fs', 'Vas', 'Sd', 'Re', 'Le', 'Xmax', 'Pe'] as const)
      expect(of(`${field},`).slice(1)).toEqual([driver![field as never], 'the brief']);
    for (const [words, field] of [
      ['diameter of the frame', 'outerDiameter'],
      ['diameter of the hole', 'cutoutDiameter'],
      ['depth from the outside', 'depth'],
    ] as const)
      expect(of(words).slice(1)).toEqual([driver![field as never], 'the brief']);
    // What follows agrees with its definition: 1/Qts = 1/Qes + 1/Qms, and Qes of Mms, Re and Bl.
    const number = (field: string) => Number.parseFloat(of(`${field},`)[1]!);
    expect(of('Qms,')[2]).toBe('follows from Qts and Qes');
    expect(1 / number('Qes') + 1 / number('Qms')).toBeCloseTo(1 / number('Qts'), 2);
    const [Mms, Bl, Re, fs] = ['Mms', 'Bl', 'Re', 'fs'].map(number) as [number, number, number, number];
    expect((2 * Math.PI * fs * 1e-3 * Mms * Re) / Bl ** 2).toBeCloseTo(number('Qes'), 2);
  });

  test('says what was assumed, and which of two numbers counts', async () => {
    const [driver] = demo.drivers as readonly Record<string, unknown>[];
    const { Vas: _, Re: __, Le: ___, displacedVolume: ____, ...less } = driver!;
    const loud = { ...less, sensitivity: '88 dB', sensitivityAt: '2.83 V', nominalImpedance: '6 Ω' };
    const from = (drivers: readonly object[]) => {
      const read = readBrief({ ...brief, drivers }, standard, standardModels);
      return (workOf({ ...design, drivers: { ...design.drivers, index: 0 } }, read) as Work).drivers.data!;
    };
    const row = (rows: ReturnType<typeof from>, start: string) => rows.find(([what]) => what.startsWith(start))!;
    const assumed = from([loud]);
    expect(row(assumed, 'Vas,')[2]).toMatch(/^assumed, from the sensitivity: between [\d.]+ L and [\d.]+ L$/);
    expect(row(assumed, 'Re,').slice(1)).toEqual([
      expect.stringMatching(/^4\.8/),
      expect.stringMatching(/^assumed, from the nominal impedance/),
    ]);
    expect(row(assumed, 'Le,')[2]).toMatch(/^assumed/);
    expect(row(assumed, 'volume that it takes up')[2]).toMatch(/^assumed/);
    // A mass that is 3 % off what fs and Vas lead to is told beside it.
    const off = row(from([{ ...driver, Mms: '100 g' }]), 'Mms,');
    expect(off[1]).toBe('100 g');
    expect(off[2]).toMatch(/^the brief; what else it tells leads to 97\.\d+ g, and that is used$/);
  });
});

describe('the high-pass', () => {
  test('is bought, set by a table and a step, and keeps the cone within its travel at the most that the amplifier gives', async () => {
    const { section, page } = await pages;
    const play = section('Play it');
    const [, order, corner] = /high-pass, Butterworth, order (\d) .*?<td>corner<\/td><td>([\d.]+) Hz/
      .exec(play)!
      .map(Number) as [number, number, number];
    expect(section('Buy')).toContain(`a Butterworth of order ${order} at ${corner.toFixed(1)} Hz`);
    expect(play).toMatch(/<ol class="steps">.*Set it as the table tells/);
    expect(page.indexOf('<h2>Measure')).toBeLessThan(page.indexOf('<h2>Play it'));
    // Its sections pass together what a Butterworth passes at its corner: half of the power.
    const sections = [.../second order, Q ([\d. and]+), each/.exec(play)![1]!.matchAll(/[\d.]+/g)].map(Number);
    expect(sections).toHaveLength(Math.floor(order / 2));
    expect(sections.reduce((product, Q) => product * Q, 1)).toBeCloseTo(Math.SQRT1_2, 2);
    // By the curves of the design: too far without it, and nowhere with it.
    const { frequencies, displacementPeak, driveVoltageRms } = design.curves;
    const times = design.amplifier.voltage / driveVoltageRms;
    const passed = (f: number) => 1 / Math.sqrt(1 + (corner / f) ** (2 * order));
    const travel = frequencies.map((f, i) => [f, times * displacementPeak[i]!] as const);
    expect(travel.some(([, way]) => way > design.drivers.Xmax)).toBe(true);
    for (const [f, way] of travel) expect(way * passed(f)).toBeLessThanOrEqual(1.002 * design.drivers.Xmax);
    // The lowest safe tone of the table is where those without it begin.
    const safe = Number(/from ([\d.]+) Hz up; behind/.exec(play)![1]);
    for (const [f, way] of travel) if (f > safe + 0.1) expect(way).toBeLessThanOrEqual(1.002 * design.drivers.Xmax);
    expect(travel.some(([f, way]) => f < safe && way > design.drivers.Xmax)).toBe(true);
  });

  test('one that is there already is not bought again, and its step says that the pages count on it', async () => {
    const filter = { order: 2, corner: '22 Hz', Q: 0.71 };
    const filtered = { ...brief, amplifier: { ...brief.amplifier, filter } };
    const { page, section } = await built(workFor(filtered, bestOf(filtered)));
    expect(section('Buy')).not.toContain('high-pass');
    expect(section('Play it')).toContain('there already');
    expect(page).toContain('See that it is on and set so');
  });
});

test('every voltage that is told stands in the table of drives, with what it is', async () => {
  const { section, rows } = await pages;
  const drives = rows.filter(([first = '', , third = '']) => /^[\d.]+ V$/.test(first) && third !== '');
  expect(drives.map(([, what]) => what)).toEqual([
    'gives the wanted level where the response is flat',
    expect.stringContaining('gives the wanted level at 30 Hz'),
    'the most that the amplifier gives',
  ]);
  const table = drives.map(([voltage]) => voltage);
  const told = [...section('Play it').matchAll(/([\d.]+ V) rms/g)].map(([, voltage]) => voltage!);
  expect(told.length).toBeGreaterThan(0);
  for (const voltage of told) expect(table).toContain(voltage);
});

test('the head of the pages says so where the vent may be heard at the wanted level, and is silent where it is quiet', async () => {
  const head = (page: string) => page.slice(page.indexOf('<h1>'), page.indexOf('<figure>'));
  const { page, rows } = await pages;
  const quiet = rows.find(([what]) => what?.startsWith('quiet up to'))![1]!;
  const soft = { ...brief, wanted: { ...brief.wanted, level: '84 dB' } };
  expect(Number.parseFloat(quiet)).toBeLessThan(92);
  expect(head(page)).toContain(`At the wanted level the vent may be heard: it is quiet up to ${quiet} only.`);
  expect(head((await built(workFor(soft, bestOf(soft)))).page)).not.toContain('may be heard');
});

test('the steps can be followed in their order', async () => {
  const { section } = await pages;
  const steps = section('Put it together');
  const order = [
    'Cut the holes before gluing',
    'the frame of the driver is its own template',
    'Glue all panels but the back',
    'draw a pencil line',
    'glued together with the line unbroken',
    'Glue the back on',
    'Join a cable to the terminals',
    'Check the poles',
    'Fit the driver with a soft gasket',
    'Look for leaks',
    'Measure the resistance',
  ].map((words) => steps.indexOf(words));
  expect(order.every((at) => at > 0)).toBe(true);
  expect(order).toEqual([...order].sort((a, b) => a - b));
});
