import type { Face } from '@airspring/core/space';
import type { Plate } from '../drawing/index.js';
import type { WorkHole } from './hole.js';
import type { WorkImpedance } from './impedance.js';

/** Equal tubes that are glued in, m. */
export interface WorkTube {
  /** What the pages call it: 'tube', 'tube of vent 2'. */
  readonly name: string;
  /** How many are made. */
  readonly count: number;
  readonly diameter: number;
  /** As it was designed; the printed one is thinner where the hole leaves it no play. */
  readonly wall: number;
  /** Along the centre line, from the outer surface of the panel to the inner end. */
  readonly length: number;
  /** Radius of the rounding at both ends; zero is a sharp end. */
  readonly rounding: number;
  /** The usual printer that its pieces are for, where the workshop has none, m. */
  readonly printer?: { readonly height: number; readonly width: number };
  /** Of the hole that it stands in. */
  readonly hole: number;
  /** Whether it goes through its hole, or is glued to the inside of the panel around it, brought in through this cutout. */
  readonly stands: 'in the hole' | { readonly behindWithin: number };
  /** An elbow of 90°: the tube begins in the panel `from`, and its arm points to the panel `towards`. */
  readonly bend?: {
    readonly radius: number;
    readonly firstLeg: number;
    readonly secondLeg: number;
    readonly from: Face;
    readonly towards: Face;
  };
  /** What its hole is called among those of the box that stands; default 'vent'. */
  readonly opening?: string;
  /** The tuning of the box with it, and the air that this counts on. */
  readonly fb: number;
  readonly netVolume: number;
  /** How many such tubes the box then has, and which part of the flow goes through them, 0 to 1. */
  readonly ofBox: { readonly count: number; readonly flow: number };
}

/** One tube of a set. */
export interface WorkSetTube {
  /** Its mark in the report: 'T3'. */
  readonly mark: string;
  readonly length: number;
  readonly fb: number;
  readonly netVolume: number;
  readonly flow: number;
  /** What it is for. */
  readonly purpose: string;
  readonly impedance: Pick<WorkImpedance, 'peaks' | 'dips'>;
}

/** Tubes for one flange, m. */
export interface WorkTubeSet {
  readonly diameter: number;
  readonly wall: number;
  readonly rounding: number;
  readonly hole: number;
  /** Least outer diameter of the flange. */
  readonly flangeDiameter: number;
  /** Whether they are cut from a pipe at hand; they are printed otherwise. */
  readonly pipe: boolean;
  /** The usual printer that they are for, where the workshop has none, m. */
  readonly printer?: { readonly height: number; readonly width: number };
  readonly tubes: readonly WorkSetTube[];
}

/** A hole to cut in a panel. */
export interface WorkOpening {
  readonly what: string;
  readonly count: number;
  readonly form: Plate['form'];
  /** Which saw makes it, or how else. */
  readonly how: string;
}

/** Equal flat parts to cut. */
export interface WorkPlate extends Plate {
  readonly count: number;
  readonly thickness: number;
  readonly use: string;
}

/** What is changed about a box that stands. */
export interface WorkChange {
  readonly panelThickness: number;
  /** The box with its holes as they will be; left out where their places are not known. */
  readonly standing?: {
    readonly outer: { readonly width: number; readonly height: number; readonly depth: number };
    readonly holes: readonly WorkHole[];
  };
  /** What the box does now and will do; the first row heads the columns. */
  readonly compared: readonly (readonly string[])[];
  /** What it does now, a paragraph each. */
  readonly now: readonly string[];
  /** The impedance of the box as it stands. */
  readonly before: WorkImpedance;
  readonly openings: readonly WorkOpening[];
  readonly plates: readonly WorkPlate[];
  readonly tubes: readonly WorkTube[];
  readonly set?: WorkTubeSet;
  /** What else is made or bought, a sentence each. */
  readonly parts: readonly string[];
  /** What cannot be made so, a sentence each. */
  readonly notes: readonly string[];
  /** How the tuning is found without an instrument; empty where there is none. */
  readonly byEye: readonly string[];
  readonly byEyeCautions: readonly string[];
  /** Whether drivers are wired anew. */
  readonly rewired: boolean;
}
