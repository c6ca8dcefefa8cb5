import { closedResonance, fourthOrderBandPass } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { passband, respond } from '@airspring/core/response';
import { tuning } from '@airspring/core/vent';
import { type Brief, design, type Met, printPage, reportText, sketchText, standard } from 'airspring';
import { describe, expect, test } from 'vitest';
import { briefFacts } from '../../../docs-site/src/brief-facts.js';
import { boxFigure } from '../../../docs-site/src/figures/box-drawing.js';
import thunder from '../../../packages/airspring/briefs/travelling-thunder.json' with { type: 'json' };
import { compileDemand } from '../../../packages/airspring/src/search/compiled-demand.js';
import { emptyDemand } from '../../../packages/airspring/src/search/demand.js';
import { bestOf, metByWeights, possible, searchFor } from '../../arbitrary/brief.js';

const brief = thunder as unknown as Brief;
const flat = (text: string) => text.replace(/\s+/g, ' ');
const answer = metByWeights(brief);
const first = answer.designs[0]!;
const search = searchFor({ ...brief, box: { kinds: ['band-pass'] } } as Brief);
const number = ({ numbers }: Met['designs'][number], what: string): number =>
  (numbers.find((one) => one.what.startsWith(what))!.value[0] as readonly [number, string])[0];

test('a weak amplifier, a narrow band and little room: no closed or vented box is loud enough, a band-pass is', () => {
  expect(answer.designs.map(({ kind }) => kind)).toContain('band-pass');
  expect(first.kind).toBe('band-pass');
  expect(possible({ ...brief, box: { kinds: ['closed', 'vented'] } } as Brief)).toBe(false);
});

describe('what is told of it is what core says of such a box', () => {
  const { job, variants } = search;
  const { drivers } = variants[0]!.choice;
  const vent = first.vent!;
  const [rear, front] = ['air of the closed', 'air of the vented'].map((what) => number(first, what)) as [
    number,
    number,
  ];
  const system = fourthOrderBandPass({
    drivers,
    rearVolume: si('volume', rear),
    frontVolume: si('volume', front),
    frontTuning: si('frequency', vent.fb),
    frontQL: 7,
    frontVentArea: si('area', (vent.count * Math.PI * vent.diameter ** 2) / 4),
    sourceResistance: '0.05 ohm',
  });
  test('the panels hold the air of both chambers, the partition, the driver, the brace and the tubes', () => {
    const [width, height, depth] = first.box.inner;
    const partition = first.box.panels.find(({ name }) => name.startsWith('partition'))!;
    const tubes = vent.count * (Math.PI / 4) * vent.outerDiameter ** 2 * (vent.length - 0.015);
    const held = rear + front + partition.length * partition.width * 0.015 + 1e-3 + 0.3e-3 + tubes;
    expect(held).toBeCloseTo(width * height * depth, 6);
    expect([partition.length, partition.width]).toEqual([depth, height].map((edge) => expect.closeTo(edge, 9)));
  });
  test('the vent tunes the front chamber', () => {
    const one = { diameter: si('length', vent.diameter), length: si('length', vent.length), wall: si('length', 3e-3) };
    const tuned = tuning({
      vent: { ...one, count: vent.count },
      netVolume: si('volume', front),
      panelThickness: '15 mm',
    });
    // Without what the vents of a row do to each other's ends.
    expect(tuned.ok && Math.abs(tuned.fb / vent.fb - 1)).toBeLessThan(vent.count > 1 ? 0.03 : 1e-3);
  });
  test('passband, resonance and level', () => {
    // Counted from the maximum of the band, as f3 is; beyond the band no end is told.
    const passed = passband(system, { to: si('frequency', job.wanted.highest) });
    expect(passed.ok && passed.lower).toBeCloseTo(number(first, 'half power below the maximum, lower'), 3);
    const ends = first.numbers.filter(({ what }) => what.startsWith('half power below the maximum'));
    expect(ends.length).toBe(passed.ok && passed.upper !== undefined ? 2 : 1);
    expect(first.response.f3).toBeCloseTo(number(first, 'half power below the maximum, lower'), 3);
    expect(first.response.reference).toBe('maximum');
    expect(closedResonance({ drivers, netVolume: si('volume', rear) }).fc).toBeCloseTo(number(first, 'resonance'), 6);
    const { wanted } = job;
    const band = [wanted.lowest, 70, wanted.highest];
    const { levelHalfSpace } = respond(system, band);
    for (const level of levelHalfSpace) {
      expect(level).toBeGreaterThan(first.response.referenceLevel - wanted.fall - 1e-6);
      expect(level).toBeLessThan(first.response.referenceLevel + 1e-6);
    }
  });
  test('the search counts reach from the maximum, and a band that ends too early is a miss', () => {
    const variant = variants[0]!;
    const demand = emptyDemand(variant);
    const point = [0.02, 70, 0.35, 0.08];
    compileDemand(job, variant)(point, demand);
    expect(demand.rise).toBeCloseTo(0, 9);
    expect(demand.cutoff).toBeLessThan(60);
    compileDemand({ ...job, wanted: { ...job.wanted, highest: 200 } }, variant)(point, demand);
    expect(demand.cutoff).toBe(400);
  });
});

