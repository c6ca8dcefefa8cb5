/** How far a box with a coil is from its target: the level of its circuit, worked out apart in complex numbers. */
import { butterworth, solveAlignment } from '@airspring/core/alignment';
import { type VentedBoxSpec, ventedFamily } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { checkIn } from '../../ledger/check.js';
import { type Complex, over, product, sum } from '../complex.js';
import { paperAir, physical } from '../enclosure/textbook.js';

const check = checkIn(paperAir);

/** Level over its end far above, dB: f |U| by the circuit of a vented box with a leak and a coil. */
function level(spec: VentedBoxSpec, frequency: number): number {
  const { Sd, Mms, Cms, Rms, Re, Bl, Le = 0 } = spec.drivers.equivalent;
  const w = 2 * Math.PI * frequency;
  const [wb, Cab] = [2 * Math.PI * spec.fb, spec.netVolume / (paperAir.density * paperAir.speedOfSound ** 2)];
  const coil: Complex = [Re + spec.sourceResistance, w * Le];
  const compliance: Complex = [0, w * Cab];
  const box = over([1, 0], sum(compliance, [0, (-wb * wb * Cab) / w], [(wb * Cab) / (spec.QL ?? Infinity), 0]));
  const moving = sum([Rms, w * Mms - 1 / (w * Cms)], over([Bl * Bl, 0], coil), product([Sd * Sd, 0], box));
  const flow = product(over(over([Bl * Sd, 0], coil), moving), box, compliance);
  const far = (Bl * Sd) / (Mms * coil[0]);
  return 20 * Math.log10((w * Math.hypot(...flow)) / far);
}

const found = () => {
  const drivers = physical({ fs: 30, Qes: 0.35, Qms: 5, Vas: 0.06, Sd: 0.033, Re: 5.6 }, paperAir);
  const input = { drivers: { ...drivers, Le: si('inductance', 1.2e-3) }, QL: 7 };
  const one = solveAlignment(butterworth(4), ventedFamily, input, { air: paperAir, addResistance: true });
  if (!one.ok || one.deviation === undefined || one.frequency === undefined) throw new Error('no box');
  return { spec: one.system.spec, frequency: one.frequency, deviation: one.deviation };
};

const { spec, frequency } = found();
// The band goes from an octave below the target to two octaves above it.
const differences = Array.from({ length: 49 }, (_, i) => {
  const f = (frequency / 2) * 8 ** (i / 48);
  return level(spec, f) + 10 * Math.log10(1 + (frequency / f) ** 8);
});
check('alignment.deviation', {
  formula: 'alignment/solveAlignment',
  source: {
    key: 'small1973vented1',
    locator: 'circuit of the vented box, with the inductance of the coil; B4 response',
  },
  status: 'derived',
  kind: 'standard',
  given: { Le: { value: 1.2, unit: 'mH' }, QL: { value: 7, unit: '1' } },
  got: () => {
    const { rms, greatest, from, to } = found().deviation;
    return [rms, greatest, from, to];
  },
  expected: [
    Math.sqrt(differences.reduce((sum, value) => sum + value ** 2, 0) / 49),
    Math.max(...differences.map(Math.abs)),
    frequency / 2,
    4 * frequency,
  ],
  unit: 'dB, dB, Hz, Hz',
  tolerance: { relative: 1e-12, why: 'rounding of levels near 0 dB' },
});
