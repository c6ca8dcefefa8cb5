import { completeDriver, group } from '@airspring/core/driver';
import { ventedBox } from '@airspring/core/enclosure';
import { airSpeedLimit, greatestLevel, travelLimit } from '@airspring/core/limit';
import { logarithmicGrid } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import { type Brief, reportText } from 'airspring';
import { describe, expect, test } from 'vitest';
import { bestOf, demo, metByWeights, possible } from '../../arbitrary/brief.js';

test('a closed box wins where the space is small and shallow, the band high and simplicity counts', () => {
  const brief: Brief = {
    ...demo,
    space: { width: '420 mm', height: '330 mm', depth: '190 mm', panelThickness: '15 mm' },
    wanted: { lowest: '58 Hz', highest: '120 Hz', level: '88 dB', fall: '6 dB' },
    weights: { deep: 0.2, loud: 0.2, small: 1, simple: 4 },
  };
  const first = bestOf(brief);
  expect(first?.kind).toBe('closed');
  expect(first?.vent).toBeUndefined();
  expect(first?.box.outer[2]).toBeLessThanOrEqual(0.19);
});

test('a closed box tells its resonance, its Qtc, and the wadding that it takes', () => {
  const answer = metByWeights({
    ...demo,
    box: { kinds: ['closed'], fillGain: 1.2 },
    wanted: { ...demo.wanted, lowest: '48 Hz' },
  });
  const text = reportText(answer).replaceAll(/\s+/g, ' ');
  const { netVolume } = answer.designs[0]!.box;
  expect(text).toMatch(/Its resonance in the box is \d+\.\d Hz, with Qtc 0\.\d\d\./);
  expect(text).toContain('1.2 times its volume of air');
  const [, least, greatest] = /here ([\d.]+) g to ([\d.]+) g/.exec(text) ?? [];
  // A custom of one or two digits gives no more than two.
  expect(Number(least)).toBe(Number((8 * netVolume * 1e3).toPrecision(2)));
  expect(Number(greatest)).toBe(Number((16 * netVolume * 1e3).toPrecision(2)));
});

test('a vented box wins where depth of sound counts', () => {
  const first = bestOf({ ...demo, weights: { deep: 4, loud: 1, small: 1, simple: 0.2 } });
  expect(first?.kind).toBe('vented');
});

test('two drivers are taken where one does not play loud enough, and one where it does and small counts', {
  timeout: 30_000,
}, () => {
  const brief: Brief = {
    ...demo,
    space: { width: '640 mm', height: '520 mm', depth: '560 mm', panelThickness: '18 mm' },
    drivers: [{ ...demo.drivers[0]!, wirings: [{}, { parallel: 2 }, { series: 2 }] }],
    vent: { airSpeed: '17 m/s', smallest: '60 mm', largest: '150 mm' },
    amplifier: { voltage: '40 V' },
    wanted: { lowest: '36 Hz', highest: '110 Hz', level: '104 dB', fall: '6 dB' },
    weights: { deep: 0, loud: 0, small: 4, simple: 0 },
  };
  expect(bestOf(brief).drivers.count).toBe(1);
  const loud = { ...brief, wanted: { ...brief.wanted, level: '113 dB' } };
  expect(bestOf(loud).drivers.count).toBe(2);
  expect(possible({ ...loud, drivers: [demo.drivers[0]!] })).toBe(false);
});

const found = completeDriver({
  fs: '24 Hz',
  Qts: 0.36,
  Qes: 0.4,
  Vas: '70 L',
  Sd: '330 cm²',
  Re: '5.6 Ω',
  Xmax: '9 mm',
});
if (!found.ok) throw new Error('not enough');
const box = (ventArea: `${number} cm²`) =>
  ventedBox({ drivers: group(found.driver), netVolume: '40 L', fb: '28 Hz', ventArea, QL: 7 });

test('the cone travels least at the tuning and runs away below it', () => {
  const { displacementPeak } = respond(box('50 cm²'), [14, 20, 28, 40], { driveVoltageRms: '20 V' });
  const [octaveBelow, below, atTuning, above] = displacementPeak as unknown as [number, number, number, number];
  expect(atTuning).toBeLessThan(above / 2);
  expect(below).toBeGreaterThan(1.5 * above);
  expect(octaveBelow).toBeGreaterThan(below);
  expect(octaveBelow).toBeGreaterThan(0.009);
  const band = logarithmicGrid(12, 100, 200);
  const most = greatestLevel(box('50 cm²'), travelLimit(found.driver), band);
  const worst = most.driveVoltageRms.indexOf(Math.min(...most.driveVoltageRms));
  expect(band[worst]).toBeLessThan(20);
});

