import type { Meaning } from '../kind/phrase.js';
import type { Below, Curves, Guard, Margin, Stretch, Told } from './design-parts.js';
import type { HeardTold } from './heard-told.js';
import type { At, LoadTold } from './load.js';
import type { MechanicalTold } from './mechanical.js';
import type { NonlinearTravel } from './nonlinear-travel.js';
import type { OpeningTold } from './vent-noise.js';

/** How a box plays, what limits it, and what it asks of the amplifier. */
export interface Played {
  readonly told: Pick<Told, 'playing' | 'dip'>;
  /** Greatest travel (one way, peak), m, and the power that one coil can turn into heat, W; left out where they are not known. */
  readonly drivers: { readonly Xmax?: number; readonly Pe?: number };
  readonly response: {
    /** Half power below the reference, Hz. */
    readonly f3?: number;
    readonly f6?: number;
    readonly f10?: number;
    /** From here upwards the response stays within the wanted fall, Hz. */
    readonly cutoff: number;
    /** Set where that is only the lowest frequency that was looked at. */
    readonly cutoffEndOfSearch?: true;
    /** From here upwards every limit also holds at the wanted level: how deep the box plays, Hz. */
    readonly depth: number;
    /** Set where that is only the lowest frequency that was looked at: it may play deeper. */
    readonly endOfSearch?: true;
    /** What stops the box there, where its response goes deeper. */
    readonly below?: Below;
    /** What f3, the cut-off and the rise are counted from, and its level for 1 V rms, dB. */
    readonly reference: 'asymptote' | 'maximum';
    readonly referenceLevel: number;
    readonly greatestRise: number;
    /** The same without the high-pass that is there already; left out where there is none. */
    readonly unfiltered?: { readonly f3?: number; readonly cutoff?: number; readonly endOfSearch?: true };
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
  /** How it plays at the listener, beside 1 m in half space; left out where the brief has no room. */
  readonly heard?: HeardTold;
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
  /** What is known of the noise of the vents, and how far the sound falls behind at the wanted level. Left out without a vent. */
  readonly opening?: OpeningTold & {
    /** The level that the brief wants, dB, to be compared with where its noise begins. */
    readonly wanted: number;
  };
  /** How near the cone comes to where it meets something hard; left out where that is not known. */
  readonly mechanical?: MechanicalTold;
  /** How far a driver travels whose force factor or stiffness depends on its travel; left out where no such curve is told. */
  readonly nonlinearTravel?: NonlinearTravel;
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
    /** Set where that high-pass is part of the design, and not there already. */
    readonly filterIsNew?: true;
  };
  readonly impedance: {
    readonly maxima: readonly At[];
    readonly minima: readonly At[];
    readonly least: At;
    /** What it is to the amplifier. */
    readonly load: LoadTold;
  };
  readonly margins: readonly Margin[];
  readonly cautions: readonly string[];
  readonly curves: Curves;
}
