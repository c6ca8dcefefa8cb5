import type { Warning } from '@airspring/core/fault';
import type { Solid } from '@airspring/core/space';
import type { DesignVent, Hole, Panel } from '../kind/build-record.js';
import type { Meaning, Phrase } from '../kind/phrase.js';
import type { Brief } from '../kind/standard.js';
import type { Between, Uncertain } from './estimate.js';
import type { At, LoadTold } from './load.js';
import type { DriverVerdict } from './per-driver.js';

/** The answer to a brief: designs, or the reasons why there is none. Plain records in SI units that survive JSON. */
export type Answer = Met | NotMet;

/** Every wish is met. */
export interface Met {
  readonly ok: true;
  readonly version: 1;
  readonly title: string;
  readonly asked: Asked;
  readonly designs: readonly Design[];
  /** Where the brief offers several drivers: the best box of each, the best driver first. */
  readonly perDriver?: readonly DriverVerdict[];
  /** How each driver was completed from its data: which values were derived, and how far given values disagree. */
  readonly drivers: readonly DriverAccount[];
}

/** Not every wish can be met together. */
export interface NotMet {
  readonly ok: false;
  readonly version: 1;
  readonly title: string;
  /** The smallest set of wishes that contradict each other. Without any one of them, the others can be met. */
  readonly conflict: readonly { readonly path: string; readonly wish: string }[];
  readonly because: readonly string[];
  readonly nearest?: {
    readonly changes: readonly { readonly path: string; readonly from: string; readonly to: string }[];
    readonly brief: Brief;
    /** The answer to the changed brief. */
    readonly answer: Met;
  };
  readonly drivers: readonly DriverAccount[];
}

export interface DriverAccount {
  readonly name: string;
  readonly parameters: Readonly<Record<string, number>>;
  readonly derived: readonly { readonly field: string; readonly value: number; readonly by: string }[];
  readonly deviations: readonly {
    readonly field: string;
    readonly given: number;
    readonly implied: number;
    readonly relative: number;
  }[];
  readonly blocked: readonly string[];
  /** What was assumed because the sheet tells its sensitivity instead of Vas, and how its sensitivity agrees with the rest. */
  readonly assumed: readonly Phrase[];
}

/** A stretch of frequencies and the limit that binds there. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly binding: string;
}

export type { At, Between, DesignVent, DriverVerdict, Hole, LoadTold, Panel, Phrase, Uncertain };

/** The sentences that a kind adds to the report of a design. */
export interface Told {
  /** Stands in the first paragraph, after the size and the depth of the box. */
  readonly summary: Phrase;
  /** The entry in the overview, in few characters. */
  readonly brief: Phrase;
  /** What to make and where it goes, one paragraph for each part. */
  readonly building: readonly Phrase[];
  readonly playing: readonly Phrase[];
  /** What the dip between the impedance peaks tells, where there is one. */
  readonly dip?: string;
}

/** The limit that stops a box although its response goes deeper, and how far the wanted level would exceed it. */
export interface Below {
  readonly binding: string;
  /** The lowest frequency that the response alone would reach, Hz. */
  readonly frequency: number;
  /** The wanted level asks for this many times the limit at that frequency. */
  readonly times: number;
  /** The same as a quantity, such as an air speed, where the kind limits it. */
  readonly load?: { readonly value: number; readonly meaning: Meaning; readonly subject: string };
}

/** How near a design is to something that the brief limits. */
export interface Margin {
  readonly path: string;
  readonly what: string;
  /** The value of the design and the limit of the brief, each with its unit. */
  readonly value: string;
  readonly limit: string;
  readonly sense: 'at most' | 'at least';
  /** The share of the limit that is used, minus 1. Below 0 there is room left; at 0 the limit is reached. Levels and powers count as amplitudes. */
  readonly relative: number;
}

/** All columns of a design, for one drive. */
export interface Curves {
  readonly driveVoltageRms: number;
  readonly frequencies: readonly number[];
  readonly levelHalfSpace: readonly number[];
  readonly groupDelay: readonly number[];
  readonly displacementPeak: readonly number[];
  readonly airSpeedPeak?: readonly number[];
  readonly impedance: readonly number[];
  readonly impedancePhase: readonly number[];
  /** Greatest level of a steady sine at each frequency, and the limit that binds there. */
  readonly greatestLevel: readonly number[];
  readonly binding: readonly string[];
}

/** How far down a constant drive is safe for the cone, and what keeps the cone safe below that. */
export interface Guard {
  readonly driveVoltageRms: number;
  /** Below this frequency the drive exceeds the travel, Hz. Left out where it never does, and where it always does. */
  readonly lowestSafeFrequency?: number;
  /** Set when the drive exceeds the travel even at the highest tone that is heard. */
  readonly neverSafe?: true;
  /** The lowest safe frequency without the high-pass that is there already, where that high-pass makes every tone safe, Hz. */
  readonly lowestWithoutFilter?: number;
  /** The gentlest second-order Butterworth high-pass that keeps the cone within its travel; left out where none below the band does. */
  readonly highPass?: { readonly order: 2; readonly corner: number; readonly costAtLowest: number };
}