test('at one level the air in the vent is the faster the lower the tone and the louder, and slower in a wider vent', () => {
  const speedAt = (area: `${number} cm²`, level: number) => {
    const f = logarithmicGrid(28, 110, 40);
    const { levelHalfSpace, airSpeedPeak } = respond(box(area), f);
    return Array.from(airSpeedPeak!, (speed, i) => speed * 10 ** ((level - levelHalfSpace[i]!) / 20));
  };
  const soft = speedAt('50 cm²', 90);
  soft.slice(1).forEach((speed, i) => expect(speed).toBeLessThan(soft[i]!));
  const loud = speedAt('50 cm²', 96);
  loud.forEach((speed, i) => expect(speed / soft[i]!).toBeCloseTo(10 ** (6 / 20), 12));
  speedAt('100 cm²', 90).forEach((speed, i) => expect(speed / soft[i]!).toBeCloseTo(0.5, 12));
  const quiet = (area: `${number} cm²`) => greatestLevel(box(area), [airSpeedLimit('12 m/s')], [30]).levelHalfSpace[0]!;
  expect(quiet('100 cm²') - quiet('50 cm²')).toBeCloseTo(20 * Math.log10(2), 9);
});

test('an isobaric pair needs room for its second driver and the chamber between', () => {
  const { wirings: _, displacedVolume: __, ...sheet } = demo.drivers[0]!;
  const pair = {
    ...sheet,
    displacedVolume: '1.6 L',
    wirings: [{ series: 2, isobaric: true }],
  } satisfies Brief['drivers'][number];
  const brief: Brief = {
    ...demo,
    drivers: [pair],
    wanted: { lowest: '36 Hz', highest: '110 Hz', level: '88 dB', fall: '6 dB' },
  };
  // Twice 118 mm stand in a depth of 420 mm, but not in 240 mm less two panels.
  expect(possible(brief)).toBe(true);
  expect(possible({ ...brief, space: { ...demo.space, width: '900 mm', depth: '240 mm' } })).toBe(false);
  const first = bestOf(brief);
  const { inner, netVolume } = first!.box;
  const tube =
    first!.vent === undefined ? 0 : (Math.PI / 4) * first!.vent.outerDiameter ** 2 * (first!.vent.length - 0.018);
  const chamber = (Math.PI / 4) * 0.232 ** 2 * 0.1;
  expect(inner[0] * inner[1] * inner[2] - netVolume).toBeCloseTo(0.0016 + chamber + tube + 0.0005, 7);
});

describe('a vent at its smallest', () => {
  const small = { deep: 0, loud: 0, small: 8, simple: 8 };
  const wanted = { ...demo.wanted, level: '70 dB' };
  const rows = (design: ReturnType<typeof bestOf>, path: string) =>
    design.margins.filter((margin) => margin.path === path).map(({ relative }) => relative > -0.005);

  test('is told as at its limit, round or a slot, and no other vent is', () => {
    const round = bestOf({ ...demo, wanted, box: { kinds: ['vented'] }, vent: { smallest: '70 mm' }, weights: small });
    expect(round.vent?.diameter).toBeCloseTo(0.07, 9);
    expect(rows(round, 'vent.smallest')).toEqual([true]);
    const slot = bestOf({
      ...demo,
      wanted,
      box: { kinds: ['slot-vented'] },
      vent: {},
      slot: { smallest: '20 mm' },
      weights: small,
    });
    expect(rows(slot, 'slot.smallest')).toEqual([true]);
    const wide = bestOf({ ...demo, box: { kinds: ['vented'] }, vent: { ...demo.vent, smallest: '30 mm' } });
    expect(wide.vent!.diameter).toBeGreaterThan(0.031);
    expect(rows(wide, 'vent.smallest')).toEqual([]);
  });
});

test('a brief without a printer leaves open how a tube is made', () => {
  const { printer, ...without } = { ...demo, box: { kinds: ['vented'] } } as Brief & { printer?: unknown };
  const said = (brief: unknown) => reportText(metByWeights(brief as Brief)).replaceAll(/\s+/g, ' ');
  expect(printer).toBeDefined();
  expect(said(without)).toMatch(
    /Print (each|the) tube in [^.]*(\d\.\d mm[^.]*)*; or make it of pipe with these diameters\./,
  );
  expect(said({ ...without, printer })).not.toContain('make it of pipe');
});
