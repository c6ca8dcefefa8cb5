import { type Fault, refuse } from '@airspring/core/fault';
import type { Probe, Topology } from '@airspring/core/network';
import type { CoilCurve, ExactSpring } from './curve.js';
import type { MomentaryLoss } from './momentary-loss.js';
import { type Motion, place } from './motion.js';
import { isSame, type Part, type Parts } from './parts.js';
import { instantOf } from './tables.js';

/** What a system is made of, beside its linear network. */
export interface Nonlinear {
  readonly forceFactor: CoilCurve;
  readonly inductance: CoilCurve | undefined;
  readonly spring: ExactSpring;
  readonly losses: Readonly<Record<string, MomentaryLoss>>;
}

/** Fills `out[i][at]` with what each output is at an instant, from a motion, the drive in V, and what the warm coil has beside Re. */
export type Readout = (motion: Motion, drive: number, added: number, out: readonly Float64Array[], at: number) => void;

/** The integral of a probe, `integral radiatorVelocity`. */
const INTEGRAL = /^integral (.+)$/;

/** What is asked of the motion itself. */
const ofMotion: Readonly<Record<string, number>> = {
  displacement: place.displacement,
  coilRise: place.coil,
  magnetRise: place.magnet,
};

/**
 * What is read of a system at an instant. Each store is then a source of its state, and the forces are those at this displacement and
 * speed, so that every output belongs to the same instant as the sample of the drive. The pressure at 1 m is ρ/2π times the slope of
 * the radiated flow, which is a sum of the rates of the stores.
 */
export function compileReadout(
  parts: Parts,
  topology: Topology,
  nonlinear: Nonlinear,
  names: readonly string[],
  density: number,
): Readout {
  const { forceFactor, inductance, spring, losses } = nonlinear;
  const { inputs, network, rates } = instantOf(parts, Object.keys(losses), inductance ? 'current' : 'voltage');
  const lossList = Object.values(losses);
  const n = inputs.stores.length;
  const storeOf = (is: (part: Part) => boolean) => inputs.stores.findIndex(is);
  const rows = names.map((name) => (Object.hasOwn(ofMotion, name) ? undefined : rowOf(name)));
  refuseUnknown(names, rows, Object.keys(topology.probes));
  const own = names.map((name) => ofMotion[name] ?? -1);
  const given = new Float64Array(inputs.count);
  const two = new Float64Array(2);
  const velocity = storeOf(({ nodes, does }) => does === 'stores potential' && isSame(nodes, parts.motor.mechanical));
  const flows = Object.keys(losses).map((loss) => storeOf(({ name }) => name === loss));
  const current = network.flow(parts.motor.name) as Float64Array;
  const needsForces = rows.some((row) => row?.subarray(inputs.coil).some((value) => value !== 0));
  const count = needsForces ? inputs.count : n + 1;
  const table = Float64Array.from(rows.flatMap((row) => (row ? [...row.subarray(0, count)] : Array(count).fill(0))));

  function rowOf(name: string): Float64Array | undefined {
    if (name === 'radiatedFlow') return radiated();
    if (name === 'pressure') {
      const flow = radiated();
      if (flow === undefined || flow.subarray(n).some((value) => value !== 0)) return undefined;
      const unit = density / (2 * Math.PI);
      return Float64Array.from({ length: inputs.count }, (_, i) =>
        rates.reduce((total, rate, k) => total + unit * flow[k]! * rate[i]!, 0),
      );
    }
    const moved = INTEGRAL.exec(name)?.[1];
    const probe = probeOf(moved ?? name);
    if (probe === undefined) return undefined;
    const by = probe.factor === undefined ? 1 : parts.numberOf(probe.factor);
    return (moved === undefined ? network.read(probe) : heldBySpring(probe))?.map((value) => value * by);
  }
  function probeOf(name: string): Probe | undefined {
    return Object.hasOwn(topology.probes, name) ? topology.probes[name] : undefined;
  }
  /** The integral of a velocity is what a spring at its node holds: compliance times force. */
  function heldBySpring(probe: Probe): Float64Array | undefined {
    if (probe.of !== 'potential') return undefined;
    const store = storeOf(({ does, nodes }) => does === 'stores flow' && isSame(nodes, [probe.node, 'ground']));
    if (store < 0) return undefined;
    const { value, nodes } = inputs.stores[store]!;
    const row = new Float64Array(inputs.count);
    row[store] = value * (nodes[0] === probe.node ? 1 : -1) * (probe.sign ?? 1);
    return row;
  }
  function radiated(): Float64Array | undefined {
    if (topology.outlets.length === 0) return undefined;
    const read = topology.outlets.map(({ flow }) => network.read(flow) as Float64Array);
    return read.reduce((total, row) => total.map((value, i) => value + row[i]!));
  }

  function fillForces({ own: motion }: Motion, added: number): void {
    const x = motion[place.displacement]!;
    forceFactor.at(x, two);
    const b = parts.Bl * two[0]!;
    let i = 0;
    let pull = 0;
    if (inductance) {
      const flux = motion[place.flux]!;
      inductance.at(x, two);
      i = flux / (parts.Le * two[0]!);
      pull = 0.5 * i * i * parts.Le * two[1]!;
      given[inputs.coil] = i;
    } else {
      const voltage = b * given[velocity]!;
      let free = current[n]! * given[n]!;
      for (let k = 0; k < n; k++) free += current[k]! * given[k]!;
      i = (free + current[inputs.coil]! * voltage) / (1 - current[inputs.coil]! * added);
      given[inputs.coil] = voltage + added * i;
    }
    spring.at(x, two);
    given[inputs.force] = parts.stiffness * two[0]! - b * i - pull;
    for (let k = 0; k < flows.length; k++) {
      lossList[k]!.at(given[flows[k]!]!, two);
      given[inputs.loss + k] = two[0]!;
    }
  }

  return (motion, drive, added, out, at) => {
    const { stores, own: carried } = motion;
    for (let k = 0; k < n; k++) given[k] = stores[k]!;
    given[n] = drive;
    if (needsForces) fillForces(motion, added);
    for (let r = 0, first = 0; r < own.length; r++, first += count) {
      const place = own[r]!;
      if (place >= 0) {
        out[r]![at] = carried[place]!;
        continue;
      }
      let sum = 0;
      for (let k = 0; k < count; k++) sum += table[first + k]! * given[k]!;
      out[r]![at] = sum;
    }
  };
}

function refuseUnknown(names: readonly string[], rows: readonly unknown[], probes: readonly string[]): void {
  const known = ['pressure', 'radiatedFlow', ...Object.keys(ofMotion), ...probes].join(', ');
  const remedy = 'Choose one of these that the network has.';
  refuse(
    names.flatMap((name, i): Fault[] =>
      rows[i] === undefined && !Object.hasOwn(ofMotion, name)
        ? [{ code: 'unknown-field', path: `outputs[${i}]`, got: name, expected: `one of ${known}`, remedy }]
        : [],
    ),
  );
}
