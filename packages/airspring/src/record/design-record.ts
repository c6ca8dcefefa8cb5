import type { Warning } from '@airspring/core/fault';
import type { Face, Prisms, ShapedPanel, Solid } from '@airspring/core/space';
import type { ChamberOfBox, DesignVent, DesignWeights, Hole, Panel, PlacedBoard } from '../kind/build-record.js';
import type { Filled } from '../kind/kind-record.js';
import type { Phrase } from '../kind/phrase.js';
import type { NearAlignment, ReachedGoal } from './alignments.js';
import type { JointTold } from './cut-list.js';
import type { Told } from './design-parts.js';
import type { Uncertain } from './estimate.js';
import type { FreeOutside } from './free-outside.js';
import type { Played } from './played.js';
import type { WishPrice } from './prices.js';
import type { ScatterTold } from './scatter.js';

/** One box that meets the brief. */
export interface Design extends Played {
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
    /** Where it is no cuboid: what it is; `outer` and `inner` are then the edges of the cuboid around it. */
    readonly shape?: {
      readonly called: Phrase;
      readonly panels: readonly ShapedPanel[];
      /** Its outside, where a picture of it can be made. */
      readonly prisms?: Prisms;
      /** The joint that the brief asks for, and that its panels do not have. */
      readonly jointLeftOut?: 'butt' | 'rabbet' | 'mitre';
    };
    readonly panelThickness: number;
    /** The joint that `panels` are cut for; left out for butt joints, and where it is no cuboid. */
    readonly joint?: JointTold;
    readonly outerVolume: number;
    readonly netVolume: number;
    readonly panels: readonly Panel[];
    /** Those of them that stand inside. */
    readonly boards: readonly Panel[];
    /** Faces that have no panel. */
    readonly open?: readonly Face[];
    /** Where the boards of a slot stand; set where it has one. */
    readonly placed?: readonly PlacedBoard[];
    /** Set where a partition divides it: the front chamber and the rear one. */
    readonly chambers?: readonly ChamberOfBox[];
    readonly holes: readonly Hole[];
    readonly freeOutside: FreeOutside;
    /** What stands inside, and the air that must stay free in front of vents; measured from the left, bottom and front outer edges. */
    readonly solids: readonly Solid[];
    /** Distance from the cutouts of drivers and radiators to the nearest inner panel surface: the error that the saw may make, m. */
    readonly cutoutLeft: number;
  };
  readonly vent?: DesignVent;
  /** Where two chambers have vents of their own: both, the front one first, and no `vent`. */
  readonly vents?: readonly DesignVent[];
  /** What is added to the cones of passive radiators; left out where nothing is. */
  readonly weights?: DesignWeights;
  /** What is filled with wadding, fibre or felt. */
  readonly filled?: readonly Filled[];
  /** Numbers that belong to this kind of box, such as its tuning or its resonance. */
  readonly numbers: readonly { readonly what: string; readonly value: Phrase }[];
  /** Which named alignments its response comes near to, the nearest first; left out where the brief does not ask. */
  readonly alignments?: readonly NearAlignment[];
  /** What the goal comes to that the brief names as its alignment; left out where it names a shape, or none. */
  readonly goal?: ReachedGoal;
  /** What was assumed because the brief does not say it, each with its amount. */
  readonly assumed: readonly Phrase[];
  /** Set where the sheet of the driver does not tell Vas: the same box with the drivers at both ends of what is assumed. */
  readonly uncertain?: Uncertain;
  /** What builds of it will scatter, or why that is not worked out; set where it was asked for. */
  readonly scatter?: ScatterTold;
  /** What each wish at its limit costs, in the order of the wishes; set where it was asked for. */
  readonly prices?: readonly WishPrice[];
  readonly points: number;
  readonly warnings: readonly (Warning | { readonly code: 'neglected'; readonly text: string })[];
}
