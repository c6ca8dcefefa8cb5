import type { System } from '../enclosure/index.js';
import { InputError } from '../fault/index.js';
import { type CompiledNetwork, compile, undamped, valuesOf, withSeriesResistance } from '../network/index.js';
import { type ComplexColumn, complexColumns } from '../numeric/index.js';
import { givenSystem } from './compile.js';

const SPEED = 'ventAirSpeed';
/** The element that loses in the only opening of a system. */
export const LOSS = 'flow loss';

/** An opening whose air may lose by its speed. */
export interface LossyOpening {
  /** What tells it from others in the probes of its system: 'front'; empty where there is one. */
  readonly name: string;
  /** The probe of its air speed. */
  readonly probe: string;
  /** Area that this speed refers to, m², and the number of the network that is one over it. */
  readonly area: number;
  readonly perArea: string;
}

/** A system with a resistance in each of its openings of a stated area. */
export interface LossyOpenings {
  readonly openings: readonly [LossyOpening, ...LossyOpening[]];
  /** The system with these acoustic resistances in the openings, Pa·s/m³. */
  readonly systemWith: (resistances: readonly number[]) => System;
  /** Sweeps all probes with these acoustic resistances in the openings, Pa·s/m³. */
  readonly sweep: (
    resistances: readonly number[],
    frequencies: Float64Array,
  ) => { readonly probes: readonly string[]; readonly columns: readonly ComplexColumn[] };
}

/** Puts a resistance into each opening of a system. */
export function lossyOpenings(system: System): LossyOpenings {
  const { network, compile: own } = givenSystem(system);
  const { topology, values } = network;
  const found = Object.entries(topology.probes).flatMap(([probe, reading]) => {
    if (probe !== SPEED && !probe.startsWith(`${SPEED} `)) return [];
    const { factor: perArea = '' } = reading;
    const factor = values[perArea];
    if (reading.of !== 'flow' || typeof factor !== 'number') return [];
    return [{ name: probe.slice(SPEED.length + 1), probe, area: 1 / factor, perArea, element: reading.element }];
  });
  const [first, ...others] = found;
  if (first === undefined) {
    const expected = 'a system with a vent of a stated area';
    const remedy = 'Give the box a ventArea.';
    throw new InputError([{ code: 'inconsistent', path: 'system', got: undefined, expected, remedy }]);
  }
  const lossOf = ({ name }: LossyOpening) => `${LOSS} ${name}`.trim();
  const lossy = found.reduce((made, one) => withSeriesResistance(made, one.element, lossOf(one)), topology);
  const compiled = own(lossy) ?? compile(lossy);
  const valuesWith = (resistances: readonly number[]) => ({
    ...values,
    ...Object.fromEntries(found.map((one, k) => [lossOf(one), resistances[k]!])),
  });
  const at = (resistances: readonly number[]): CompiledNetwork =>
    compiled.network(valuesOf(compiled.slots, valuesWith(resistances)));
  const systemWith: LossyOpenings['systemWith'] = (resistances) => ({
    ...system,
    network: { topology: lossy, values: valuesWith(resistances) },
  });
  const sweep: LossyOpenings['sweep'] = (resistances, frequencies) => {
    const network_ = at(resistances);
    const columns = complexColumns(network_.probes.length, frequencies.length);
    const stopped = network_.sweep(frequencies, columns);
    if (stopped >= 0) throw undamped(frequencies[stopped]!);
    return { probes: network_.probes, columns };
  };
  return { openings: [first, ...others], systemWith, sweep };
}
