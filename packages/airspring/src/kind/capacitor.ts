import { type CapacitorBoxSpec, capacitorBox, capacitorBoxFamily } from '@airspring/core/enclosure';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import type { ReadFields } from '../brief/fields.js';
import type { DriverChoice, Job } from '../job/job.js';
import { acousticsOf, type BoxKind, type Variant } from './box-kind.js';
import { acrossCapacitor, capacitorFields, capacitorsOf, MICRO } from './capacitor-fields.js';
import { airtightWords, closedAir } from './closed-air.js';
import type { Finished, KindRecord } from './kind-record.js';
import type { Point } from './point.js';
import { placeOf, preferredAt } from './preferred-values.js';

/** Work of fitting a capacitor, as metres of vent to print. */
const EFFORT = 0.05;

/** Rounded up to the three digits that are printed. */
function roundedUp(value: number): number {
  const step = 10 ** (Math.floor(Math.log10(value)) - 2);
  return Math.ceil(value / step) * step;
}

/** A point is the net volume and the capacitance. */
function variantOf(job: Job, choice: DriverChoice): Variant {
  const { capacitor = {} } = job.sections as ReadFields<typeof capacitorFields>;
  const { name, decade, from, to } = capacitorsOf(capacitor);
  const air = closedAir(job, choice);
  const capacitanceAt = (place: number): number => preferredAt(decade, place, MICRO);
  const spec = (point: Point): CapacitorBoxSpec => ({
    ...air.spec(point),
    seriesCapacitance: si('capacitance', point[1]!),
  });

  /**
   * The greatest voltage across the capacitor, peak, and the greatest current through it, rms, at the amplifier's full voltage.
   * The lowest tones put all of that voltage on it. Both are rounded up, since a part is bought by them.
   */
  function stressAt(point: Point): { readonly voltage: number; readonly current: number } {
    const { lowest, highest } = job.wanted;
    const band = logarithmicGrid(si('frequency', lowest / 10), si('frequency', highest), 300);
    const driveVoltageRms = si('voltageRms', job.amplifier.voltage);
    const { currentRms } = respond(capacitorBox(spec(point), job.air), band, { driveVoltageRms });
    const voltages = currentRms.map((current, i) => (Math.SQRT2 * current) / (2 * Math.PI * band[i]! * point[1]!));
    const voltage = Math.max(Math.SQRT2 * driveVoltageRms, ...voltages);
    return { voltage: roundedUp(voltage), current: roundedUp(Math.max(...currentRms)) };
  }

  function record({ point }: Finished): KindRecord {
    const told = air.record(point, 'Measure the impedance without the capacitor');
    const capacitance = point[1]!;
    const { voltage, current } = stressAt(point);
    const value = [capacitance, 'capacitance'] as const;
    return {
      ...told,
      summary: ['With a capacitor of ', value, ' in series, it is a high-pass of third order. ', ...told.summary],
      brief: [value],
      building: [
        airtightWords,
        [
          'Connect a capacitor of ',
          value,
          ` in series with ${choice.drivers.fronts > 1 ? 'all drivers together' : 'the driver'}. Buy a bipolar (non-polarised) one: a polarised electrolytic capacitor can burst when alternating voltage is applied to it. At the full voltage of the amplifier the voltage across it reaches `,
          [voltage, 'voltage'],
          ' peak, and the current through it ',
          [current, 'current'],
          ` rms. It must be rated for more than both. ${name} has this value; two or more in parallel add up to it as well.`,
        ],
        ...told.building,
      ],
      numbers: [{ what: 'capacitance in series', value: [value] }, ...told.numbers],
      assumed: [
        ...told.assumed,
        [
          'It is assumed that the capacitor has exactly this value and no loss. Bipolar electrolytic capacitors are commonly within 10 % of their value, and their series resistance adds to that of the coil. Measure both.',
        ],
      ],
    };
  }

  return {
    kind: capacitorBoxKind,
    ...air.variant,
    acoustic: [{ name: 'capacitance', from: capacitanceAt(from), to: capacitanceAt(to), ratio: 1.15, unit: MICRO }],
    // A shop has the values of a series, and a walk goes from one to the next.
    made: [{ from, to, unit: 1, of: (point) => placeOf(decade, point[1]!, MICRO) }],
    ...acousticsOf(capacitorBoxFamily, job, spec),
    settle: (airBefore, [, place = 0]) =>
      airBefore > 0 ? [airBefore, capacitanceAt(Math.min(to, Math.max(from, Math.round(place))))] : undefined,
    parts: (point, out) => {
      const made = air.variant.parts(point, out);
      out.effort = EFFORT;
      return made;
    },
    record,
  };
}

/** A closed box whose drivers are fed through a capacitor: together they are a high-pass of third order. */
export const capacitorBoxKind: BoxKind<typeof capacitorFields> = {
  name: 'capacitor',
  byName: true,
  called: 'a closed box behind a capacitor',
  shaped: true,
  fields: capacitorFields,
  across: acrossCapacitor,
  variants: (job, choice) => [variantOf(job, choice)],
};
