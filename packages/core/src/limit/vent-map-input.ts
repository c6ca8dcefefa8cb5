import type { System } from '../enclosure/index.js';
import { type Fault, refuse } from '../fault/index.js';
import { unlessRising } from '../numeric/refusal.js';
import {
  anySign,
  type Field,
  type Frequency,
  type FrequencyInput,
  given,
  type Kind,
  type LengthInput,
  type LevelInput,
  nested,
  notNegative,
  optional,
  positive,
  type Quantity,
  readFields,
  readInto,
  type SpeedInput,
  type Volume,
  type VolumeInput,
} from '../quantity/index.js';
import { judgeSpace, spaceShape } from '../space/fit-input.js';
import type { SpaceInput } from '../space/index.js';
import type { NoiseOnset } from '../vent/index.js';

/** What a map of vents is drawn for. */
export interface VentMapInput {
  /**
   * The box with a vent at a net volume and a tuning, always with the same parts. Its vent needs an area, and any will do: the map
   * finds its own. The air is that of the box.
   */
  readonly box: (netVolume: Volume, fb: Frequency) => System;
  /**
   * Which vent is mapped of a box that has several, by its name, such as 'front'. The others stay as `box` makes them; volume and
   * tuning, `space` and `displaced` are then those of the chamber with this vent.
   */
  readonly vent?: string | undefined;
  readonly netVolumes: readonly VolumeInput[];
  readonly tunings: readonly FrequencyInput[];
  /** The level that is to be played at every frequency of a band, at 1 m in half space. */
  readonly level: LevelInput;
  readonly from: FrequencyInput;
  readonly to: FrequencyInput;
  /** Onsets of noise that the vent must stay below, such as `noiseOnsets` of `vent` for a quiet one. */
  readonly onsets?: readonly NoiseOnset[] | undefined;
  /** Greatest peak of the mean air speed in the vent. A map needs this, or onsets, or both. */
  readonly airSpeedPeak?: SpeedInput | undefined;
  /** The space, panels, drivers and rules. Each box has the proportions of `outer` and must not be larger. */
  readonly space: SpaceInput;
  /** What drivers and bracing take from the air. */
  readonly displaced: VolumeInput;
  /** Thickness of the wall of the tube. */
  readonly wall: LengthInput;
}

/** A list of quantities above zero, at least one. */
const several = <K extends Kind>(kind: K): Field<readonly Quantity<K>[]> => ({
  optional: false,
  read: (faults, value, path) => {
    const list = Array.isArray(value) || ArrayBuffer.isView(value) ? Array.from(value as ArrayLike<unknown>) : [];
    if (list.length > 0) return list.map((one, i) => readInto(faults, kind, one, `${path}[${i}]`) as Quantity<K>);
    faults.push({ code: 'empty', path, got: value, expected: 'a list of at least one', remedy: 'Give a list.' });
    return undefined;
  },
});

const maker: Field<VentMapInput['box']> = {
  optional: false,
  read: (faults, value, path) => {
    if (typeof value === 'function') return value as VentMapInput['box'];
    const expected = 'a function that makes a box of a net volume and a tuning';
    faults.push({ code: 'inconsistent', path, got: value, expected, remedy: 'Give the function, not a box.' });
    return undefined;
  },
};

const shape = {
  box: maker,
  vent: optional(given<string>()),
  netVolumes: several('volume'),
  tunings: several('frequency'),
  level: anySign('level'),
  from: positive('frequency'),
  to: positive('frequency'),
  onsets: optional(given<readonly NoiseOnset[]>()),
  airSpeedPeak: optional(positive('speed')),
  space: nested(spaceShape),
  displaced: notNegative('volume'),
  wall: notNegative('length'),
};

/** An air speed as one more onset. */
const noFasterThan = (airSpeedPeak: number): NoiseOnset => ({
  name: 'air speed',
  basis: 'stated',
  sources: [],
  at: () => ({ airSpeedPeak }),
});

const nothingToKeep = (got: unknown): Fault => ({
  code: 'empty',
  path: 'map.onsets',
  got,
  expected: 'onsets of noise, or an airSpeedPeak',
  remedy: 'Give onsets: noiseOnsets for a quiet vent, or the air speed that it may have.',
});

/** A map that was asked for, read, with everything that its vents must stay below. */
export function readVentMap(input: VentMapInput) {
  const { onsets, airSpeedPeak, ...read } = readFields('map', input, shape);
  const below = [...(onsets ?? []), ...(airSpeedPeak === undefined ? [] : [noFasterThan(airSpeedPeak)])];
  refuse([
    ...unlessRising('map.to', read.from, read.to),
    ...judgeSpace(read.space, 'map.space'),
    ...(below.length > 0 ? [] : [nothingToKeep(onsets)]),
  ]);
  return { ...read, below };
}
