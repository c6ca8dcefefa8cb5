import { closedFamily, type Family } from '@airspring/core/enclosure';
import type { Law } from '@airspring/core/network';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import { cutoff, referenceLevel, respond } from '@airspring/core/response';
import { expect, test } from 'vitest';
import { acousticsOf } from '../../../packages/airspring/src/kind/box-kind.js';
import { compileDemand } from '../../../packages/airspring/src/search/compiled-demand.js';
import { emptyDemand } from '../../../packages/airspring/src/search/demand.js';
import { demo, searchFor } from '../../arbitrary/brief.js';

test("all numbers of a stranger's element reach the search, not the first alone", () => {
  /** A wall that lets air through by K (jω)^n. */
  const wall: Law = {
    kind: 'law',
    name: 'wall',
    nodes: ['box', 'ground'],
    stands: 'admittance',
    parameters: ['K', 'n'],
    fill: (values, at, frequencies, { re, im }) => {
      const [K, n] = [values[at]!, values[at + 1]!];
      for (let i = 0; i < frequencies.length; i++) {
        const size = K * (2 * Math.PI * frequencies[i]!) ** n;
        re[i] = size * Math.cos((n * Math.PI) / 2);
        im[i] = size * Math.sin((n * Math.PI) / 2);
      }
    },
  };
  const family: Family<never> = {
    ...(closedFamily as never as Family<never>),
    topology: (spec) => {
      const { elements, ...rest } = closedFamily.topology(spec);
      return { elements: [...elements, wall], ...rest };
    },
    values: (spec, air, set) => {
      closedFamily.values(spec, air, set);
      set('wall', 3e-6, 0.5);
    },
  };
  const search = searchFor({ ...demo, box: { kinds: ['closed'] } });
  const variant = search.variants[0]!;
  const { sourceResistance } = search.job.amplifier;
  const { drivers } = variant.choice;
  const spec = ([netVolume]: readonly number[]) => ({ drivers, netVolume, fillGain: 1, sourceResistance }) as never;
  const leaking = { ...variant, ...acousticsOf(family, search.job, spec) };
  const point = [0.03];
  const out = emptyDemand(leaking);
  compileDemand(search.job, leaking)(point, out);
  const { lowest, highest, level } = search.job.wanted;
  const band = logarithmicGrid(si('frequency', lowest), si('frequency', highest), 2000);
  const { levelHalfSpace } = respond(leaking.system(point), band);
  const drive = 10 ** ((level - Math.min(...levelHalfSpace)) / 20);
  expect(Math.abs(out.voltage / drive - 1)).toBeLessThan(1e-3);
});

test('fall and rise count from the reference of each point, where it depends on what the search chooses', () => {
  const search = searchFor({ ...demo, box: { kinds: ['closed'] } });
  const plain = search.variants[0]!;
  const { sourceResistance } = search.job.amplifier;
  const { drivers } = plain.choice;
  /** A closed box whose cone is made heavier by a number of the search. */
  const spec = ([netVolume, added = 0]: readonly number[]) => ({
    drivers: { ...drivers, equivalent: { ...drivers.equivalent, Mms: si('mass', drivers.equivalent.Mms + added) } },
    netVolume,
    fillGain: 1,
    sourceResistance,
  });
  const family = {
    ...(closedFamily as never as Family<ReturnType<typeof spec>>),
    read: (read: ReturnType<typeof spec>) => read,
  };
  const weighted = {
    ...plain,
    acoustic: [{ name: 'added mass', from: 0.005, to: 0.1, ratio: 1.2, unit: 1e-3 }],
    ...acousticsOf(family, search.job, spec),
  };
  const demand = compileDemand(search.job, weighted);
  const out = emptyDemand(weighted);
  const { wanted } = search.job;
  const references = [0.005, 0.03, 0.1].map((added) => {
    const point = [0.02, added];
    const system = weighted.system(point);
    demand(point, out);
    const reference = referenceLevel(system);
    const found = cutoff(system, { drop: wanted.fall, to: si('frequency', wanted.highest) });
    expect(Math.abs(out.cutoff - (found.ok ? found.frequency : Number.NaN))).toBeLessThan(0.01);
    const band = logarithmicGrid(5, wanted.highest, 4000);
    const greatest = Math.max(...respond(system, band).levelHalfSpace);
    expect(Math.abs(out.rise - (greatest - reference))).toBeLessThan(0.01);
    return reference;
  });
  expect(references[0]! - references[2]!).toBeGreaterThan(3);
});

test.each(['vented', 'band-pass'])(
  'drivers of one name, and wirings of one driver, are sounds of their own: %s',
  (kind) => {
    const [driver] = demo.drivers;
    const stiffer = { ...driver!, fs: '34 Hz', Vas: '35 L', wirings: [{}, { parallel: 2 }, { series: 2 }] };
    const search = searchFor({ ...demo, drivers: [driver!, stiffer], box: { kinds: [kind] } } as never);
    const first = search.variants.filter(
      ({ choice }, i) => search.variants.findIndex((one) => one.choice === choice) === i,
    );
    const told = first.map((variant) => {
      const demand = emptyDemand(variant);
      search.demandOf(variant)([0.04, ...variant.acoustic.map(({ from, to }) => Math.sqrt(from * to)), 0.08], demand);
      return `${demand.travel} ${demand.voltage}`;
    });
    expect(new Set(told).size).toBe(4);
  },
);
