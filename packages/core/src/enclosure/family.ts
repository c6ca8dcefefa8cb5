import { type Air, readAir, standardAir } from '../air/index.js';
import { type Compile, type Network, type Setter, slotsOf, strictSetter, type Topology } from '../network/index.js';

/**
 * A family of boxes: one value. It reads a spec, says which network belongs to it, and puts the numbers into that network.
 * Ours and a stranger's are used alike.
 *
 * The response reads these probes, each per volt of drive: `coneVelocity` (m/s, positive outwards), `current` (A),
 * `terminalVoltage` (1), and where there is a vent `ventAirSpeed` (m/s, positive outwards, mean over its narrowest section).
 * Where there are several cones or vents, each bears a name, `coneVelocity left`; the response then tells of the one that
 * moves most. What leaves the system through its outlets is read as `radiatedFlow` (m³/s).
 */
export interface Family<Spec, Input = Spec> {
  readonly name: string;
  /** A spec from what people write, or from a spec read before. Throws an InputError. */
  readonly read: (input: Input | Spec) => Spec;
  /** The network without numbers. Specs that have the same parts give the same topology. */
  readonly topology: (spec: Spec) => Topology;
  /** Sets each number of the topology once, by name. */
  readonly values: (spec: Spec, air: Air, set: Setter) => void;
  /** How its networks are compiled: `compile` takes any; `compilePolynomials` takes small lumped ones, and half the code. */
  readonly compile: Compile;
}

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
 * A box of a family. Its compiled form is made when it is first swept, and kept with it, out of sight. A copy of the record,
 * or one written by hand, has none and is compiled at each call.
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
    values[name] = numbers.length === 1 ? (numbers[0] as number) : numbers;
  });
  strict.finish();
  const { name, compile } = family;
  const system: System<Spec> = { family: name, spec, air: medium, network: { topology, values }, compile };
  Object.defineProperty(system, COMPILED, { value: new Map<string, unknown>() });
  return system;
}

/**
 * What was made of a system before, by its name, or made now; kept where `systemOf` made the system.
 *
 * @validity any system; what is made must follow from the system alone
 * @source own (look-up)
 * @example kept(system, 'network', () => compileNetwork(system.network))
 */
export function kept<Made>(system: System, name: string, make: () => Made): Made {
  const known = (system as { readonly [COMPILED]?: Map<string, unknown> })[COMPILED];
  if (known === undefined) return make();
  if (!known.has(name)) known.set(name, make());
  return known.get(name) as Made;
}
