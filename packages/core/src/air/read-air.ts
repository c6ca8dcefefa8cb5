import { type Fault, InputError } from '../fault/index.js';
import { type Field, type Kind, type Quantity, readInto, type Sign } from '../quantity/index.js';
import type { Air } from './air.js';

/** The numbers of a medium, with their kinds and signs. */
const numbers = {
  temperature: ['temperature', 'positive'],
  pressure: ['pressure', 'positive'],
  humidity: ['humidity', 'not-negative'],
  density: ['density', 'positive'],
  speedOfSound: ['speed', 'positive'],
  viscosity: ['viscosity', 'positive'],
  thermalConductivity: ['thermalConductivity', 'positive'],
  heatCapacityRatio: ['ratio', 'positive'],
  specificHeat: ['specificHeat', 'positive'],
  prandtlNumber: ['ratio', 'positive'],
} as const satisfies Readonly<Partial<Record<keyof Air, readonly [Kind, Sign]>>>;

/** A field that holds a medium made by `air` or `customAir`. */
export const airField: Field<Air> = {
  optional: false,
  read: (faults, value, path) => {
    const record = typeof value === 'object' && value !== null ? (value as Readonly<Record<string, unknown>>) : {};
    const names = Object.keys(numbers) as (keyof typeof numbers)[];
    if (!Array.isArray(record.warnings) || names.some((name) => typeof record[name] !== 'number')) {
      const expected = 'a medium made by air or customAir';
      const remedy = "Make it with air({ temperature: '20 °C' }), or with customAir.";
      faults.push({ code: 'inconsistent', path, got: value, expected, remedy });
      return undefined;
    }
    const before = faults.length;
    for (const name of names) {
      const [kind, sign] = numbers[name];
      readInto(faults, kind as Kind, record[name] as Quantity<Kind>, `${path}.${name}`, sign);
    }
    return faults.length === before ? (value as Air) : undefined;
  },
};

/**
 * Checks a medium and returns it unchanged. A medium made by `air` or `customAir` passes, also after a round trip through
 * JSON. Every function that takes a medium and checks its input calls this first.
 *
 * @validity any medium whose numbers are within the ranges of their kinds; only `customAir` checks that they agree
 * @throws InputError `inconsistent` for anything that is not a medium; `not-finite`, `not-positive`, `out-of-range` for its numbers
 * @source own (a check)
 * @example readAir(air({ temperature: '25 °C' })).density // 1.1763
 */
export function readAir(medium: Air, path = 'air'): Air {
  const faults: Fault[] = [];
  if (airField.read(faults, medium, path) === undefined) throw new InputError(faults);
  return medium;
}
