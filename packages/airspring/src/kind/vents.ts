import type { Impossible } from '@airspring/core/fault';
import { si } from '@airspring/core/quantity';
import type { Fit, FitInput, Layout } from '@airspring/core/space';
import { tuning, type VentSection } from '@airspring/core/vent';
import type { Job } from '../job/job.js';
import type { BoxKind, Variant } from './box-kind.js';
import type { RawMargin } from './build-record.js';
import type { Finished, KindRecord } from './kind-record.js';
import { metres } from './placing.js';
import type { Axis, Point, Span } from './point.js';
import type { KindWish } from './wish.js';

type InnerEdges = readonly [width: number, height: number, depth: number];

/** Vents of one form: everything that differs between the kinds of box that are tuned by vents. */
export interface Vents {
  readonly kind: BoxKind;
  readonly airSpeedPeak: number;
  /** Whether they must stay below every published onset of noise. */
  readonly quiet: boolean;
  /** Whether waves travel in them, so that the sound of the box depends on their size; default: their air moves as one mass. */
  readonly waves?: boolean;
  readonly geometric: readonly Axis[];
  /** Area of the narrowest cross-section of all vents together, where the air is fastest, m². */
  readonly area: (point: Point) => number;
  /** Air that a metre of all vents takes from the box, per metre, m². */
  readonly areaTaken: (point: Point) => number;
  /** Air that their ends, and a fold between these inner edges, take in addition, m³. */
  readonly endsTaken: (point: Point, length: number, inner?: InnerEdges) => number;
  /** The vents as core tunes them. Equal vents give the same object. */
  readonly section: (point: Point) => VentSection;
  readonly layout: Layout['vent'];
  /** The vents as core places them, without their length. */
  readonly body: (point: Point) => Omit<NonNullable<FitInput['vent']>, 'length'>;
  /** The longest vents for which inner edges leave room; see `Variant.room`. */
  readonly room: Variant['room'];
  /** Whether vents of a length have room, with the answer of core's `fit` but without its record; default `fit` itself. */
  readonly fits?: (width: number, height: number, depth: number, point: Point, length: number) => boolean;
  readonly roomAtMost: NonNullable<Variant['roomAtMost']>;
  /** Vents with the same text have the same room. */
  readonly roomKey: string;
  /** Work for a metre of vent, as metres of vent to print. */
  readonly effort: number;
  /** Where a vent reaches from panel to panel. */
  readonly span?: Span;
  /** Judges a placement that core found: returns it, or says why it cannot be used. */
  readonly refuse?: (placed: Fit | Impossible) => Fit | Impossible;
  readonly wishes: readonly KindWish[];
  /** `named` says what the vents tune, if it is not the box, and where they begin, if it is not the outside of a panel. */
  readonly tell: (finished: Finished, length: number, fb: number, named?: VentNames) => VentTold;
}

/** What vents tune, and where their length is measured from, in the words of a reader. */
export interface VentNames {
  readonly tunes?: string;
  readonly from?: string;
}

/** What one form of vent tells about a design. The rest is the same for all forms. */
export type VentTold = Omit<KindRecord, 'dip' | 'numbers' | 'noAlignment' | 'assumed' | 'warnings' | 'givesOut'>;

/**
 * Air that vents of a length take from a box whose panels are this thick, m³. Whether a slot is folded depends on the inner edges:
 * without them it is taken for a straight one.
 */
export const takenBy = (vents: Vents, point: Point, length: number, panel: number, inner?: InnerEdges): number =>
  vents.areaTaken(point) * Math.max(0, length - panel) + vents.endsTaken(point, length, inner);

/** A vent this near to its smallest size, as a ratio, is at it. */
const AT_SMALLEST = 1.005;

/** The smallest size as a limit, told only of a vent that is at it: how much wider others are says nothing. */
export const atSmallest = (path: string, what: string, value: number, smallest: number): RawMargin[] =>
  value > smallest * AT_SMALLEST ? [] : [{ path, what, meaning: 'length', value, limit: smallest, sense: 'at least' }];

/** Vents of a length as core places them. */
export const bodyOf = (vents: Vents, point: Point, length: number) =>
  ({ ...vents.body(point), length: metres(length) }) as NonNullable<FitInput['vent']>;

/** The tuning that vents of a length give the air of a point, as core finds it; the point's own where core finds none. */
export function tunedTo(
  vents: Vents,
  point: Point,
  length: number,
  { space, air }: Job,
): Pick<KindRecord, 'warnings'> & { readonly fb: number } {
  const [netVolume = 0, asked = 0] = point;
  const vent = { ...vents.section(point), length: metres(length) };
  const tuned = tuning({ vent, netVolume: si('volume', netVolume), panelThickness: metres(space.panelThickness) }, air);
  return tuned.ok ? { fb: tuned.fb, warnings: tuned.warnings } : { fb: asked, warnings: [] };
}
