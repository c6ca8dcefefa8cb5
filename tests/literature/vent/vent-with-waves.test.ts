import { si } from '@airspring/core/quantity';
import { compileVentWithWaves } from '@airspring/core/vent';
import { checkIn } from '../../ledger/check.js';
import lines from '../enclosure/lines.json' with { type: 'json' };
import { tubeAir as air } from '../tube-air.js';

const check = checkIn(air);
const { lengths } = lines.vented;
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
