import { passiveRadiatorBox } from '@airspring/core/enclosure';
import {
  currentLimit,
  greatestLevel,
  heatLimit,
  radiatorTravelLimit,
  travelLimit,
  voltageLimit,
} from '@airspring/core/limit';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import { compiledSystem, probeColumns, probeNamed, respond } from '@airspring/core/response';
import { type Brief, design, type Met, reportText, sketchText } from 'airspring';
import { expect, test } from 'vitest';
import { briefFacts } from '../../../docs-site/src/brief-facts.js';
import { boxFigure } from '../../../docs-site/src/figures/box-drawing.js';
import { radiatorsOf } from '../../../packages/airspring/src/kind/radiator-fields.js';
import { compileDemand } from '../../../packages/airspring/src/search/compiled-demand.js';
import { emptyDemand } from '../../../packages/airspring/src/search/demand.js';
import { bestOf, demo, demoRadiator, metByWeights, searchFor } from '../../arbitrary/brief.js';

const radiator = { ...demoRadiator, faces: ['left', 'right'], greatestAddedMass: '200 g' } as const;
const brief = (more: Partial<typeof radiator> | object = {}): Brief =>
  ({ ...demo, box: { kinds: ['radiator'] }, radiators: [{ ...radiator, ...more }] }) as unknown as Brief;

const flat = (text: string) => text.replace(/\s+/g, ' ');
const addedMass = ({ numbers }: Met['designs'][number]): number =>
  (numbers.find(({ what }) => what.startsWith('mass added'))!.value[0] as readonly [number, string])[0];

const answer = metByWeights(brief(), 2);

test('radiators are searched with whole grams of added mass, and placed on the faces that they may have', () => {
  for (const one of answer.designs) {
    expect(one.kind).toBe('radiator');
    const grams = addedMass(one) * 1000;
    expect(grams).toBeCloseTo(Math.round(grams), 9);
    expect(grams).toBeLessThanOrEqual(200);
    const holes = one.box.holes.filter(({ what }) => what === 'radiator');
    expect(holes).toHaveLength(1);
    expect(['left', 'right']).toContain(holes[0]!.face);
    expect(holes[0]).toMatchObject({ form: 'circle', diameter: expect.closeTo(0.232, 12) });
  }
});

test('they are reported, with their mass, travel, notch and what was assumed', () => {
  const text = reportText(answer);
  for (const line of text.split('\n')) expect([...line].length).toBeLessThanOrEqual(80);
  const [first] = answer.designs;
  const grams = Math.round(addedMass(first!) * 1000);
  expect(flat(text)).toContain('is a passive-radiator box for one "ten-inch driver, invented"');
  expect(flat(text)).toContain(
    `by one passive radiator "ten-inch radiator, invented", with ${grams} g added to its cone.`,
  );
  expect(flat(text)).toMatch(/radiator (left|right) 232 mm/);
  expect(flat(text)).toMatch(/travel of the radiator, peak [\d.]+ mm [\d.]+ Hz 14 mm/);
  expect(flat(text)).toContain('The leaks of the box are assumed to have a QL of 7');
  expect(flat(text)).toContain('the radiator takes up 1.28 L');
  expect(flat(text)).toContain('The level has a notch at');
  expect(flat(text)).toContain('Every cutout for a driver or a radiator is at least');
  expect(text).not.toContain('cancel');
});

test('they are drawn where they stand', () => {
  const [first] = answer.designs;
  const hole = first!.box.holes.find(({ what }) => what === 'radiator')!;
  const drawing = boxFigure(first!, briefFacts(demo)).draw(640);
  const scale = Number(/M0 0H([\d.]+)/.exec(drawing)![1]) / first!.box.outer[0];
  const diameter = hole.face === 'right' ? `r="${((0.232 / 2) * scale).toFixed(1)}"` : `class="bore"`;
  expect(drawing).toContain(diameter);
  expect(sketchText(answer.designs)).toContain('Level at 1 m in half space');
});

test('what the search reads at any point is what the network of the box gives, to 1e-9', () => {
  const search = searchFor(brief({ counts: [2] }));
  const [variant] = search.variants;
  const [one] = radiatorsOf(search.job);
  const demandOf = compileDemand(search.job, variant!);
  const { drivers } = variant!.choice;
  for (const [netVolume, added] of [
    [0.02, 0],
    [0.04, 0.077],
    [0.07, 0.2],
  ] as const) {
    const demand = emptyDemand(variant!);
    demandOf([netVolume, one!.radiator.Mms + added], demand);
    const box = passiveRadiatorBox(
      {
        drivers,
        netVolume: si('volume', netVolume),
        radiator: one!.radiator,
        count: 2,
        addedMass: si('mass', added),
        QL: 7,
        sourceResistance: '0.1 Ω',
      },
      search.job.air,
    );
    const below = Float64Array.from({ length: 21 }, (_, i) => (30 / 4) * 4 ** (i / 20));
    const { levelHalfSpace } = respond(box, below);
    const { re, im } = probeNamed(probeColumns(compiledSystem(box), below), 'radiatorVelocity');
    below.forEach((f, i) => {
      const drive = 10 ** ((92 - levelHalfSpace[i]!) / 20);
      const travel = (Math.SQRT2 * drive * Math.hypot(re[i]!, im[i]!)) / (2 * Math.PI * f);
      expect(Math.abs(demand.loadsBelow[0]![i]! / travel - 1)).toBeLessThan(1e-9);
    });
  }
});

