import { standardAir } from '@airspring/core/air';
import { driver, driverParameters } from '@airspring/core/driver';
import {
  infiniteBaffle,
  openBaffle,
  type System,
} from '@airspring/core/enclosure';
import {
  type Frequency,
  format,
  type Length,
  logarithmicGrid,
  si,
} from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';

/** What may be changed. The driver is invented. */
export const inputs = {
  width: {
    kind: 'length',
    label: 'Width of the baffle',
    value: '60 cm',
    least: '25 cm',
    greatest: '240 cm',
    step: '1 cm',
  },
  tone: {
    kind: 'frequency',
    label: 'Lowest tone',
    value: '45 Hz',
    least: '25 Hz',
    greatest: '120 Hz',
    step: 1.01,
  },
  loss: {
    kind: 'level',
    label: 'Loss that is accepted',
    value: '6 dB',
    least: '0.5 dB',
    greatest: '15 dB',
    step: '0.1 dB',
  },
} as const;

interface Wish {
  readonly width: Length;
  readonly tone: Frequency;
  /** dB. */
  readonly loss: number;
}

export const drivers = driver({
  Sd: '520 cm²',
  Mms: '55 g',
  Cms: '0.46 mm/N',
  Rms: '3 kg/s',
  Re: '5.6 Ω',
  Bl: '8 T·m',
  Xmax: '6 mm',
});

const { speedOfSound } = standardAir;

/** The level at one metre for which the travel is told, dB. */
const LEVEL = 90;

/** From the middle of the board to its edge: the shortest way around it. */
export const pathOf = (width: number) => si('length', width / 2);

/** The width at which the two sides of the cone lose no more than `loss`. */
export const widthFor = ({ tone, loss }: Pick<Wish, 'tone' | 'loss'>) =>
  si(
    'length',
    ((2 * speedOfSound) / (Math.PI * tone)) *
      Math.asin(10 ** (-loss / 20) / 2),
  );

export const grid = logarithmicGrid(20, 300, 101);

export function solve({ width, tone }: Omit<Wish, 'loss'>) {
  const of = (system: System) => ({
    swept: respond(system, grid, { driveVoltageRms: '2.83 V' }),
    tone: respond(system, [tone], { driveVoltageRms: '2.83 V' }),
  });
  return {
    baffle: of(openBaffle({ drivers, path: pathOf(width) })),
    wall: of(infiniteBaffle({ drivers })),
  };
}

/** Peak travel for a level of 90 dB, m. */
export const travelFor = ({ levelHalfSpace, displacementPeak }: Swept) =>
  displacementPeak.map(
    (value, i) => value * 10 ** ((LEVEL - levelHalfSpace[i]!) / 20),
  );
type Swept = Pick<
  ReturnType<typeof respond>,
  'levelHalfSpace' | 'displacementPeak'
>;

export function answers(at: Wish, { baffle, wall } = solve(at)) {
  const lost = wall.tone.levelHalfSpace[0]! - baffle.tone.levelHalfSpace[0]!;
  const [moved, walled] = [baffle, wall].map(
    ({ tone }) => travelFor(tone)[0]! * 1e3,
  ) as [number, number];
  const Xmax = drivers.Xmax! * 1e3;
  const { fs, Qts } = driverParameters(drivers);
  return {
    lost: `${Math.abs(lost).toFixed(1)} dB ${lost < 0 ? 'louder' : 'softer'}`,
    needed: format('length', widthFor(at), 'm', 3),
    equal: format(
      'frequency',
      si('frequency', speedOfSound / (3 * at.width)),
      'Hz',
      3,
    ),
    valid: format(
      'frequency',
      si('frequency', speedOfSound / (2 * at.width)),
      'Hz',
      3,
    ),
    path: format('length', pathOf(at.width), 'cm'),
    level: `${LEVEL} dB`,
    moved: `${moved.toFixed(1)} mm`,
    walled: `${walled.toFixed(1)} mm`,
    Xmax: `${Xmax} mm`,
    enough: moved <= Xmax ? 'which it can' : 'which it cannot',
    most: `${(LEVEL + 20 * Math.log10(Xmax / moved)).toFixed(0)} dB`,
    fs: format('frequency', fs, 'Hz', 3),
    Qts: Qts.toFixed(2),
  };
}
