import type { System } from '@airspring/core/enclosure';
import {
  butterworthShape,
  compileFilter,
  type Filter,
  highPass,
  linkwitzRileyShape,
  lowPass,
} from '@airspring/core/filter';
import type { Limit } from '@airspring/core/limit';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import {
  bestDelay,
  type Delayed,
  joinMains,
  mainPressure,
  pressureZoneCorner,
  solidAngles,
  soundPressure,
} from '@airspring/core/room';
import type { Heard, Mains } from '../job/heard.js';
import { type Job, safeFromOf } from '../job/job.js';
import { isEndOfSearch, reachAt } from './behind-filter.js';
import { type GreatestAt, greatestAt } from './greatest-wanted.js';

/** How loud and how deep a box plays at a place. */
export interface PlayedAt {
  /** The greatest level of a steady sine, at the frequency of the band where it is least, dB. */
  readonly level: number;
  readonly frequency: number;
  readonly binding: string;
  /** From here to the end of the band the response stays within the wanted fall, Hz; left out where it has fallen at the end. */
  readonly cutoff?: number;
  /** Set where that is only the lowest frequency that was looked at. */
  readonly endOfSearch?: true;
}

/** A tone of the band, and what walls, room and distance change there, dB re 1 m in half space. */
export interface GainAt {
  readonly frequency: number;
  readonly gain: number;
}

/** How the box and the main speakers add at the listener, in a free field. */
export interface JoinedTold {
  readonly crossover: number;
  /** Where both are equally loud, Hz, and the phase of the box re the main speakers there, rad. */
  readonly crossing?: { readonly frequency: number; readonly phaseDifference: number };
  /** What adds best. */
  readonly best: Delayed;
  /** The shortfall of the sum if nothing is done, dB, as a mean over the octaves about the crossover. */
  readonly shortfallAsItIs: number;
}

/** How a box plays at the listener, beside 1 m in half space. */
export interface HeardTold {
  /** Where the wants of the brief are judged. */
  readonly wantedAt: '1 m' | 'listener';
  readonly distance: number;
  readonly walls: readonly number[];
  readonly listener: PlayedAt;
  readonly oneMetre: PlayedAt;
  /** At both ends of the band, and where they are least and greatest between. */
  readonly gains: readonly GainAt[];
  /** The same at the frequencies of the curves. */
  readonly gainOfCurves: readonly number[];
  /** The same where the walls reflect in step and the room adds nothing, dB. */
  readonly inStep: number;
  readonly room?: {
    readonly volume: number;
    readonly leakCorner?: number;
    /** Below it the even pressure of the room is the greater part, Hz. */
    readonly pressureBelow: number;
    readonly firstMode?: number;
  };
  readonly mains?: JoinedTold;
}

const HERE: Pick<Heard, 'gain' | 'inStep'> = { gain: ({ length }) => new Float64Array(length), inStep: 0 };

/** What a report tells of a box in its room. */
export function heardTold(
  { wanted, amplifier }: Job,
  heard: Heard,
  system: System,
  limits: readonly Limit[],
  { from, reference, curves }: { readonly from: number; readonly reference: number; readonly curves: Float64Array },
): HeardTold {
  const band = logarithmicGrid(safeFromOf(wanted), wanted.highest, 200);
  const at = (place: Pick<Heard, 'gain' | 'inStep'>): PlayedAt => {
    const { least }: GreatestAt = greatestAt(place, system, limits, band);
    const fallen = reference + place.inStep - wanted.fall;
    const cutoff = reachAt(place, system, amplifier.filter, [from, wanted.highest], fallen);
    if (cutoff === undefined) return { ...least };
    return { ...least, cutoff, ...(isEndOfSearch(cutoff, wanted) && { endOfSearch: true as const }) };
  };
  const { distance, walls, volume, leakCorner, firstMode, mains, inStep } = heard;
  return {
    wantedAt: heard.wanted ? 'listener' : '1 m',
    distance,
    walls,
    listener: at(heard),
    oneMetre: at(HERE),
    gains: gainsTold(band, heard.gain(band)),
    gainOfCurves: [...heard.gain(curves)],
    inStep,
    ...(volume !== undefined && {
      room: {
        volume,
        ...(leakCorner !== undefined && { leakCorner }),
        pressureBelow: pressureZoneCorner(
          {
            volume: si('volume', volume),
            distance: si('length', distance),
            solidAngle: spaceInStep(heard),
          },
          system.air,
        ),
        ...(firstMode !== undefined && { firstMode }),
      },
    }),
    ...(mains && { mains: joinedTold(mains, heard, system, amplifier.filter, reference) }),
  };
}

/** The solid angle that gives the level of walls that reflect in step, sr. */
const spaceInStep = ({ inStep, distance }: Heard): number => (solidAngles.halfSpace * 10 ** (-inStep / 20)) / distance;

/** Both ends, and the least and the greatest between them. */
function gainsTold(band: Float64Array, gains: Float64Array): GainAt[] {
  const places = [0, gains.indexOf(Math.min(...gains)), gains.indexOf(Math.max(...gains)), band.length - 1];
  return [...new Set(places)].sort((a, b) => a - b).map((i) => ({ frequency: band[i]!, gain: gains[i]! }));
}

/** Main speakers that are as loud at the listener as the box where its response is flat. */
function joinedTold(
  { crossover, distance, f3 }: Mains,
  heard: Heard,
  system: System,
  filter: Filter | undefined,
  reference: number,
): JoinedTold {
  const grid = logarithmicGrid(si('frequency', crossover / 4), si('frequency', crossover * 4), 193);
  const corner = si('frequency', crossover);
  const shape = linkwitzRileyShape(4);
  const asLoud = (metres: number) => si('level', heard.inStep + 20 * Math.log10(metres));
  const pressure = soundPressure(respond(system, grid));
  if (filter) compileFilter(filter)(grid, pressure);
  const input = {
    box: {
      pressure,
      filter: lowPass(shape, corner),
      distance: si('length', heard.distance),
      level: asLoud(heard.distance),
    },
    main: {
      pressure: mainPressure(
        { level: si('level', reference), highPass: highPass(butterworthShape(2), si('frequency', f3)) },
        grid,
      ),
      filter: highPass(shape, corner),
      distance: si('length', distance),
      level: asLoud(distance),
    },
  };
  const joined = joinMains(input, grid, system.air);
  const { crossing } = joined;
  const about = { from: si('frequency', crossover / 2), to: si('frequency', crossover * 2) };
  const { otherPolarity: _, ...best } = bestDelay(joined, about);
  const asItIs = bestDelay(joined, { ...about, most: si('time', NO_DELAY) });
  const normal = asItIs.polarity === 'normal' ? asItIs : asItIs.otherPolarity;
  return {
    crossover,
    ...(crossing && { crossing: { frequency: crossing.frequency, phaseDifference: crossing.phaseDifference } }),
    best,
    shortfallAsItIs: normal.shortfall,
  };
}

/** A delay that changes nothing, s. */
const NO_DELAY = 1e-9;
