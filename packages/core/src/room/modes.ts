import { type Air, readAir, standardAir } from '../air/index.js';
import { refuse } from '../fault/index.js';
import { type Frequency, type FrequencyInput, type LengthInput, positive, readFields, si } from '../quantity/index.js';

/** A rectangular room, and up to which frequency its modes are listed. */
export interface RoomModesInput {
  readonly length: LengthInput;
  readonly width: LengthInput;
  readonly height: LengthInput;
  readonly upTo: FrequencyInput;
}

/** One mode of a room. */
export interface RoomMode {
  /** Half waves along length, width and height. */
  readonly order: readonly [number, number, number];
  /** Between one pair of walls, between two pairs, or between all three. */
  readonly kind: 'axial' | 'tangential' | 'oblique';
  readonly frequency: Frequency;
}

const shape = {
  length: positive('length'),
  width: positive('length'),
  height: positive('length'),
  upTo: positive('frequency'),
};
const kinds = ['axial', 'tangential', 'oblique'] as const;
/** A mode at the very end of the band counts in spite of rounding. */
const ROUNDING = 1e-12;
/** The greatest number of modes that are looked at. */
const MOST = 2e5;

/**
 * The modes of a rectangular room with rigid walls, the lowest first.
 *
 * $$ f_{lmn} = \frac{c}{2}\sqrt{\left(\frac{l}{L}\right)^2 + \left(\frac{m}{W}\right)^2 + \left(\frac{n}{H}\right)^2} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $L, W, H$ | `length`, `width`, `height` | m | inner sizes |
 * | $l, m, n$ | `order` | 1 | half waves along each of them; not all zero |
 * | $c$ | `air` | m/s | speed of sound |
 *
 * The mode of order 0, 0, 0 is the even pressure of the whole room: see `compilePressureZone`.
 *
 * @validity rectangular rooms with heavy walls. A light wall, a door or a window lowers the modes that press on it
 * @neglects losses, furniture, openings
 * @returns modes up to and including `upTo`, in rising order
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `unknown-field`; `out-of-range` also for more than 200000 modes
 * @source morse1968 normal modes of a rectangular room
 * @example roomModes({ length: '5 m', width: '4 m', height: '2.5 m', upTo: '60 Hz' })[0] // 34.4 Hz, axial
 */
export function roomModes(input: RoomModesInput, air: Air = standardAir): readonly RoomMode[] {
  const { upTo, ...room } = readFields('', input, shape);
  const half = readAir(air).speedOfSound / 2;
  const edges = [room.length, room.width, room.height];
  const end = upTo * (1 + ROUNDING);
  const reach = edges.map((edge) => (end * edge) / half);
  const looked = reach.reduce((product, most) => product * (1 + Math.floor(most)), 1);
  if (looked > MOST) {
    const expected = `a frequency with at most ${MOST} modes below it`;
    refuse([{ code: 'out-of-range', path: 'upTo', got: upTo, expected, remedy: 'Lower it.' }]);
  }
  const modes: RoomMode[] = [];
  for (let l = 0; l <= reach[0]!; l++)
    for (let m = 0; m <= reach[1]!; m++)
      for (let n = 0; n <= reach[2]!; n++) {
        const frequency = half * Math.hypot(l / edges[0]!, m / edges[1]!, n / edges[2]!);
        const pairs = [l, m, n].filter((order) => order > 0).length;
        if (pairs === 0 || frequency > end) continue;
        modes.push({ order: [l, m, n], kind: kinds[pairs - 1]!, frequency: si('frequency', frequency) });
      }
  return modes.sort((a, b) => a.frequency - b.frequency);
}
