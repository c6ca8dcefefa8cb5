import type { Warning } from '@airspring/core/fault';
import type { Solid } from '@airspring/core/space';
import type { DesignVent, Hole, Panel } from '../kind/build-record.js';
import type { Meaning, Phrase } from '../kind/phrase.js';
import type { Below, Curves, Guard, Margin, Stretch, Told } from './design-parts.js';
import type { Uncertain } from './estimate.js';
import type { At, LoadTold } from './load.js';
import type { ScatterTold } from './scatter.js';

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
    /** What f3, the cut-off and the rise are counted from, and its level for 1 V rms, dB. */
    readonly reference: 'asymptote' | 'maximum';
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
  /** What builds of it will scatter; set where it was asked for, and f3 is counted from the asymptote. */
  readonly scatter?: ScatterTold;
  readonly points: number;
  readonly margins: readonly Margin[];
  readonly warnings: readonly (Warning | { readonly code: 'neglected'; readonly text: string })[];
  readonly cautions: readonly string[];
  readonly curves: Curves;
}
