import { decimalText, format, inUnit } from '@airspring/core/quantity';
import { type Meaning, type Phrase, travelUnitOf } from '../kind/phrase.js';

/** Units that a report is written in, as a brief names them. */
export interface Units {
  readonly length?: 'mm' | 'cm' | 'in';
  readonly volume?: 'L' | 'ft³' | 'in³';
}

/** Decimal places: a tenth of a millimetre, or as fine in the other units: boards and drills of inches come in eighths of one. */
const PLACES = { mm: 1, cm: 2, in: 3 } as const;

const places = (value: number, count: number): string => {
  const text = value.toFixed(count);
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
};

/** How deep a box reaches, without its unit; `endOfSearch` where no lower frequency was looked at. */
export const bareReach = (f: number, endOfSearch?: boolean): string => `${endOfSearch ? '≤ ' : ''}${f.toFixed(1)}`;

/** What the sign before such a reach means; empty where none has it. */
export const endOfSearchText = (reaches: readonly { readonly endOfSearch?: true }[]): string =>
  reaches.some(({ endOfSearch }) => endOfSearch) ? ' ≤: no lower tone was searched.' : '';

/** How quantities are written in a report. */
export type Phrasing = ReturnType<typeof phrasing>;

/** How each kind of number in a phrase is printed. */
type Prints = Readonly<Record<Meaning, (value: number) => string>>;

export function phrasing({ length = 'mm', volume = 'L' }: Units) {
  const travelUnit = travelUnitOf(length);
  const bare = (metres: number) => places(inUnit('length', metres, length), PLACES[length]);
  const say = {
    lengthUnit: length,
    /** Without its unit, for lists that name the unit once. */
    bareLength: bare,
    length: (metres: number) => `${bare(metres)} ${length}`,
    sizes: (edges: readonly number[]) => `${edges.map(bare).join(' × ')} ${length}`,
    volume: (cubicMetres: number) => format('volume', cubicMetres, volume, 3),
    mass: (kilograms: number) => format('mass', kilograms, 'g', 4),
    hertz: (f: number) => `${f.toFixed(1)} Hz`,
    /** How deep a box reaches; `endOfSearch` where no lower frequency was looked at. */
    reach: (f: number, endOfSearch?: boolean) => `${bareReach(f, endOfSearch)} Hz`,
    /** An end of a band, as the brief writes it. */
    edge: (f: number) => `${decimalText(f, 3)} Hz`,
    decibels: (level: number) => `${level.toFixed(1)} dB`,
    percent: (ratio: number) => `${(ratio * 100).toFixed(0)} %`,
    volts: (value: number) => format('voltageRms', value, 'V'),
    amperes: (value: number) => format('currentRms', value, 'A'),
    watts: (value: number) => format('power', value, 'W'),
    ohms: (value: number) => format('resistance', value, 'Ω'),
    speed: (value: number) => format('airSpeedPeak', value, 'm/s'),
    /** A way through a room. */
    metres: (metres: number) => (length === 'in' ? format('length', metres, 'ft', 3) : `${decimalText(metres, 3)} m`),
    /** The air of a room. */
    cubicMetres: (air: number) => format('volume', air, volume === 'L' ? 'm³' : 'ft³', 3),
    travelUnit,
    travel: (metres: number) => format('length', metres, travelUnit),
  };
  const prints: Prints = {
    length: say.length,
    bareLength: say.bareLength,
    volume: say.volume,
    mass: say.mass,
    frequency: say.hertz,
    edge: say.edge,
    level: say.decibels,
    ratio: (value) => value.toFixed(2),
    airSpeed: say.speed,
    travel: say.travel,
    voltage: say.volts,
    current: say.amperes,
    power: say.watts,
    impedance: say.ohms,
    capacitance: (value) => format('capacitance', value, 'µF', 4),
    acousticResistance: (value) => `${Number(value.toPrecision(3))} Pa·s/m³`,
  };
  const quantity = (value: number, meaning: Meaning) => prints[meaning](value);
  /** A phrase of a record, in the units of the reader. */
  const phrase = (parts: Phrase) => parts.map((part) => (typeof part === 'string' ? part : quantity(...part))).join('');
  return { ...say, quantity, phrase };
}