/** What the brief asks of the sound, in SI units. */
export interface Asked {
  readonly lowest: number;
  readonly highest: number;
  readonly level: number;
  /** How far the response may have fallen at `lowest`, dB. */
  readonly fall: number;
  readonly rise: number;
  /** From here upwards the limits are judged; left out where that is `lowest`. */
  readonly safeFrom?: number;
}

/** One box that meets the brief. */
export interface Design {
  /** A, B, C …: its name in reports and figures. */
  readonly name: string;
  /** What it is best at: 'balanced', 'deeper', 'louder', 'smaller' or 'simpler'. */
  readonly leaning: string;
  /** What it gains and loses against the first design, in words that follow from the numbers. */
  readonly words: readonly string[];
  /** The kind of box: its name, and its noun in a sentence. */
  readonly kind: string;
  readonly called: string;
  /** What the kind says about it: sentences as data, with quantities in SI units. */
  readonly told: Told;
  readonly drivers: {
    readonly name: string;
    /** Its place in the brief's list of drivers. */
    readonly index: number;
    readonly count: number;
    readonly series: number;
    readonly parallel: number;
    readonly isobaric: boolean;
    /** Greatest travel (one way, peak), m, and the power that one coil can turn into heat, W. */
    readonly Xmax: number;
    readonly Pe: number;
    /** Sizes of each driver. */
    readonly outerDiameter: number;
    readonly cutoutDiameter: number;
    /** Whether they stand so that the forces of their cones on the box cancel. */
    readonly forcesCancel: boolean;
  };
  readonly box: {
    readonly outer: readonly [width: number, height: number, depth: number];
    readonly inner: readonly [width: number, height: number, depth: number];
    readonly panelThickness: number;
    readonly outerVolume: number;
    readonly netVolume: number;
    readonly panels: readonly Panel[];
    readonly holes: readonly Hole[];
    /** What stands inside, and the air that must stay free in front of vents; measured from the left, bottom and front outer edges. */
    readonly solids: readonly Solid[];
    /** Distance from the cutouts of drivers and radiators to the nearest inner panel surface: the error that the saw may make, m. */
    readonly cutoutLeft: number;
  };
  readonly vent?: DesignVent;
  /** Numbers that belong to this kind of box, such as its tuning or its resonance. */
  readonly numbers: readonly { readonly what: string; readonly value: Phrase }[];
  /** What was assumed because the brief does not say it, each with its amount. */
  readonly assumed: readonly Phrase[];
  readonly response: {
    /** Half power below the reference, Hz. */
    readonly f3?: number;
    readonly f6?: number;
    readonly f10?: number;
    /** From here upwards the response stays within the wanted fall, Hz. */
    readonly cutoff: number;
    /** From here upwards every limit also holds at the wanted level: how deep the box plays, Hz. */
    readonly depth: number;
    /** What stops the box there, where its response goes deeper. */
    readonly below?: Below;
    readonly referenceLevel: number;
    readonly greatestRise: number;
    /** The same without the high-pass that is there already; left out where there is none. */
    readonly unfiltered?: { readonly f3?: number; readonly cutoff?: number };
  };
  readonly loudness: {
    /** The greatest level of a steady sine, at the frequency of the band where it is least, dB. */
    readonly level: number;
    readonly frequency: number;
    readonly binding: string;
    readonly stretches: readonly Stretch[];
    /** The names of limits as nouns: 'the first limit it reaches is …'. */
    readonly givesOut: Readonly<Record<string, string>>;
  };
  /** At the wanted level, each at its worst frequency of the band. */
  readonly atWantedLevel: {
    readonly driveVoltageRms: At;
    readonly currentRms: At;
    readonly displacementPeak: At;
    readonly heat: At;
    /** The drive as watts into the nominal load that the box is; left out where it is none. */
    readonly power?: At;
    readonly airSpeedPeak?: At;
    /** What the kind limits in addition: the air speed in a vent, the travel of a radiator. */
    readonly own?: { readonly what: string; readonly meaning: Meaning; readonly at: At; readonly limit: number };
  };
  /** For the drive that gives the wanted level where the response is flat, and for the greatest voltage of the amplifier. */
  readonly protection: Guard & {
    readonly atFullVoltage: Guard;
    /** Behind the high-pass that is there already: what the first of the two drives does below the band, at worst. */
    readonly below?: { readonly displacementPeak: At; readonly airSpeedPeak?: At };
  };
  /** What the amplifier can give, as voltage and current of a sine, rms; and as watts into a load where the brief says so. */
  readonly amplifier: {
    readonly voltage: number;
    readonly current?: number;
    readonly rated?: { readonly power: number; readonly into: number };
    /** The name of the high-pass that is there already. */
    readonly filter?: string;
  };
  readonly impedance: {
    readonly maxima: readonly At[];
    readonly minima: readonly At[];
    readonly least: At;
    /** What it is to the amplifier. */
    readonly load: LoadTold;
  };
  /** Set where the sheet of the driver does not tell Vas: the same box with the drivers at both ends of what is assumed. */
  readonly uncertain?: Uncertain;
  readonly points: number;
  readonly margins: readonly Margin[];
  readonly warnings: readonly (Warning | { readonly code: 'neglected'; readonly text: string })[];
  readonly cautions: readonly string[];
  readonly curves: Curves;
}