const tight = { ...brief({ Xmax: '3.5 mm' }), wanted: { ...demo.wanted, level: '93 dB' } } as Brief;

test('a design keeps every limit at each frequency that it claims, the travel of its radiators too', () => {
  const search = searchFor(tight);
  const [one] = radiatorsOf(search.job);
  const { drivers } = search.variants[0]!.choice;
  for (const found of metByWeights(tight, 2).designs) {
    const box = passiveRadiatorBox(
      {
        drivers,
        netVolume: si('volume', found.box.netVolume),
        radiator: one!.radiator,
        addedMass: si('mass', addedMass(found)),
        QL: 7,
        sourceResistance: '0.1 Ω',
      },
      search.job.air,
    );
    const limits = [
      ...travelLimit(drivers),
      ...heatLimit(drivers),
      ...radiatorTravelLimit(one!.radiator),
      voltageLimit('25 V'),
      currentLimit('6 A'),
    ];
    const { levelHalfSpace } = greatestLevel(box, limits, logarithmicGrid(found.response.depth, 120, 400));
    expect(Math.min(...levelHalfSpace)).toBeGreaterThan(93 - 0.02);
    const margin = found.margins.find(({ path }) => path === 'radiators[0].Xmax')!;
    expect(margin.relative).toBeLessThan(0.003);
  }
});

test('where the travel of the radiators decides, the report says so, and the level is what yields', () => {
  const first = bestOf(tight);
  expect(first!.loudness.stretches.map(({ binding }) => binding)).toContain('radiator travel');
  const loud = design({ ...tight, wanted: { ...demo.wanted, level: '99 dB' } });
  if (loud.ok) throw new Error('a radiator of 3.5 mm cannot do that');
  expect(loud.conflict.map(({ path }) => path)).toContain('wanted.level');
  expect(flat(reportText(loud))).toContain('the travel of the passive radiator (Xmax)');
});

test('a high-pass that is told protects the radiators as well', () => {
  const first = bestOf(brief());
  const { atFullVoltage } = first!.protection;
  const search = searchFor(brief());
  const [one] = radiatorsOf(search.job);
  const box = passiveRadiatorBox(
    {
      drivers: search.variants[0]!.choice.drivers,
      netVolume: si('volume', first!.box.netVolume),
      radiator: one!.radiator,
      addedMass: si('mass', addedMass(first!)),
      QL: 7,
      sourceResistance: '0.1 Ω',
    },
    search.job.air,
  );
  const grid = logarithmicGrid(2, 30, 300);
  const { re, im } = probeNamed(probeColumns(compiledSystem(box), grid), 'radiatorVelocity');
  const { corner, order } = atFullVoltage.highPass!;
  const peaks = grid.map((f, i) => {
    const passed = 1 / Math.sqrt(1 + (corner / f) ** (2 * order));
    return (25 * passed * Math.SQRT2 * Math.hypot(re[i]!, im[i]!)) / (2 * Math.PI * f);
  });
  expect(Math.max(...peaks)).toBeLessThanOrEqual(0.014 * 1.001);
});

test('a radiator that lies flat is told to hang by its weight', () => {
  const text = flat(reportText(metByWeights(brief({ faces: ['bottom'] }))));
  expect(text).toMatch(/A radiator in the top or the bottom panel sags by [\d.]+ mm under its own weight/);
});

test('without a stated mass a radiator bears as much as it weighs, and that is told with its amount', () => {
  const { greatestAddedMass: _, ...rest } = radiator;
  const text = flat(reportText(metByWeights({ ...brief(), radiators: [rest] } as unknown as Brief)));
  expect(text).toContain('the radiator can carry 123.1 g of added mass, as much as its own moving mass');
});

test('a misspelt name is the one fault: nothing that follows from it is told', () => {
  for (const [name, meant] of [
    ['Vass', 'Vas'],
    ['Qmss', 'Qms'],
  ] as const) {
    const { [meant]: value, ...rest } = radiator;
    try {
      design({ ...brief(), radiators: [{ ...rest, [name]: value }] });
      throw new Error('it was taken');
    } catch (error) {
      const { faults } = error as { faults: readonly { path: string; remedy: string }[] };
      expect(faults.map(({ path }) => path)).toEqual([`radiators[0].${name}`]);
      expect(faults[0]?.remedy).toBe(`Did you mean ${meant}?`);
    }
  }
});
