import { type Air, readAir, standardAir } from '../air/index.js';
import type { Driver } from '../driver/index.js';
import {
  type Compile,
  compilePolynomials,
  type Network,
  type Setter,
  slotsOf,
  strictSetter,
  type Topology,
} from '../network/index.js';

/**
 * A family of boxes is one value. It reads a spec, says which network belongs to the spec, and sets the numbers of that
 * network. A family of your own is used exactly like the ones in this package.
 *
 * The response reads these probes, each per volt of drive: `coneVelocity` (m/s, positive outwards), `current` (A),
 * `terminalVoltage` (1), and where there is a vent `ventAirSpeed` (m/s, positive outwards, mean over its narrowest section).
 * Where there are several cones or vents, each probe has a name, such as `coneVelocity left`, and the response reports the
 * one that moves most. The flow that leaves the system through its outlets is read as `radiatedFlow` (m³/s).
 */
export interface Family<Spec, Input = Spec> {
  readonly name: string;
  /** Reads a spec from what people write, or from a spec that was read before. Throws an InputError. */
  readonly read: (input: Input | Spec) => Spec;
  /** The network without its numbers. Specs with the same parts give the same topology. */
  readonly topology: (spec: Spec) => Topology;
  /** Sets each number of the topology once, by name. */
  readonly values: (spec: Spec, air: Air, set: Setter) => void;
  /** How its networks are compiled. `compile` accepts any network; `compileLumped` only small lumped ones, in half the code. */
  readonly compile: Compile;
  /** The fields of a spec that an alignment may choose. */
  readonly unknowns?: readonly Unknown<Spec>[];
  /** The fields of a spec that are quality factors of losses: without them the box is lossless. */
  readonly losses?: readonly string[];
}

/** A field of a spec that an alignment may choose: a number that is not negative. */
export interface Unknown<Spec> {
  readonly field: string;
  /** The unit in which it is stated, in SI units: Vas for a volume, fs for a tuning. */
  readonly unit: (driver: Driver, air: Air, spec: Spec) => number;
  /**
   * Where a search for it begins, in this unit. Each solution must be reachable from a combination of these starts with those of the
   * other fields.
   */
  readonly starts: readonly number[];
  /** What is added to it before it is divided by the unit, such as the moving mass of a radiator to its added mass. */
  readonly beside?: (spec: Spec) => number;
}

/** A lumped family whose networks may also have elements over frequency: one that others build on. */
export const withLaws = <Spec, Input>(family: Family<Spec, Input>): Family<Spec, Input> => ({
  ...family,
  compile: compilePolynomials,
});

/** A box with its drivers, ready to be swept: the spec it was made from, the air, and its network. */
export interface System<Spec = unknown> {
  readonly family: string;
  readonly spec: Spec;
  readonly air: Air;
  readonly network: Network;
  readonly compile: Compile;
}

const COMPILED = Symbol('compiled');

/**
 * A box of a family. Its network is compiled when it is first swept, and the result is kept with the box, out of sight. A copy
 * of the record, or a record written by hand, has no such result and is compiled at each call.
 *
 * @validity any family that obeys `familyLaws`
 * @throws InputError those of the family; `unknown-field`, `empty`, `conflict` for a number that is set wrongly
 * @source own (composition)
 * @example systemOf(ventedFamily, { drivers: driver, netVolume: '45 L', fb: '29 Hz' })
 */
export function systemOf<Spec, Input>(
  family: Family<Spec, Input>,
  input: Input | Spec,
  air: Air = standardAir,
): System<Spec> {
  const medium = readAir(air);
  const spec = family.read(input);
  const topology = family.topology(spec);
  const slots = slotsOf(topology);
  const strict = strictSetter(slots, new Float64Array(slots.size));
  const values: Record<string, number | readonly number[]> = {};
  family.values(spec, medium, (name, ...numbers) => {
    strict.set(name, ...numbers);
    values[name] = numbers.length === 1 ? numbers[0]! : numbers;
  });
  strict.finish();
  const system: System<Spec> = {
    family: family.name,
    spec,
    air: medium,
    network: { topology, values },
    compile: compilerOf(family.compile, topology),
  };
  Object.defineProperty(system, COMPILED, { value: new Map<string, unknown>() });
  return system;
}

/** A coil or a suspension over frequency brings a way to compile it, for families that compile lumped elements alone. */
function compilerOf(own: Compile, { elements }: Topology): Compile {
  const { compile } = (elements.find((one) => 'compile' in one) ?? {}) as { compile?: Compile };
  return compile ? (topology, sweepRows) => own(topology, sweepRows) ?? compile(topology, sweepRows) : own;
}

/**
 * Returns what was made of a system before, under this name, or makes it now. It is kept if `systemOf` made the system.
 *
 * @validity any system; the result must depend on the system alone
 * @source own (look-up)
 * @example kept(system, 'network', () => compileNetwork(system.network))
 */
export function kept<Made>(system: System, name: string, make: () => Made): Made {
  // What is no system is refused by what is made of it.
  const known = (system as { readonly [COMPILED]?: Map<string, unknown> } | undefined)?.[COMPILED];
  if (known === undefined) return make();
  if (!known.has(name)) known.set(name, make());
  return known.get(name) as Made;
}
