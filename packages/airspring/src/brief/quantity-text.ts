import type { Fault, FaultCode } from '@airspring/core/fault';
import {
  decimalText,
  inUnit,
  type Kind,
  kinds,
  type Quantity,
  readInto,
  type Sign,
  type UnitOf,
  unitList,
} from '@airspring/core/quantity';
import * as v from 'valibot';
import { meantTexts, spellingOf, strictText } from './spelling.js';

type Said = Pick<Fault, 'code' | 'expected' | 'remedy'>;

/** The parts of a fault as one text, which the schema library carries as the message of its issue. */
const packed = ({ code, expected, remedy }: Said): string => [code, expected, remedy].join('\n');

/** The parts of a packed fault; `undefined` for the schema library's own message. */
export function unpacked(message: string): Said | undefined {
  const [code, expected, remedy] = message.split('\n');
  return expected === undefined || remedy === undefined ? undefined : { code: code as FaultCode, expected, remedy };
}

/** Bounds of a quantity, both in one unit of the kind. */
export interface Bounds<K extends Kind> {
  readonly least: number;
  readonly greatest: number;
  readonly unit: UnitOf<K>;
  /** As a brief may write it; default that of the kind. */
  readonly example?: string;
}

const unitOf = (strict: string): string => strict.slice(strict.indexOf(' ') + 1);

/** A range in the unit that the reader used, so that nobody has to convert. */
function rangeText<K extends Kind>(kind: K, range: readonly [number, number], unit: string): string {
  const [least, greatest] = range.map((value) => decimalText(inUnit(kind, value, unit as UnitOf<K>), 6));
  return `a value from ${least} to ${greatest} ${unit} (${kinds[kind].of})`;
}

/** Reads a text into SI, or says what is wrong with it. */
function readText<K extends Kind>(kind: K, text: string, sign: Sign, range?: readonly [number, number]) {
  const faults: Fault[] = [];
  const strict = strictText(kind, text);
  const value = readInto(faults, kind, strict ?? text, '', sign);
  const unit = strict === undefined ? '' : unitOf(strict);
  const outside = value !== undefined && range !== undefined && value !== 0 && (value < range[0] || value > range[1]);
  const said: Said[] = faults.map((fault) => {
    if (fault.code === 'out-of-range') return { ...fault, expected: rangeText(kind, range ?? kinds[kind].range, unit) };
    if (fault.code !== 'unit') return fault;
    const meant = meantTexts(kind, text).map((one) => `"${one}"`);
    const remedy = `Write it like "${exampleOf(kind)}".`;
    const question = `Use a point for decimals and nothing between thousands. Did you mean ${meant.join(' or ')}?`;
    return { ...fault, expected: meaning(kind), remedy: meant.length > 0 ? question : remedy };
  });
  if (outside) {
    const expected = rangeText(kind, range, unit);
    said.push({ code: 'out-of-range', expected, remedy: 'Check the unit and the power of ten.' });
  }
  return { value: said.length > 0 ? undefined : value, said };
}

/** A value of each kind, as a brief may write it. */
const EXAMPLES: Readonly<Partial<Record<Kind, string>>> = {
  length: '120 mm',
  volume: '45 L',
  frequency: '30 Hz',
  level: '92 dB',
  coneArea: '330 cm²',
  mass: '45 g',
  compliance: '0.9 mm/N',
  mechanicalResistance: '1.8 N·s/m',
  forceFactor: '11 T·m',
  resistance: '5.6 Ω',
  inductance: '0.9 mH',
  displacementPeak: '9 mm',
  power: '100 W',
  voltageRms: '25 V',
  currentRms: '6 A',
  airSpeedPeak: '17 m/s',
  temperature: '20 °C',
  humidity: '50 %',
  pressure: '101.3 kPa',
  altitude: '200 m',
  density: '1.2 kg/m³',
  speed: '343 m/s',
  viscosity: '0.0000182 Pa·s',
  thermalConductivity: '0.026 W/(m·K)',
  specificHeat: '1005 J/(kg·K)',
};

const exampleOf = (kind: Kind): string => (kind === 'temperature' ? '20 °C' : `1 ${Object.keys(kinds[kind].units)[0]}`);
const meaning = (kind: Kind): string => `a number and one of ${unitList(kind)}`;

/** A text with a unit, read into a checked SI number. */
export interface QuantityField<K extends Kind> extends v.GenericSchema<string, Quantity<K>> {
  /** The text in core's spelling. */
  readonly strict: (text: string) => string | undefined;
  /** What the list of fields tells. */
  readonly quantity: { readonly of: string; readonly units: readonly string[]; readonly range?: string };
}

/** A quantity in a brief. */
export const quantity = <K extends Kind>(kind: K, bounds?: Bounds<K>, sign: Sign = 'positive'): QuantityField<K> => {
  const range =
    bounds && ([bounds.least, bounds.greatest].map((one) => siOf(kind, one, bounds.unit)) as [number, number]);
  const schema = v.pipe(
    v.string(
      packed({
        code: 'unit',
        expected: `a text: ${meaning(kind)}`,
        remedy: `Write it like "${exampleOf(kind)}", in quotes.`,
      }),
    ),
    v.title(`${kinds[kind].of}: ${meaning(kind)}` as string),
    v.rawTransform<string, Quantity<K>>(({ dataset, addIssue, NEVER }) => {
      const { value, said } = readText(kind, dataset.value, sign, range);
      for (const one of said) addIssue({ message: packed(one) });
      return value ?? NEVER;
    }),
    v.metadata({ pattern: spellingOf(kind) }),
    v.examples([bounds?.example ?? EXAMPLES[kind] ?? exampleOf(kind)] as never),
  );
  return Object.assign(schema, {
    strict: (text: string) => strictText(kind, text),
    quantity: {
      of: kinds[kind].of,
      units: Object.keys(kinds[kind].units),
      ...(bounds && { range: `${bounds.least} to ${bounds.greatest} ${bounds.unit}` }),
    },
  });
};

function siOf<K extends Kind>(kind: K, value: number, unit: UnitOf<K>): number {
  const [scale, offset] = (kinds[kind].units as Readonly<Record<string, readonly [number, number]>>)[unit] ?? [1, 0];
  return value * scale + offset;
}

/** A plain number in a brief, within sensible bounds. */
export const plainNumber = (least: number, greatest: number, example = 1): v.GenericSchema<number> => {
  const message = packed({
    code: 'out-of-range',
    expected: `a number from ${least} to ${greatest}`,
    remedy: 'Correct the number.',
  });
  return v.pipe(v.number(), v.minValue(least, message), v.maxValue(greatest, message), v.examples([example]));
};

/** A whole number in a brief. */
export const wholeNumber = (least: number, greatest: number, example = Math.max(1, least)): v.GenericSchema<number> => {
  const message = packed({
    code: 'out-of-range',
    expected: `a whole number from ${least} to ${greatest}`,
    remedy: 'Correct the number.',
  });
  return v.pipe(
    v.number(),
    v.integer(message),
    v.minValue(least, message),
    v.maxValue(greatest, message),
    v.examples([example]),
  );
};

/** A text in a brief: not empty, and no longer than a number of characters. */
export const words = (most: number, example: string): v.GenericSchema<string> =>
  v.pipe(
    v.string(),
    v.minLength(1, packed({ code: 'empty', expected: 'a text that is not empty', remedy: 'Write a text.' })),
    v.maxLength(
      most,
      packed({ code: 'out-of-range', expected: `a text of at most ${most} characters`, remedy: 'Shorten it.' }),
    ),
    v.examples([example]),
  );
