import { closedFamily, type Family } from '@airspring/core/enclosure';
import type { Law } from '@airspring/core/network';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import { expect, test } from 'vitest';
import { acousticsOf } from '../../../packages/airspring/src/kind/box-kind.js';
import { compileDemand, emptyDemand } from '../../../packages/airspring/src/search/demand.js';
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
  const out = emptyDemand();
  compileDemand(search.job, leaking)(point, out);
  const { lowest, highest, level } = search.job.wanted;
  const band = logarithmicGrid(si('frequency', lowest), si('frequency', highest), 2000);
  const { levelHalfSpace } = respond(leaking.system(point), band);
  const drive = 10 ** ((level - Math.min(...levelHalfSpace)) / 20);
  expect(Math.abs(out.voltage / drive - 1)).toBeLessThan(1e-3);
});
