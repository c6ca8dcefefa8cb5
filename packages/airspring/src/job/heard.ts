import type { Air } from '@airspring/core/air';
import { si } from '@airspring/core/quantity';
import { compilePressureZone, gainLevel, levelAtDistance, roomModes, solidAngles } from '@airspring/core/room';
import { nearWalls } from './near-walls.js';

/** Main speakers that the box joins. */
export interface Mains {
  readonly crossover: number;
  readonly distance: number;
  /** Where they have fallen by half the power by themselves, Hz. */
  readonly f3: number;
}

/** Where the box stands and how far the listener sits, in SI units. */
export interface HeardFrom {
  readonly distance: number;
  /** From the drivers to walls at right angles: the floor, a wall behind, a wall beside. */
  readonly walls: readonly number[];
  /** The air of a closed room; left out in the open. */
  readonly volume?: number;
  readonly size?: { readonly length: number; readonly width: number; readonly height: number };
  readonly leakCorner?: number;
  readonly mains?: Mains;
}

/** What walls, room and distance change in the level at 1 m in half space. */
export interface Heard extends HeardFrom {
  /** At each frequency, dB. */
  readonly gain: (frequencies: ArrayLike<number>) => Float64Array;
  /** The same where the walls reflect in step and the room adds nothing: what a response at the listener is counted from, dB. */
  readonly inStep: number;
  /** Of a room whose edges are known, Hz. */
  readonly firstMode?: number;
  /** Whether the wanted level and the response are judged at the listener. */
  readonly wanted: boolean;
}

const decibels = (square: number): number => 10 * Math.log10(square);

/** What walls, room and distance change. The even pressure of the room adds to the images by power, as `compileRoomGain` has it. */
export function heardOf(from: HeardFrom, wanted: boolean, air: Air): Heard {
  const { distance: metres, walls, volume, leakCorner, size } = from;
  const distance = si('length', metres);
  const inFreeAir = levelAtDistance({ level: si('level', 0), distance, solidAngle: solidAngles.fullSpace });
  const near = nearWalls(walls, metres);
  const inStep = inFreeAir + 20 * Math.log10(near.inStep);
  const toWaveNumber = (2 * Math.PI) / air.speedOfSound;
  const outside = (frequencies: ArrayLike<number>) =>
    Float64Array.from(frequencies, (f) => inFreeAir + decibels(near.meanSquare(toWaveNumber * f)));
  const zone =
    volume === undefined
      ? undefined
      : compilePressureZone(
          {
            volume: si('volume', volume),
            ...(leakCorner !== undefined && { leakCorner: si('frequency', leakCorner) }),
          },
          air,
        );
  const gain = (frequencies: ArrayLike<number>) => {
    const free = outside(frequencies);
    if (zone === undefined) return free;
    const even = gainLevel(zone, frequencies);
    return free.map((level, i) => decibels(10 ** (level / 10) + 10 ** (even[i]! / 10)));
  };
  return { ...from, gain, inStep, wanted, ...(size && { firstMode: firstModeOf(size, air) }) };
}

/** The lowest mode of a room: half a wave along its longest edge. */
function firstModeOf({ length, width, height }: NonNullable<HeardFrom['size']>, air: Air): number {
  const upTo = si('frequency', air.speedOfSound / Math.max(length, width, height));
  const edges = { length: si('length', length), width: si('length', width), height: si('length', height) };
  return roomModes({ ...edges, upTo }, air)[0]!.frequency;
}

const NOTHING = (frequencies: ArrayLike<number>): Float64Array => new Float64Array(frequencies.length);

/** What changes the level at 1 m in half space at the place where the brief states its wants; nothing where it states them there. */
export const wantedAt = (heard: Heard | undefined): Pick<Heard, 'gain' | 'inStep'> =>
  heard?.wanted ? heard : { gain: NOTHING, inStep: 0 };
