import type { Face, Prisms, ShapedPanel } from '@airspring/core/space';
import type { WorkChange } from './change.js';
import type { WorkHole } from './hole.js';
import type { WorkImpedance } from './impedance.js';

/** Equal boards inside the box, m. */
export interface WorkBoard {
  readonly name: string;
  readonly count: number;
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  /** Its cuts that are not square, in words. */
  readonly cuts?: string;
  /** Of a panel of a box that is no cuboid: its surfaces, and what it meets. `length` and `width` are then those of its blank. */
  readonly panel?: ShapedPanel;
}

/** A flare that is no quarter round, m: one of the three. A profile leads from the throat outwards. */
export interface WorkFlare {
  readonly ellipse?: { readonly depth: number; readonly widening: number };
  readonly exponential?: { readonly depth: number; readonly widening: number };
  readonly profile?: readonly (readonly [along: number, widening: number])[];
}

/** Equal round vents, m. */
export interface WorkVent {
  readonly count: number;
  readonly diameter: number;
  readonly outerDiameter: number;
  readonly flangeDiameter: number;
  /** Along the centre line, from the outer surface of the panel to the inner end. */
  readonly length: number;
  /** How much the inner and the outer end widen, on each side: the radius of a rounding, unless a form is given beside it; left out where both are sharp. */
  readonly flare?: {
    readonly inner: number;
    readonly outer: number;
    readonly innerForm?: WorkFlare;
    readonly outerForm?: WorkFlare;
  };
  /** An elbow of 90°: the vent begins in the panel `from`, and its arm points to the panel `towards`. */
  readonly bend?: {
    readonly radius: number;
    readonly firstLeg: number;
    readonly secondLeg: number;
    readonly from: Face;
    readonly towards: Face;
  };
  /** Lengths of the printed pieces along the centre line, from the outer end inwards. */
  readonly pieces: readonly number[];
  /** The usual printer that these are for, where the workshop has none, m. */
  readonly printer?: { readonly height: number; readonly width: number };
  /** The tuning that it was designed for, Hz. */
  readonly fb: number;
  /** Of a box with vents in two chambers: whose vent it is, and the air of that chamber, m³. */
  readonly chamber?: 'front' | 'rear';
  readonly netVolume?: number;
}

/** A box to saw. */
export interface WorkBox {
  readonly outer: { readonly width: number; readonly height: number; readonly depth: number };
  readonly thickness: number;
  /** Air in the finished box, m³. */
  readonly netVolume: number;
  /** Air that the design keeps free for braces, m³; default none. */
  readonly bracing?: number;
  /** Where the boards of a slot stand, from the left, bottom and front outer edges, m. */
  readonly placed?: readonly {
    readonly name: string;
    readonly least: readonly number[];
    readonly greatest: readonly number[];
  }[];
  /** Of a box that a partition divides: its chambers, across which axis, from where to where from the left, bottom or front outer edge, m, and their air, m³. */
  readonly chambers?: readonly {
    readonly name: string;
    readonly across: 'width' | 'height' | 'depth';
    readonly from: number;
    readonly to: number;
    readonly netVolume: number;
    /** Whether vents tune it; it is closed otherwise. */
    readonly vented: boolean;
    /** Air that is kept free for braces in it, m³, and the section and the field of the brief that say so. */
    readonly bracing: number;
    readonly bracingIn: readonly [section: string, field: string];
  }[];
  readonly holes: readonly WorkHole[];
  /** The boards inside; of a box that is no cuboid its panels as well, each by itself. */
  readonly boards: readonly WorkBoard[];
  /**
   * The cuboids around what stands inside, from the left, bottom and front outer edges, m. `what` is 'board' for the boards of a line,
   * and 'air' where it must stay free in front of a vent.
   */
  readonly solids?: readonly {
    readonly what?: string;
    readonly least: readonly number[];
    readonly greatest: readonly number[];
  }[];
  /** How the panels of a box that is no cuboid meet, and their corners, in words; left out for a cuboid. */
  readonly joints?: string;
  /** The panel of such a box that is glued on last. */
  readonly closes?: string;
  /** Its outside, for pictures; left out where there are none. */
  readonly prisms?: Prisms;
}

/** A step of the work, with the caution that is due at it. */
export interface WorkStep {
  readonly says: string;
  readonly caution?: string | undefined;
}

