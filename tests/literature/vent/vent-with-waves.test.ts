import { si } from '@airspring/core/quantity';
import { compileVentWithWaves, type VentSection } from '@airspring/core/vent';
import { checkIn } from '../../ledger/check.js';
import lines from '../enclosure/lines.json' with { type: 'json' };
import { tubeAir as air } from '../tube-air.js';

const check = checkIn(air);
const { lengths, tubes } = lines.vented;
const end = (length: number) => Object.assign(() => length, { sources: ['here'] });

check('vent.with-waves.length', {
  formula: 'vent/compileVentWithWaves',
  source: {
    key: 'scipy',
    locator: 'solve_ivp along a lossless vent between masses, brentq for its length; script lines.py',
  },
  status: 'derived',
  kind: 'program',
  given: { case: { value: lengths.map((_, i) => i), unit: '' } },
  got: ({ case: i }) => {
    const { diameter, count, netVolume, fb, inner, outer } = lengths[i]!;
    const section = { diameter: si('length', diameter), count, innerEnd: end(inner), outerEnd: end(outer) };
    return compileVentWithWaves(section, air).length(netVolume, fb);
  },
  expected: lengths.map(({ length }) => length),
  unit: 'm',
  tolerance: { relative: 1e-12, why: 'the integration along the vent' },
});

const flaredBy = (radius: number, length: number) => {
  const one = end(length);
  return Object.assign(end(length), { flare: { radius, end: one } });
};
for (const [i, section] of [
  { diameter: '80 mm', count: 2, innerEnd: flaredBy(0.015, 0.03), outerEnd: flaredBy(0.01, 0.04) },
  { width: '300 mm', height: '20 mm', innerEnd: end(0.03), outerEnd: end(0.04) },
].entries())
  check(`vent.with-waves.tube.${i === 0 ? 'flared' : 'slot'}`, {
    formula: 'vent/compileVentWithWaves',
    source: {
      key: 'numpy',
      locator: 'circle of equal area, perimeter over its perimeter, flares as ends; script lines.py',
    },
    status: 'derived',
    kind: 'program',
    given: { length: { value: 0.25, unit: 'm' } },
    got: ({ length: asked }) => {
      const { tube, shortest } = compileVentWithWaves(section as VentSection, air);
      const { diameter, length, count, wallLoss, innerCorrection, outerCorrection } = tube(asked);
      return [diameter, length, count, wallLoss, innerCorrection, outerCorrection, shortest];
    },
    expected: tubes[i]!,
    unit: 'm or 1',
    tolerance: { absolute: 1e-14, why: 'double precision' },
  });
