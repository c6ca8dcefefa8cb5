import { infiniteBaffle } from '@airspring/core/enclosure';
import { heatLimit, limitChanges, travelLimit, voltageLimit } from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import { checkIn } from '../../ledger/check.js';
import { paperAir } from '../enclosure/textbook.js';

const check = checkIn(paperAir);

/**
 * A driver in a wall: $|x| = e\,Bl\,C_{ms}/R_e \,/\, D$ and $|i| = e\,|N|/(R_e D)$ at u = f/fs, with
 * $D^2 = (1 - u^2)^2 + (u/Q_T)^2$ and $|N|^2 = (1 - u^2)^2 + (u/Q_m)^2$. Both are quadratics in u² where they meet a value.
 */
const [Sd, Mms, Cms, Rms, Re, Bl, Xmax, Pe] = [0.033, 0.086, 4e-4, 3.6, 5.6, 14.3, 0.008, 60];
const drivers = {
  Sd: si('coneArea', Sd),
  Mms: si('mass', Mms),
  Cms: si('compliance', Cms),
  Rms: si('mechanicalResistance', Rms),
  Re: si('resistance', Re),
  Bl: si('forceFactor', Bl),
  Xmax: si('displacementPeak', Xmax),
  Pe: si('power', Pe),
};
const ws = 1 / Math.sqrt(Mms * Cms);
const [Qm, QT] = [(ws * Mms) / Rms, (ws * Mms) / (Rms + Bl ** 2 / Re)];
/** Roots u of a u⁴ + b u² + c = 0, rising. */
const roots = (a: number, b: number, c: number) => {
  const half = Math.sqrt(b * b - 4 * a * c);
  return [(-b - half) / (2 * a), (-b + half) / (2 * a)]
    .filter((square) => square > 0)
    .map(Math.sqrt)
    .sort((x, y) => x - y);
};
/** Where e volts move the cone by Xmax: D² = (e Bl Cms √2/(Re Xmax))². */
const travelAt = (e: number) => roots(1, 1 / QT ** 2 - 2, 1 - ((e * Bl * Cms * Math.SQRT2) / (Re * Xmax)) ** 2);
/** Where e volts heat the coil by Pe: |N|²/D² = k, with k = Pe Re/e². */
const heatAt = (e: number) => {
  const k = (Pe * Re) / e ** 2;
  return roots(1 - k, 1 / Qm ** 2 - 2 - k * (1 / QT ** 2 - 2), 1 - k);
};
const inHertz = (u: number) => (u * ws) / (2 * Math.PI);
const changes = (volts: number) =>
  limitChanges(
    infiniteBaffle({ drivers }, paperAir),
    [...travelLimit(drivers), voltageLimit(si('voltageRms', volts)), ...heatLimit(drivers)],
    { from: '1 Hz', to: '2 kHz' },
  );

const volts = 19;
const expected = [travelAt(volts).at(-1)!, heatAt(volts).at(-1)!].map(inHertz);
check('limit.changes.frequency', {
  formula: 'limit/limitChanges',
  source: {
    key: 'small1972direct',
    locator: 'displacement and current of the circuit in an infinite baffle, solved for f',
  },
  status: 'derived',
  kind: 'standard',
  given: { voltage: { value: volts, unit: 'V' }, Xmax: { value: Xmax, unit: 'm' }, Pe: { value: Pe, unit: 'W' } },
  // Travel, then voltage, then heat.
  got: () => changes(volts).map(({ frequency }) => frequency),
  expected,
  unit: 'Hz',
  tolerance: { relative: 2e-14, why: 'roots in double precision' },
});
/** Travel and heat alone meet where |N|² = 2 Pe (Bl Cms/Xmax)²/Re; both then ask for √(Pe Re) D/|N|. */
const N2 = (2 * Pe * ((Bl * Cms) / Xmax) ** 2) / Re;
const meeting = roots(1, 1 / Qm ** 2 - 2, 1 - N2)[0]!;
const D2 = (1 - meeting ** 2) ** 2 + (meeting / QT) ** 2;
check('limit.changes.drive', {
  formula: 'limit/limitChanges',
  source: {
    key: 'small1972direct',
    locator: 'displacement and current of the circuit in an infinite baffle, both at a limit',
  },
  status: 'derived',
  kind: 'standard',
  given: { Xmax: { value: Xmax, unit: 'm' }, Pe: { value: Pe, unit: 'W' } },
  got: () => {
    const limits = [...travelLimit(drivers), ...heatLimit(drivers)];
    const found = limitChanges(infiniteBaffle({ drivers }, paperAir), limits, { from: '1 Hz', to: '2 kHz' });
    return found.flatMap(({ frequency, driveVoltageRms }) => [frequency, driveVoltageRms]);
  },
  expected: [inHertz(meeting), Math.sqrt((Pe * Re * D2) / N2)],
  unit: 'Hz, V',
  tolerance: { relative: 1e-12, why: 'slope of the drive at a root in double precision' },
});
