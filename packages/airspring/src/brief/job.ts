import { type Air, air } from '@airspring/core/air';
import { type CompletedDriver, completeDriver, type DriverGroup, group } from '@airspring/core/driver';
import { type Face, faces } from '@airspring/core/enclosure';
import { type Fault, InputError } from '@airspring/core/fault';
import { si } from '@airspring/core/quantity';
import { airSpeedCustoms } from '@airspring/core/vent';
import type { Brief, ReadBrief } from './schema.js';

/** One driver in one wiring, out of those that the brief offers. */
export interface Offer {
  /** Place in the list of drivers. */
  readonly driverIndex: number;
  readonly name: string;
  readonly completed: CompletedDriver;
  readonly drivers: DriverGroup;
}

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

/** Fills in defaults, completes drivers, and refuses what contradicts itself across fields. */
export function jobOf(brief: Brief, read: ReadBrief): Job {
  const faults: Fault[] = [];
  const gather = <T>(work: () => T): T | undefined => {
    try {
      return work();
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      faults.push(...error.faults);
      return undefined;
    }
  };
  const order = (path: string, got: string, least: number, than: number, expected: string) => {
    if (least >= than) faults.push({ code: 'inconsistent', path, got, expected, remedy: 'Correct one of the two.' });
  };

  const medium = gather(() => air(read.air ?? {}));
  const offers = read.drivers.flatMap(({ wirings = [{}], ...sheet }, driverIndex): Offer[] => {
    const path = `drivers[${driverIndex}]`;
    const completed = gather(() => completeDriver(sheet, path));
    if (completed === undefined) return [];
    if (!completed.ok) {
      for (const { code, text } of completed.because) {
        const field = code.replace('missing-', '');
        faults.push({
          code: 'empty',
          path: `${path}.${field}`,
          got: undefined,
          expected: text,
          remedy: 'Add what is missing.',
        });
      }
      return [];
    }
    return wirings.flatMap((wiring, i) => {
      const made = gather(() => {
        try {
          return group(completed.driver, wiring);
        } catch (error) {
          if (!(error instanceof InputError)) throw error;
          const at = `${path}.wirings[${i}]`;
          throw new InputError(error.faults.map((fault) => ({ ...fault, path: fault.path.replace(/^group/, at) })));
        }
      });
      if (made !== undefined && made.fronts > 4) {
        const expected = 'at most 4 drivers side by side';
        const remedy = 'Split the box.';
        faults.push({ code: 'out-of-range', path: `${path}.wirings[${i}]`, got: made.fronts, expected, remedy });
      }
      return made === undefined ? [] : [{ driverIndex, name: sheet.name, completed, drivers: made }];
    });
  });

  const { space, wanted, amplifier, box = {}, vent = {}, printer, units = {}, weights = {} } = read;
  // A bound that is left out gives way to the one that is given.
  const smallest = vent.smallest ?? Math.min(0.03, vent.largest ?? Infinity);
  const largest = vent.largest ?? Math.max(0.15, smallest);
  // As they were written: the reader knows the texts, not our SI numbers.
  const { wanted: band, space: room, vent: tube } = brief;
  order('wanted.lowest', band.lowest, wanted.lowest, wanted.highest, `less than wanted.highest, ${band.highest}`);
  order('vent.smallest', tube?.smallest ?? '', smallest, largest + 1e-12, `at most vent.largest, ${tube?.largest}`);
  const edges = (['width', 'height', 'depth'] as const).map((edge) => ({ edge, size: space[edge] }));
  const least = edges.reduce((a, b) => (b.size < a.size ? b : a));
  const half = `less than half of space.${least.edge}, ${room[least.edge]}`;
  order('space.panelThickness', room.panelThickness, 2 * space.panelThickness, least.size, half);
  if (faults.length > 0 || medium === undefined) throw new InputError(faults);
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