test.each(['band-pass', 'parallel-band-pass', 'series-band-pass'])(
  'bracing in front of the cones is counted there: %s',
  { timeout: 60_000 },
  (kind) => {
    const braced = {
      ...brief,
      box: { kinds: [kind] },
      partition: { across: ['width'], frontBracing: '0.7 L' },
    } as Brief;
    const { job, variants } = searchFor(braced);
    const [variant] = variants;
    const [share, diameter] = [0.5, 0.05];
    const asked = [0.03, 65, ...(kind === 'band-pass' ? [] : [0.6]), share, diameter];
    const inner = [0.6, 0.28, 0.28] as const;
    const whole = inner.reduce((product, edge) => product * edge, 1);
    const point = variant!.settle(whole - variant!.contents, asked, inner)!;
    const t = job.space.panelThickness;
    const edges = inner.map((edge) => edge + 2 * t) as unknown as readonly [number, number, number];
    const placed = variant!.place(edges, point);
    if (!placed.ok) throw new Error('it stands');
    const { chambers = [], vent, vents, ...record } = variant!.record({ edges, point, fit: placed });
    const tubes = (of: NonNullable<typeof vent>) => (of.count * Math.PI * of.outerDiameter ** 2 * (of.length - t)) / 4;
    const area = inner[1] * inner[2];
    const held = [7e-4, 1e-3 + 0.3e-3];
    for (const [i, { from, to, netVolume }] of chambers.entries()) {
      const own = (vents ?? [vent!])[i];
      expect(netVolume).toBeCloseTo(area * (to - from) - held[i]! - (own ? tubes(own) : 0), 12);
    }
    expect(chambers.map(({ bracing }) => bracing)).toEqual([expect.closeTo(7e-4, 12), expect.closeTo(3e-4, 12)]);
    expect(JSON.stringify(record.assumed)).not.toContain('no bracing');
  },
);

describe('it can be built', () => {
  test('the driver stands in the partition, with room for its frame on one side and its magnet on the other', () => {
    const hole = first.box.holes.find(({ what }) => what === 'driver')!;
    expect(hole.board).toMatchObject({ name: 'partition' });
    expect(hole).toMatchObject({ form: 'circle', diameter: expect.closeTo(0.186, 12) });
    const [across, up] = hole.board!.size;
    for (const [at, size] of [
      [hole.across, across],
      [hole.up, up],
    ] as const) {
      // The frame, 210 mm wide, and 2 mm beside it.
      expect(Math.min(at, size - at)).toBeGreaterThanOrEqual(0.107 - 1e-9);
    }
    const behind = first.box.outer[0] - hole.board!.from[2] - 0.03;
    expect(behind).toBeGreaterThan(0.104 - 0.015);
    expect(hole.board!.from[2] - 0.015).toBeGreaterThan(0.018);
  });
  test('the report says how, in words that fit the page', () => {
    const text = reportText(answer);
    for (const line of text.split('\n')) expect([...line].length).toBeLessThanOrEqual(80);
    expect(flat(text)).toContain('is a band-pass box for one "eight-inch driver, invented"');
    expect(flat(text)).toMatch(/plays from a closed chamber of [\d.]+ L into a vented one of [\d.]+ L/);
    expect(flat(text)).toMatch(/driver partition 186 mm/);
    expect(flat(text)).toContain('where the response is greatest');
    // The partition of this box stands upright across its width, with the vented chamber on the left.
    expect(flat(text)).toContain('to the right of the inside of the left panel');
    expect(flat(text)).toContain('Screw on the left panel, which is the one opposite to the partition');
    expect(flat(text)).toContain('through a low-pass filter above its band');
    expect(flat(text)).toContain('that no bracing is in the vented chamber and that the frame');
    expect(sketchText(answer.designs)).toContain('Air speed in the vent');
  });
  test('the pages draw the partition', () => {
    const page = printPage(answer.title, answer.designs.slice(0, 1));
    expect(page).toContain('The partition, ');
    const drawing = String(boxFigure(first, briefFacts(brief)).draw(640));
    expect(drawing).not.toMatch(/NaN|undefined/);
    expect(drawing.match(/class="behind"/g)!.length).toBeGreaterThanOrEqual(3);
  });
});

describe('what a brief may say', () => {
  test.each(['width', 'depth'] as const)('the partition divides the %s', (edge) => {
    const { box } = bestOf({
      ...brief,
      box: { kinds: ['band-pass'] },
      partition: { across: [edge] },
    } as unknown as Brief);
    const face = { width: 'left', depth: 'front' }[edge];
    expect(box.holes.find(({ what }) => what === 'driver')!.face).toBe(face);
  });
  test('a vent that could open only through the partition is refused', () => {
    const wrong = { ...brief, vent: { faces: ['back'] }, partition: { across: ['depth'] } } as unknown as Brief;
    expect(() => design(wrong)).toThrow(/partition\.across/);
    // Left to itself, the partition divides the other edges.
    const turned = searchFor({ ...brief, vent: { faces: ['right'] } } as unknown as Brief);
    const divided = turned.variants.filter(({ kind }) => kind.name === 'band-pass').map(({ built }) => built);
    expect(new Set(divided)).toEqual(new Set(['height', 'depth']));
  });
  test('a partition is refused where no band-pass is tried', () => {
    const wrong = { ...brief, box: { kinds: ['vented'] }, partition: { across: ['width'] } } as unknown as Brief;
    expect(() => design(wrong)).toThrow(/partition: .*band-pass/);
    expect(standard.map(({ name }) => name)).toContain('band-pass');
  });
});
