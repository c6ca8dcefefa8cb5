import { standardAir } from '@airspring/core/air';
import { completeDriver } from '@airspring/core/driver';
import { aperiodicBox, closedBox, closedResonance } from '@airspring/core/enclosure';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import { cutoff, referenceLevel, respond } from '@airspring/core/response';
import { type Brief, design, reportText } from 'airspring';
import { describe, expect, test } from 'vitest';
import ghost from '../../../packages/airspring/briefs/ghost-train.json' with { type: 'json' };
import { compileDemand } from '../../../packages/airspring/src/search/compiled-demand.js';
import { emptyDemand } from '../../../packages/airspring/src/search/demand.js';
import { bestOf, metByWeights, possible, searchFor } from '../../arbitrary/brief.js';
import { pathsOf } from '../../refusal/faults.js';

const brief = ghost as unknown as Brief;
const flat = (text: string) => text.replace(/\s+/g, ' ');
const answer = metByWeights(brief, 2);
const t = 0.015;
const RESISTIVITY = 12_000;
const sheet = completeDriver({
  fs: '40 Hz',
  Qts: 0.75,
  Qes: 0.9,
  Vas: '30 L',
  Sd: '214 cm²',
  Re: '6 Ω',
  Le: '0.5 mH',
  Xmax: '5 mm',
});
if (!sheet.ok) throw new Error('the driver of the brief');
type Made = (typeof answer.designs)[number];
const numberOf = ({ numbers }: Made, what: string) =>
  (numbers.find((one) => one.what.startsWith(what))!.value[0] as readonly [number, string])[0];
const ventOf = ({ box }: Made) => {
  const hole = box.holes.find(({ what }) => what === 'vent')!;
  return hole.form === 'circle' ? hole : undefined;
};
const boxOf = (netVolume: number, resistance: number, diameter: number) =>
  aperiodicBox({
    drivers: sheet.driver,
    netVolume: si('volume', netVolume),
    ventResistance: si('acousticResistance', resistance),
    ventArea: si('area', (Math.PI / 4) * diameter ** 2),
    sourceResistance: '0.1 Ω',
  });

test('a driver with a weak magnet booms in every small box but in one with an aperiodic vent', () => {
  expect(new Set(answer.designs.map(({ kind }) => kind))).toEqual(new Set(['aperiodic']));
  const { aperiodic: _, ...rest } = ghost;
  expect(possible({ ...rest, box: { kinds: ['closed', 'vented', 'capacitor'] } } as unknown as Brief)).toBe(false);
});

test.each(answer.designs.map((one) => [one.name, one] as const))('design %s is what it tells', (_name, one) => {
  const { diameter } = ventOf(one)!;
  const resistance = numberOf(one, 'flow resistance');
  const area = (Math.PI / 4) * diameter ** 2;
  const thickness = (resistance * area) / RESISTIVITY;
  // Whole millimetres of felt, and a whole diameter.
  expect(Math.abs(thickness * 1e3 - Math.round(thickness * 1e3))).toBeLessThan(1e-6);
  expect(Math.abs(diameter * 1e3 - Math.round(diameter * 1e3))).toBeLessThan(1e-9);
  const [width, height, depth] = one.box.inner;
  const ring = (Math.PI / 4) * (diameter + 6e-3) ** 2 * Math.max(0, thickness - t);
  expect(one.box.netVolume).toBeCloseTo(width * height * depth - ring - 0.8e-3, 9);

  const system = boxOf(one.box.netVolume, resistance, diameter);
  const found = cutoff(system, { drop: 3, to: '200 Hz' });
  expect(found.ok && Math.abs(found.frequency - one.response.cutoff)).toBeLessThan(0.01);
  const band = logarithmicGrid(si('frequency', 16), si('frequency', 200), 1500);
  const { levelHalfSpace } = respond(system, band);
  const rise = Math.max(...levelHalfSpace) - referenceLevel(system);
  expect(rise).toBeLessThan(1 + 0.02);
  // With the vent shut, it booms.
  const shut = closedBox({ drivers: sheet.driver, netVolume: si('volume', one.box.netVolume) });
  expect(Math.max(...respond(shut, band).levelHalfSpace) - referenceLevel(shut)).toBeGreaterThan(2);

  const inBand = logarithmicGrid(si('frequency', 65), si('frequency', 200), 1500);
  const { airSpeedPeak, levelHalfSpace: levels } = respond(system, inBand, { driveVoltageRms: '1 V' });
  const speeds = airSpeedPeak!.map((speed, i) => speed * 10 ** ((88 - levels[i]!) / 20));
  expect(Math.max(...speeds)).toBeLessThan(0.5 * 1.001);
  expect(Math.abs(one.atWantedLevel.own!.at.value / Math.max(...speeds) - 1)).toBeLessThan(2e-3);

  // What the model leaves out is small, as it says: the mass of the air in the vent and beyond its ends.
  const { fc } = closedResonance({ drivers: sheet.driver, netVolume: si('volume', one.box.netVolume) });
  const mass = (standardAir.density * (thickness + 2 * 0.6133 * (diameter / 2))) / area;
  expect((2 * Math.PI * fc * mass) / resistance).toBeLessThan(0.34);
});

