import { group } from '@airspring/core/driver';
import { isInputError } from '@airspring/core/fault';
import { si } from '@airspring/core/quantity';
import { type Glance, glanceOf } from './account.js';
import type { Measurement } from './measured-driver.js';
import type { Readings } from './measured-readings.js';
import { valuesOf } from './measured-values.js';
import type { Standing } from './standing.js';
import { type State, soundingOf, tunedBy, ventOf } from './state.js';

/**
 * Where a number lies; without an end where the response has fallen too far at the end of the band. `corners` are the readings that give each end, in
 * SI units: where they are the true ones, the box has that number, and a brief with them tells it of the box as it stands.
 */
export interface Band {
  readonly from: number;
  readonly to?: number;
  readonly corners: { readonly from: Readings; readonly to: Readings };
}

/**
 * Where reach (Hz), greatest level (dB) and air speed at the wanted level (m/s) lie if every reading is off by at most what is
 * stated, all of them at once, and the box leaks as little or as much as its ranges count.
 */
export interface Bands {
  readonly reach: Band;
  readonly level: Band;
  readonly airSpeed?: Band;
}

/** For each reading, how far it is moved towards its low end, −1, or its high end, 1. */
type Moves = Readonly<Record<keyof Readings, number>>;

const names = [
  'lowerPeak',
  'dip',
  'upperPeak',
  'flankFrequency',
  'peakImpedance',
  'flankImpedance',
  'Re',
  'coneDiameter',
  'air',
  'leak',
] as const satisfies readonly (keyof Readings)[];
/** A number may be greatest at a leak between its ends. */
const LEAKS = [-1, -0.6, -0.3, 0, 1];
const still = Object.fromEntries(names.map((name) => [name, 0])) as Moves;

/** The readings, each moved a part of the way to one of its ends. */
const movedBy = ({ readings, ends }: Measurement, moves: Moves): Readings =>
  Object.fromEntries(
    names.map((name) => {
      const [read, end] = [readings[name], ends[name][moves[name] < 0 ? 0 : 1]];
      return [name, read + Math.abs(moves[name]) * (end - read)];
    }),
  ) as unknown as Readings;

/** What a state does if its readings are moved: drivers, air and the measured tuning follow. */
function glanceMoved(standing: Standing, state: State, measurement: Measurement, moves: Moves): Glance | undefined {
  const { job, panelThickness, vents } = standing;
  const { readings, shared, others } = measurement;
  const moved = movedBy(measurement, moves);
  const more = moved.air - readings.air;
  try {
    const { Mms, Cms, Rms, Bl, Re, Sd, fb, leak } = valuesOf(moved, shared, others, job.air);
    const own = {
      Mms: si('mass', Mms),
      Cms: si('compliance', Cms),
      Rms: si('mechanicalResistance', Rms),
      Bl: si('forceFactor', Bl),
      Re: si('resistance', Re),
      Sd: si('coneArea', Sd),
    };
    const { series, parallel, isobaric, driver } = state.drivers;
    const drivers = group({ ...driver, ...own }, { series, parallel, isobaric });
    const tuned = tunedBy(vents.map(ventOf), standing.airBeforeVents + more, panelThickness, job.air);
    if (!tuned.ok) return undefined;
    const corrected = { ...standing, tuningRatio: fb / tuned.fb, QL: 1 / leak };
    const after = { ...state, drivers, airBeforeVents: state.airBeforeVents + more };
    const sounding = soundingOf(corrected, after);
    return sounding.ok ? glanceOf(job, after, sounding) : undefined;
  } catch (error) {
    if (!isInputError(error)) throw error;
    return undefined;
  }
}

/**
 * The bands of a state. Each reading is moved alone to both its ends, which tells for each number the way in which it makes it
 * more. Then all are moved at once, each the way that makes the number most, and the way that makes it least. From the farthest
 * of what was found one reading after the other is moved to its other end, until none leads farther: another limit may bind in
 * a corner. This is a search, no proof: of 36 000 draws within the readings two lay outside, by 0.11 dB of level. `undefined` where readings that are all off together tell of no driver.
 */
export function bandsOf(standing: Standing, state: State, measurement: Measurement): Bands | undefined {
  const tried = new Map<string, { readonly moves: Moves; readonly glance: Glance | undefined }>();
  const at = (some: Partial<Moves>): Glance | undefined => {
    const moves = { ...still, ...some };
    const key = names.map((name) => moves[name]).join();
    const known = tried.get(key) ?? { moves, glance: glanceMoved(standing, state, measurement, moves) };
    tried.set(key, known);
    return known.glance;
  };
  const ends = (['reach', 'level', 'airSpeed'] as const).flatMap((of) =>
    ([-1, 1] as const).map((way) => ({ of, way })),
  );
  const rises = names.map((name) => [name, at({ [name]: -1 }), at({ [name]: 1 })] as const);
  for (const { of, way } of ends) {
    at(Object.fromEntries(rises.map(([name, low, high]) => [name, (high?.[of] ?? 0) < (low?.[of] ?? 0) ? -way : way])));
  }
  const farthest = ({ of, way }: (typeof ends)[number]) =>
    [...tried.values()].reduce((a, b) => (way * (b.glance?.[of] ?? Number.NaN) > way * (a.glance?.[of] ?? 0) ? b : a));
  for (const end of ends) {
    for (let from = farthest(end), before: typeof from | undefined; from !== before; from = farthest(end)) {
      before = from;
      for (const name of names) {
        const moves = name === 'leak' ? LEAKS : [from.moves[name] > 0 ? -1 : 1];
        for (const move of moves) at({ ...from.moves, [name]: move });
      }
    }
  }
  if ([...tried.values()].some(({ glance }) => glance === undefined)) return undefined;
  const band = (name: keyof Glance): Band => {
    const [low, high] = ends.filter(({ of }) => of === name).map(farthest) as [
      ReturnType<typeof farthest>,
      ReturnType<typeof farthest>,
    ];
    const [from, to] = [low.glance![name], high.glance![name]];
    const corner = ({ moves }: typeof low): Readings => {
      const moved = movedBy(measurement, moves);
      // A high peak leaves less leak than was asked for.
      return { ...moved, leak: valuesOf(moved, measurement.shared, measurement.others, standing.job.air).leak };
    };
    const corners = { from: corner(low), to: corner(high) };
    return { from, ...(Number.isFinite(to) && { to }), corners };
  };
  return { reach: band('reach'), level: band('level'), ...(state.vents.length > 0 && { airSpeed: band('airSpeed') }) };
}