/** A high-pass before the amplifier, in words. */
export interface WorkHighPass {
  /** What to buy; left out where it is there already. */
  readonly buy?: string;
  /** Where its knobs or fields go, as rows of a table. */
  readonly settings: readonly (readonly [what: string, value: string])[];
  /** How it is set, a step. */
  readonly step: string;
}

/** A box as the workshop needs it: numbers in SI units, and sentences as they are printed. Whoever designs boxes makes one. */
export interface Work {
  readonly title: string;
  /** 'Box A'. */
  readonly name: string;
  /** What it is, in a paragraph. */
  readonly summary: string;
  /** What it does, as rows of a table. */
  readonly numbers: readonly (readonly [what: string, value: string])[];
  /** Its panels and boards; left out where a box that stands is changed. */
  readonly box?: WorkBox;
  /** What is changed about a box that stands; left out for a new one. */
  readonly change?: WorkChange;
  /** The frequencies that the box is meant for, Hz; left out where nothing shall be told of its panels. */
  readonly band?: { readonly from: number; readonly to: number };
  readonly drivers: {
    readonly name: string;
    readonly count: number;
    readonly series: number;
    readonly parallel: number;
    readonly isobaric: boolean;
    readonly outerDiameter: number;
    readonly cutoutDiameter: number;
    /** Its sheet: what each number is, the number, and whether the brief states it or what it follows from. */
    readonly data?: readonly (readonly [what: string, value: string, from: string])[];
  };
  /** The load that the amplifier sees, in words. */
  readonly load: string;
  readonly vents: readonly WorkVent[];
  /** Added to the cone of each passive radiator; left out where nothing is. */
  readonly weights?: { readonly count: number; readonly mass: number; readonly coneDiameter: number };
  /** What to do, in order; left out where the pages know it from the box. */
  readonly steps?: readonly WorkStep[];
  /** How its parts are made and where they go, a paragraph each. */
  readonly building: readonly string[];
  /** What is filled with wadding, fibre or felt, as `building` tells; left out where nothing is. */
  readonly filled?: readonly ('box' | 'line' | 'vent')[];
  readonly assumed: readonly string[];
  /** How loud it plays and what keeps it safe, a paragraph each. */
  readonly playing: readonly string[];
  /** The drives that the pages speak of: the voltage, what it is, and which tones it plays with the cone within its travel. */
  readonly drives?: readonly (readonly [drive: string, what: string, safe: string])[];
  /** What keeps the cone within its travel below the band; left out where nothing has to, or nothing does. */
  readonly highPass?: WorkHighPass;
  readonly impedance: WorkImpedance;
  /** Cautions by the step at which they are due; left out where they are not. */
  readonly cautions: Partial<Record<'dust' | 'weight' | 'fumes' | 'mains' | 'hearing' | 'travel', string>>;
  readonly tools: WorkTools;
  /** The unit of lengths on the pages. */
  readonly unit: 'mm' | 'cm' | 'in';
  /** The unit of volumes of air on the pages; default L. */
  readonly volumeUnit?: 'L' | 'ft³' | 'in³' | undefined;
}

/** What the workshop has; each may be left out, and the pages then say what was assumed. */
export interface WorkTools {
  /** One of the three. */
  readonly joint?: {
    readonly rabbet?: { readonly depth: number };
    readonly mitre?: object;
    readonly butt?: object;
  };
  readonly sheets?: readonly { readonly length: number; readonly width: number; readonly count?: number }[];
  readonly kerf?: number;
  readonly trim?: number;
  readonly board?: string;
  readonly grain?: boolean;
  readonly density?: number;
  readonly nozzle?: number;
  /** Bolts of the frames of the drivers, m. */
  readonly bolts?: { readonly count: number; readonly circle: number; readonly hole: number };
  /** Depth of a step around the hole of each driver, in which its frame lies flush, m. */
  readonly recess?: number;
  /** Radius of the inner edge of the hole of each driver, m. */
  readonly roundOver?: number;
  /** Binding posts in a printed cup, m. */
  readonly terminals?: { readonly hole?: number; readonly apart?: number };
  readonly printer?: { readonly height: number; readonly width: number };
  /** A window brace, m: `at` is its middle, from the left, bottom or front outer edge. What is left out is found. */
  readonly brace?: {
    readonly across?: 'width' | 'height' | 'depth';
    readonly at?: number;
    readonly border?: number;
  };
}

/** The work on a box that stands. */
export type ChangeWork = Work & { readonly change: WorkChange };
