import { equivalentDriver, type LineBoxInput, type LineBoxSpec, lineBox, lineFamily } from '@airspring/core/enclosure';
import { frequencyGrid, si } from '@airspring/core/quantity';
import { compiledSystem, probeColumns } from '@airspring/core/response';
import { expect } from 'vitest';
import { withoutCoil } from '../../arbitrary/box.js';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { absurdLineBoxArbitrary, lineBoxArbitrary } from '../../arbitrary/line-box.js';
import { fc, test } from '../../arbitrary/property.js';
import { worst } from '../../circuit/compare.js';
import { allFinite, answered } from '../answered.js';

const grid = frequencyGrid(Array.from({ length: 24 }, (_, i) => 8 * 1.21 ** i));
const swept = (input: LineBoxInput | LineBoxSpec) => probeColumns(compiledSystem(lineBox(input)), grid);

test.prop([lineBoxArbitrary])('a spec is an input of its own family, and survives JSON', (input) => {
  const made = lineBox(input).spec;
  expect(lineFamily.read(made)).toEqual(made);
  const { spec, network } = lineBox({ ...input, drivers: withoutCoil(equivalentDriver(input.drivers)) });
  const again = lineBox(JSON.parse(JSON.stringify(spec)) as LineBoxSpec);
  expect(JSON.stringify(again.network)).toBe(JSON.stringify(network));
});

test.prop([lineBoxArbitrary, fc.double({ min: 0.1, max: 0.9, noNaN: true })], { numRuns: 20 })(
  'a uniform part that is written as two is the same',
  (input, share) => {
    const uniform = lineBox(input).spec.parts.map(({ length, area }) => ({ length, area }));
    const [first, ...others] = uniform as [(typeof uniform)[number], ...typeof uniform];
    const halves = [share, 1 - share].map((one) => ({ ...first, length: si('length', one * first.length) }));
    const parts = [...halves, ...others];
    const { opening, ...rest } = lineBox({ ...input, parts: uniform }).spec;
    const one = { ...rest, ...(opening && { opening }) };
    // The sum of the lengths is rounded.
    const last = parts.reduce((sum, { length }) => sum + length, 0);
    const inside = (at: number) => si('length', Math.min(at, last));
    const two = {
      ...one,
      parts,
      driverAt: inside(one.driverAt),
      ...(opening && { opening: { ...opening, at: inside(opening.at) } }),
    };
    const [a, b] = [swept(one), swept(two)];
    for (const name of ['radiatedFlow', 'coneVelocity', 'current'])
      expect(worst(a[name]!, b[name]!)).toBeLessThan(1e-7);
  },
);

test.prop([absurdLineBoxArbitrary], { numRuns: fuzzRuns })(
  'any accepted line is answered, or refused with words',
  (input) => {
    const columns = answered(() => swept(input));
    allFinite(columns);
  },
);
