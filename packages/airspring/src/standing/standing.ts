import type { DriverGroup } from '@airspring/core/driver';
import type { Filter } from '@airspring/core/filter';
import type { Face } from '@airspring/core/space';
import type { Job } from '../job/job.js';
import type { Phrase } from '../kind/phrase.js';
import type { Kept } from './fields.js';
import type { Measurement } from './measured-driver.js';
import type { Tube } from './tube.js';

export type Edges = readonly [width: number, height: number, depth: number];

/** Edges that are all longer by the same length. */
export const longerBy = ([width, height, depth]: Edges, by: number): Edges => [width + by, height + by, depth + by];

/** Where the centre of something is: its face, and the point on the outer surface from the left, bottom, front outer edge, m. */
export interface Place {
  readonly face: Face;
  readonly centre: Edges;
}

/** A vent of the existing box. */
export interface StandingVent extends Tube {
  /** Its place in the brief's list of vents. */
  readonly index: number;
  /** Diameter of its hole; as wide as the tube if it was not measured. */
  readonly hole: number;
  readonly holeAssumed: boolean;
  readonly place?: Place;
}

/** A tube with one bend: straight from the outer surface of its panel, an elbow, and straight again, m. */
export interface Legs {
  readonly first: number;
  readonly arc: number;
  readonly second: number;
  readonly towards: Face;
}

/** The legs of the tube of one vent. */
export interface Bend extends Legs {
  readonly vent: number;
}

/** How long a tube may be behind its hole, from the outer surface of its panel, m. */
export interface Way {
  readonly straight: number;
  /** With one bend; never less than `straight`. Worked out when it is asked for. */
  readonly bent: () => number;
  /** How a tube of this length may bend, where places are known; `undefined` where it cannot. */
  readonly legs?: (length: number) => Legs | undefined;
  /**
   * Whether places of drivers and hole are known. Where they are not, this is the way in the best of all places: what is
   * longer does not fit, and what is shorter has to be measured.
   */
  readonly certain: boolean;
}

/** The existing box, in SI units. */
export interface Standing {
  /** The brief; its space is the box itself. */
  readonly job: Job;
  readonly drivers: DriverGroup;
  /** Left out if only the air is known. */
  readonly inner?: Edges;
  readonly panelThickness: number;
  /** Air with the drivers in place, before the vents take up theirs, m³. */
  readonly airBeforeVents: number;
  /** What was assumed about the air that the drivers take; empty where it was told, or does not count. */
  readonly contentsAssumed: readonly Phrase[];
  readonly vents: readonly StandingVent[];
  /** Its vents as they stand, whatever changes are planned: these holes are there to be closed. */
  readonly ventsNow: readonly StandingVent[];
  /** Vents that were closed with a plug: their tubes still stand in the way. */
  readonly plugged?: readonly StandingVent[];
  /** One for each front; left out if the brief does not give them. */
  readonly driverPlaces?: readonly Place[];
  /** The tuning as it was measured and as it is computed, Hz; left out where none was measured. */
  readonly tuning?: {
    readonly measured: number;
    readonly computed: number;
    /** What two measured peaks and the fs of a sheet say. */
    readonly byPeaks?: number;
  };
  /** The air that the sizes of the box leave, where the brief tells the air as well, m³. */
  readonly airOfSizes?: number;
  /** The measured tuning over the computed one; 1 where none was measured. */
  readonly tuningRatio: number;
  readonly keep: ReadonlySet<Kept>;
  readonly workshop: {
    readonly holeSaws: readonly number[];
    readonly pipes: readonly { readonly inner: number; readonly outer: number }[];
    /** Infinite where no printer is stated. */
    readonly printer: { readonly height: number; readonly width: number };
    /** That of the printer, or the usual one. */
    readonly nozzle: number;
  };
  /** Ways behind holes that were worked out already. */
  readonly ways: Map<string, Way>;
  /** In front of the amplifier. */
  readonly filter?: Filter;
  /** Of its leaks, where that does not follow from the brief alone. */
  readonly QL?: number;
  /** Set where the drivers are known from the impedance of the box, not from a sheet. */
  readonly measurement?: Measurement;
  /** Greatest mean air speed in a vent, peak, m/s. */
  readonly airSpeedPeak: number;
  /** Whether vents must stay below every published onset of noise. */
  readonly quiet: boolean;
}

/** The vents beside one of them. */
export const othersOf = ({ vents }: Standing, vent: StandingVent): StandingVent[] =>
  vents.filter(({ index }) => index !== vent.index);

/** The box with one of its vents replaced. */
export const withVent = (standing: Standing, vent: StandingVent): Standing => ({
  ...standing,
  vents: standing.vents.map((one) => (one.index === vent.index ? vent : one)),
});