test('the demand of the search is that of the compiled system', () => {
  const search = searchFor({ ...brief, box: { kinds: ['aperiodic'] } });
  const demand = compileDemand(search.job, search.variants[0]!);
  for (const [netVolume, resistance, diameter] of [
    [0.012, 20_000, 0.15],
    [0.02, 60_000, 0.1],
    [0.03, 300_000, 0.05],
  ] as const) {
    const out = emptyDemand(search.variants[0]!);
    demand([netVolume, resistance, diameter], out);
    const system = boxOf(netVolume, resistance, diameter);
    const found = cutoff(system, { drop: 3, to: '200 Hz' });
    expect(found.ok && Math.abs(found.frequency - out.cutoff)).toBeLessThan(0.01);
    const band = logarithmicGrid(si('frequency', 65), si('frequency', 200), 2000);
    const { levelHalfSpace } = respond(system, band);
    expect(Math.abs(out.voltage / 10 ** ((88 - Math.min(...levelHalfSpace)) / 20) - 1)).toBeLessThan(1e-3);
  }
});

test('it is told with its felt, and with what is a rule of thumb', () => {
  const text = reportText(answer);
  for (const line of text.split('\n')) expect([...line].length).toBeLessThanOrEqual(80);
  expect(flat(text)).toContain('is a box with an aperiodic vent for one');
  expect(flat(text)).toMatch(/An aperiodic vent of \d+ mm, filled with felt or fibre \d+ mm thick, damps it/);
  expect(flat(text)).toContain('a flow resistivity of 12000 Pa·s/m²');
  expect(flat(text)).toContain('A limit on the air speed in it is a rule of thumb');
  expect(flat(text)).toMatch(/Up to [\d.]+ dB the vent is quiet: it stays below every one of them\./);
  expect(flat(text)).not.toContain('It is assumed that the felt');
  const silent = metByWeights({ ...ghost, aperiodic: { airSpeed: '0.5 m/s' } });
  expect(flat(reportText(silent))).toContain('It is assumed that the felt or fibre has a flow resistivity of 12000');
});

describe('what a brief may say', () => {
  const faultsOf = (aperiodic: object, kinds = ['aperiodic']) =>
    pathsOf(() => design({ ...ghost, box: { kinds }, aperiodic }));
  test.each([
    [{ flowResistivity: '12 Pa·s/m²' }, 'aperiodic.flowResistivity'],
    [{ flowResistivity: '12000 Pa·s/m³' }, 'aperiodic.flowResistivity'],
    [{ airSpeed: '0.5 m' }, 'aperiodic.airSpeed'],
    [{ smallest: '120 mm', largest: '60 mm' }, 'aperiodic.smallest'],
    [{ faces: [] }, 'aperiodic.faces'],
    [{ felt: '3 mm' }, 'aperiodic.felt'],
  ])('%j is refused at its path', (aperiodic, path) => expect(faultsOf(aperiodic)).toEqual([path]));
  test('its fields need its name', () => {
    expect(faultsOf({ airSpeed: '0.5 m/s' }, ['closed'])).toEqual(['aperiodic']);
  });
  test('the vent is on a face that the brief names', () => {
    const one = bestOf({ ...ghost, aperiodic: { ...ghost.aperiodic, faces: ['left', 'right'] } });
    expect(['left', 'right']).toContain(ventOf(one)!.face);
  });
});
