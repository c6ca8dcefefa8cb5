import type { System } from '../enclosure/index.js';
import { type Fault, InputError } from '../fault/index.js';
import { compile, valuesOf } from '../network/index.js';
import { complexColumn } from '../numeric/index.js';
import { type FrequencyGrid, logarithmicGrid } from '../quantity/index.js';
import { levelColumn } from '../response/index.js';

const POINTS = 32;

/** Peak flow in the vent at some frequencies of a band, m³/s, while a system plays a level at each of them. */
export interface VentFlow {
  readonly frequencies: FrequencyGrid;
  /** All systems have the parts of the first. The column is filled anew at each call. */
  readonly of: (system: System) => Float64Array;
}

const SPEED = 'ventAirSpeed';

/** Why a system has no air speed of the vent that was asked for. */
function noVent({ family, network }: System, vent: string | undefined): Fault {
  const named = Object.keys(network.topology.probes).flatMap((probe) =>
    probe.startsWith(`${SPEED} `) ? [probe.slice(SPEED.length + 1)] : [],
  );
  if (named.length > 0) {
    const expected = `one of ${named.join(', ')}`;
    const remedy = 'The box has several vents: name the one whose map it is, and hold the others fixed.';
    return { code: 'inconsistent', path: 'map.vent', got: vent, expected, remedy };
  }
  const expected =
    vent === undefined ? 'a system with a vent, of a stated area' : `a system with a vent called ${vent}`;
  return { code: 'inconsistent', path: 'box', got: family, expected, remedy: 'Give the box a ventArea; any will do.' };
}

export function compileVentFlow(
  first: System,
  from: number,
  to: number,
  level: number,
  vent: string | undefined,
): VentFlow {
  const { topology } = first.network;
  const compiled = first.compile(topology) ?? compile(topology);
  const network = compiled.network(valuesOf(compiled.slots, first.network.values));
  const name = vent === undefined ? SPEED : `${SPEED} ${vent}`;
  const [flow, speed] = [0, compiled.probes.indexOf(name)] as const;
  const probe = topology.probes[name];
  if (speed < 0) throw new InputError([noVent(first, vent)]);
  const grid = logarithmicGrid(from, to, POINTS);
  const columns = network.probes.map(() => complexColumn(POINTS));
  const levels = new Float64Array(POINTS);
  const flows = new Float64Array(POINTS);
  const of = ({ network: { values }, air }: System): Float64Array => {
    network.load(valuesOf(compiled.slots, values));
    network.sweep(grid, columns);
    levelColumn(grid, columns[flow]!, air.density, 1, levels);
    const perArea = probe !== undefined && 'factor' in probe ? (values[probe.factor!] as number) : 1;
    const { re, im } = columns[speed]!;
    for (let i = 0; i < POINTS; i++) {
      const drive = 10 ** ((level - levels[i]!) / 20);
      flows[i] = (Math.SQRT2 * drive * Math.hypot(re[i]!, im[i]!)) / perArea;
    }
    return flows;
  };
  return { frequencies: grid, of };
}
