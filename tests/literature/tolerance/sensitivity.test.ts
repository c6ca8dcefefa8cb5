import { closedBox, type System } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { cutoffGradient } from '@airspring/core/response';
import { sensitivity } from '@airspring/core/tolerance';
import { checkIn } from '../../ledger/check.js';
import { paperAir, physical, split } from '../enclosure/textbook.js';

const check = checkIn(paperAir);

/**
 * f3 = fs r g(Qts r), r = √(1 + Vas/Vb), g² = a/2 + √(a²/4 + 1), a = 1/Q² − 2: by Vb, r falls by half the share of the air in
 * the stiffness, and ∂ln g/∂ln Q = −½(1 + a/√(a² + 4))/(g² Q²).
 */
const [fs, Vas] = [30, 0.06];
const rows = [
  { Qts: 0.3, Vb: 0.01 },
  { Qts: 0.38, Vb: 0.025 },
  { Qts: 0.55, Vb: 0.06 },
  { Qts: 0.7, Vb: 0.2 },
];
const slope = ({ Qts, Vb }: (typeof rows)[number]): number => {
  const r = Math.sqrt(1 + Vas / Vb);
  const Q = Qts * r;
  const a = 1 / Q ** 2 - 2;
  const root = Math.sqrt(a * a + 4);
  const g2 = (a + root) / 2;
  const byQ = -(1 + a / root) / (2 * g2 * Q ** 2);
  const byVolume = (-0.5 * Vas) / Vb / r ** 2;
  return (fs * r * Math.sqrt(g2) * byVolume * (1 + byQ)) / Vb;
};
check('tolerance.sensitivity', {
  formula: 'tolerance/sensitivity',
  source: { key: 'small1972closed1', locator: 'f3 of a closed box by Qtc and fc, differentiated by the volume' },
  status: 'derived',
  kind: 'example',
  given: { Qts: { value: rows.map(({ Qts }) => Qts), unit: '1' }, Vb: { value: rows.map(({ Vb }) => Vb), unit: 'm³' } },
  got: ({ Qts, Vb }) => {
    const drivers = physical({ fs, ...split(Qts), Vas, Sd: 0.033, Re: 5.6 }, paperAir);
    const make = ({ volume }: { volume: number }) =>
      closedBox({ drivers, netVolume: si('volume', volume) }, paperAir) as System;
    const found = sensitivity(make, { volume: Vb }, cutoffGradient);
    return found.ok ? (found.byInput.volume ?? Number.NaN) : Number.NaN;
  },
  expected: rows.map(slope),
  unit: 'Hz/m³',
  tolerance: { relative: 1e-9, why: 'the cut-off is found to a trillionth of it' },
});
