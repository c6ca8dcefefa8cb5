import type { Air } from '@airspring/core/air';
import type { Alignment } from '@airspring/core/alignment';
import type { CompletedDriver, DriverGroup } from '@airspring/core/driver';
import type { Filter } from '@airspring/core/filter';
import type { DisplacementPeak, Frequency, ThermalResistance, Time } from '@airspring/core/quantity';
import type { Face, ShapeChoice, SpaceShape } from '@airspring/core/space';
import type { AlignmentChoice } from './alignment-choice.js';
import type { Heard } from './heard.js';
import { volumesIn } from './space-shape.js';

/** A brief as it was written: texts with units, before anything was read. */
export type Written = Readonly<Record<string, unknown>>;

/** Where drivers or passive radiators stand: on which faces, and how they share them. */
export interface Seating {
  readonly faces: readonly Face[];
  readonly spread: 'one-face' | 'each-face' | 'opposed';
}

/** What was assumed of a driver whose sheet tells its sensitivity instead of Vas. */
export interface Estimated {
  readonly sensitivity: number;
  readonly sensitivityAt: '1 W' | '2.83 V';
  /** The sensitivity is taken to be right within this, dB. */
  readonly within: number;
  readonly Vas: { readonly value: number; readonly from: number; readonly to: number };
  /** Set where Re was assumed as well. */
  readonly Re?: { readonly value: number; readonly from: number; readonly to: number };
  /** The same drivers at both ends of what is assumed. */
  readonly ends: readonly { readonly completed: CompletedDriver; readonly drivers: DriverGroup }[];
}

/** A quantity of a driver over displacement, over its value at rest: coefficients of the first, second … power of x/reach. */
export interface CurveTold {
  readonly reach: DisplacementPeak;
  readonly coefficients: readonly number[];
}

/** What a driver does when it is played loud, as far as the brief tells it. */
export interface LargeSignal {
  readonly forceFactor?: CurveTold;
  readonly stiffness?: CurveTold;
  readonly inductance?: CurveTold;
  /** Where the cone meets something hard. */
  readonly Xmech?: DisplacementPeak;
  readonly heat?: {
    readonly coilToMagnet: ThermalResistance;
    readonly magnetToAir: ThermalResistance;
    readonly coilTime: Time;
    readonly magnetTime: Time;
  };
}

/** One of the drivers that the brief names, in one wiring. */
export interface DriverChoice {
  /** Place in the brief's list of drivers. */
  readonly driverIndex: number;
  readonly name: string;
  readonly completed: CompletedDriver;
  readonly drivers: DriverGroup;
  readonly seating: Seating;
  /** What a recess for the frames asks for: how much deeper the drivers stand, and how far their frames are from outer edges, m. */
  readonly recess?: { readonly depth: number; readonly edgeMargin: number };
  readonly largeSignal?: LargeSignal;
  /** The sensitivity of the sheet, and the one that its other data lead to, dB; left out where the sheet does not tell both. */
  readonly sensitivity?: { readonly given: number; readonly implied: number };
  /** Set where Vas was worked out from the sensitivity. */
  readonly estimated?: Estimated;
}

/** How much each of the four criteria counts that trade against each other. */
export interface Weights {
  readonly deep: number;
  readonly loud: number;
  readonly small: number;
  readonly simple: number;
}

/** The sound that the brief asks for, in SI units. */
export interface Asked {
  readonly lowest: number;
  readonly highest: number;
  readonly level: number;
  /** How far the response may have fallen at `lowest`, dB. */
  readonly fall: number;
  readonly rise: number;
  /** The limits are judged from this frequency upwards; left out if it is `lowest`. */
  readonly safeFrom?: number;
  /** Where level, fall and rise are wanted; at 1 m in half space unless it says otherwise. */
  readonly at?: '1 m' | 'listener';
}

/** A brief with every quantity in SI units, every default of all kinds of box filled in, and its drivers completed. */
export interface Job {
  readonly written: Written;
  readonly title: string;
  /** Each driver in each wiring; equal choices are listed once. */
  readonly choices: readonly DriverChoice[];
  readonly air: Air;
  readonly space: {
    readonly width: number;
    readonly height: number;
    readonly depth: number;
    /** Infinite where the brief states none. */
    readonly volume: number;
    /** The edges that must be as long as the space, not shorter. */
    readonly exactly: readonly ('width' | 'height' | 'depth')[];
    /** Where the space is no cuboid: its other edges are exact. */
    readonly shape?: SpaceShape;
    readonly panelThickness: number;
    readonly bracing: number;
    /** Clear space around each cutout, so that the basket still fits if the saw slips. */
    readonly cutoutPlay: number;
  };
  readonly wanted: Asked;
  /** Where the box is heard; left out where the brief has no room. */
  readonly heard?: Heard;
  readonly amplifier: {
    readonly voltage: number;
    /** Infinite where the brief states none. */
    readonly current: number;
    /** Where the brief tells watts into a load; voltage and current follow from it. */
    readonly rated?: { readonly power: number; readonly into: number };
    readonly sourceResistance: number;
    /** The least nominal load that it takes; left out where the brief states none. */
    readonly leastLoad?: number;
    /** Of a digital filter, Hz; left out where the brief states none. */
    readonly sampleRate?: Frequency;
    /** A high-pass that is there already. */
    readonly filter?: Filter;
  };
  /** Names of the kinds of box that may be tried. Default: every kind that was passed in, without those that must be named. */
  readonly kinds?: readonly string[];
  /** The alignments and the shapes that the brief may name. */
  readonly alignments: readonly AlignmentChoice[];
  readonly shapes: readonly ShapeChoice[];
  /** The alignment that every box must have; or 'compare', where the report says which of them each box comes near to. */
  readonly alignment?: Alignment | 'compare';
  /** Whatever else each section of the brief says, read into SI units, for the kind that owns the field. */
  readonly sections: Readonly<Record<string, Readonly<Record<string, unknown>>>>;
  readonly units: { readonly length: 'mm' | 'cm' | 'in'; readonly volume: 'L' | 'ft³' | 'in³' };
  readonly weights: Weights;
}

/** The outer volume that the space allows, m³. */
export const allowedVolume = ({ space }: Pick<Job, 'space'>): number =>
  Math.min(space.volume, volumesIn({ space }).outerIn(space.width * space.height * space.depth));

/** Least ratio of the end of a band to its beginning. */
export const SHORTEST_BAND = 1.2;

/** The frequency from which upwards every limit must hold at the wanted level, Hz. */
export const safeFromOf = ({ lowest, safeFrom = lowest }: Pick<Job['wanted'], 'lowest' | 'safeFrom'>): number =>
  safeFrom;
