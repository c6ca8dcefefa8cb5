import type { Air } from '@airspring/core/air';
import { si } from '@airspring/core/quantity';
import { type Face, faces } from '@airspring/core/space';
import { airSpeedCustoms } from '@airspring/core/vent';
import type { Offer } from './offers.js';
import type { Brief, ReadBrief } from './schema.js';

/** A brief with every quantity in SI units, every default filled in, and its drivers completed. */
export interface Job {
  readonly brief: Brief;
  readonly offers: readonly Offer[];
  readonly air: Air;
  readonly space: {
    readonly width: number;
    readonly height: number;
    readonly depth: number;
    /** Infinite where none is stated. */
    readonly volume: number;
    readonly panelThickness: number;
    readonly bracing: number;
  };
  readonly wanted: {
    readonly lowest: number;
    readonly highest: number;
    readonly level: number;
    readonly fall: number;
    readonly rise: number;
  };
  readonly amplifier: { readonly voltage: number; readonly current: number; readonly sourceResistance: number };
  readonly families: readonly ('closed' | 'vented')[];
  readonly fillGain: number;
  /** Of a vented box, at its tuning. */
  readonly losses: { readonly QL: number; readonly QA?: number; readonly QP?: number };
  /** Of a closed box, at its resonance: only what the brief states, since a closed box is meant to be tight. */
  readonly closedLosses: { readonly QL?: number; readonly QA?: number };
  readonly vent: {
    readonly airSpeedPeak: number;
    readonly smallest: number;
    readonly largest: number;
    readonly counts: readonly number[];
    readonly wall: number;
    readonly collar: number;
    readonly bends: number;
    readonly faces: readonly Face[];
  };
  /** Infinite where no printer is stated. */
  readonly printer: { readonly height: number; readonly width: number };
  readonly units: { readonly length: 'mm' | 'cm' | 'in'; readonly volume: 'L' | 'ft³' | 'in³' };
  readonly weights: { readonly deep: number; readonly loud: number; readonly small: number; readonly simple: number };
}

const HALF_POWER = 10 * Math.log10(2);

/** Fills in the defaults of a brief without faults. */
export function jobOf(brief: Brief, read: ReadBrief, medium: Air, offers: readonly Offer[]): Job {
  const { space, wanted, amplifier, box = {}, vent = {}, printer, units = {}, weights = {} } = read;
  // A bound that is left out gives way to the one that is given.
  const smallest = vent.smallest ?? Math.min(0.03, vent.largest ?? Infinity);
  const largest = vent.largest ?? Math.max(0.15, smallest);
  const { QL = 7, QA, QP } = box;
  return {
    brief,
    offers,
    air: medium,
    space: { ...space, volume: space.volume ?? Infinity, bracing: space.bracing ?? 0 },
    wanted: { ...wanted, fall: wanted.fall ?? HALF_POWER, rise: wanted.rise ?? 1.5 },
    amplifier: {
      voltage: amplifier.voltage,
      current: amplifier.current ?? Infinity,
      sourceResistance: amplifier.sourceResistance ?? 0,
    },
    families: [...new Set(box.families ?? (['closed', 'vented'] as const))],
    fillGain: box.fillGain ?? 1,
    losses: { QL, ...(QA !== undefined && { QA }), ...(QP !== undefined && { QP }) },
    closedLosses: { ...(box.QL !== undefined && { QL: box.QL }), ...(QA !== undefined && { QA }) },
    vent: {
      airSpeedPeak: vent.airSpeed ?? airSpeedCustoms.usual.airSpeedPeak,
      smallest,
      largest,
      counts: [...new Set(vent.counts ?? [1])],
      wall: vent.wall ?? si('length', 0.003),
      collar: vent.collar ?? si('length', 0.01),
      bends: vent.bends ?? 1,
      // In an order of our own: where two faces serve alike, the order in the brief must not decide.
      faces: faces.filter((face) => (vent.faces ?? ['front']).includes(face)),
    },
    printer: printer ?? { height: Infinity, width: Infinity },
    units: { length: units.length ?? 'mm', volume: units.volume ?? 'L' },
    weights: {
      deep: weights.deep ?? 1,
      loud: weights.loud ?? 1,
      small: weights.small ?? 1,
      simple: weights.simple ?? 1,
    },
  };
}
