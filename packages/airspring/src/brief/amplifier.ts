import type { Fault } from '@airspring/core/fault';
import { butterworthShape, highPass, shapeByQ } from '@airspring/core/filter';
import { format, si } from '@airspring/core/quantity';
import * as v from 'valibot';
import type { Job } from '../job/job.js';
import { audible } from './bounds.js';
import type { Faultless } from './faultless.js';
import { plainNumber, quantity, wholeNumber } from './quantity-text.js';

const opt = v.exactOptional;
const load = { least: 0.1, greatest: 1000, unit: 'Ω', example: '8 Ω' } as const;

const filter = v.strictObject({
  order: v.pipe(wholeNumber(1, 4, 2), v.description('order of the high-pass')),
  corner: v.pipe(quantity('frequency', { ...audible, example: '25 Hz' }), v.description('corner of the high-pass')),
  Q: opt(
    v.pipe(
      plainNumber(0.05, 50, 0.707),
      v.description('quality factor at the corner, for order 2 or 3; default that of a Butterworth filter'),
    ),
  ),
});

/** What a brief may say about the amplifier: volts and amperes, or watts into a nominal load. */
export const amplifierFields = {
  voltage: opt(
    v.pipe(
      quantity('voltageRms', { least: 0.001, greatest: 100_000, unit: 'V' }),
      v.description('greatest voltage of a sine, rms; give it, or power and into'),
    ),
  ),
  current: opt(
    v.pipe(
      quantity('currentRms', { least: 0.001, greatest: 10_000, unit: 'A' }),
      v.description('greatest current of a sine, rms; default no limit'),
    ),
  ),
  power: opt(
    v.pipe(
      quantity('power', { least: 1e-6, greatest: 1e6, unit: 'W' }),
      v.description(
        'rated power of a sine into the nominal load amplifier.into; it takes the place of voltage and current',
      ),
    ),
  ),
  into: opt(v.pipe(quantity('resistance', load), v.description('nominal load of the rated power'))),
  sourceResistance: opt(
    v.pipe(
      quantity('resistance', { least: 0, greatest: 1000, unit: 'Ω', example: '0.1 Ω' }, 'not-negative'),
      v.description('resistance of the amplifier output and the cable; default 0 Ω'),
    ),
  ),
  leastLoad: opt(
    v.pipe(
      quantity('resistance', { ...load, example: '4 Ω' }),
      v.description(
        'least nominal load that the amplifier takes: the impedance of the box may not fall below 0.8 times this; default no limit',
      ),
    ),
  ),
  sampleRate: opt(
    v.pipe(
      quantity('frequency', { least: 8000, greatest: 768_000, unit: 'Hz', example: '48 kHz' }),
      v.description(
        'sample rate of a digital filter: the report then tells the coefficients of the high-pass that it names; default none',
      ),
    ),
  ),
  filter: opt(v.pipe(filter, v.description('an existing high-pass before the amplifier; default none'))),
};

const schema = v.strictObject(amplifierFields);
type Written = v.InferInput<typeof schema>;
type Read = v.InferOutput<typeof schema>;

/** Voltage and current of a sine of a power into a load. */
const driveOf = (power: number, into: number) => ({
  voltage: si('voltageRms', Math.sqrt(power * into)),
  current: si('currentRms', Math.sqrt(power / into)),
});

/** Faults between the fields of an amplifier, as far as they were read. Values are quoted as written. */
export function faultsOfAmplifier(written: Written, read: Faultless<Read>): Fault[] {
  if (typeof written !== 'object' || written === null || Array.isArray(written)) return [];
  const faults: Fault[] = [];
  const told = (code: Fault['code'], field: string, got: unknown, expected: string, remedy: string) =>
    faults.push({ code, path: `amplifier.${field}`, got, expected, remedy });
  const { voltage, current, power, into, filter: wanted } = written;
  const drive = ['voltage', 'current'] as const;
  if (power === undefined && into === undefined && voltage === undefined) {
    const expected = 'the greatest voltage of a sine, or instead of it the rated power and its load (power and into)';
    told('empty', 'voltage', undefined, expected, 'Add one of them.');
  } else if (power !== undefined && into === undefined) {
    told('empty', 'into', undefined, `the nominal load into which it gives ${power}`, 'Add the field.');
  } else if (power === undefined && into !== undefined) {
    told('empty', 'power', undefined, `the rated power into ${into}`, 'Add the field, or remove into.');
  }
  const both = drive.filter((field) => written[field] !== undefined);
  if (power !== undefined && both.length > 0) {
    const rated = read.power !== undefined && read.into !== undefined && driveOf(read.power, read.into);
    const means = rated
      ? `; ${power} into ${into} is ${format('voltageRms', rated.voltage, 'V')} and ${format('currentRms', rated.current, 'A')}`
      : '';
    const given = both.map((field) => `${field}, ${field === 'voltage' ? voltage : current}`).join(' and ');
    told('conflict', 'power', power, `either power or ${given}${means}`, 'Remove one of the two.');
  }
  if (read.filter?.Q !== undefined && (read.filter.order === 1 || read.filter.order === 4)) {
    const expected = `no Q, since a high-pass of order ${read.filter.order} is treated as a Butterworth filter`;
    told('inconsistent', 'filter.Q', wanted?.Q, expected, 'Remove it.');
  }
  return faults;
}

/** The amplifier of a brief without faults, with every default filled in. */
export function amplifierOf({ voltage, current, power, into, filter, ...others }: Read): Job['amplifier'] {
  const rated = power !== undefined && into !== undefined ? { power, into } : undefined;
  const drive = rated
    ? driveOf(rated.power, rated.into)
    : { voltage: voltage ?? Infinity, current: current ?? Infinity };
  return {
    ...drive,
    ...(rated && { rated }),
    ...(others.leastLoad !== undefined && { leastLoad: others.leastLoad }),
    ...(others.sampleRate !== undefined && { sampleRate: others.sampleRate }),
    sourceResistance: others.sourceResistance ?? 0,
    ...(filter && { filter: highPassOf(filter) }),
  };
}

function highPassOf({ order, corner, Q }: NonNullable<Read['filter']>) {
  if (Q !== undefined && (order === 2 || order === 3)) return highPass(shapeByQ({ order, Q }), corner);
  return highPass(butterworthShape(order), corner);
}
