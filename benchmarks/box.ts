import { driver } from '../packages/core/src/driver/index.js';
import { type System, systemOf, type VentedBoxSpec, ventedBox } from '../packages/core/src/enclosure/index.js';
import {
  type Branch,
  compile,
  compileNetwork,
  type Element,
  type Law,
  type Network,
  type Polynomials,
} from '../packages/core/src/network/index.js';

/** The box that every row of the sweep plays: an invented ten-inch driver behind a cable, vented, all three losses. */
export const VENT_AREA = 0.006;
export const makeSystem = (): System<VentedBoxSpec> =>
  ventedBox({
    drivers: driver({
      Sd: '330 cm²',
      Mms: '86 g',
      Cms: '0.4 mm/N',
      Rms: '3.6 N·s/m',
      Re: '5.6 ohm',
      Le: '0.9 mH',
      Bl: '14.3 T·m',
    }),
    netVolume: '60 L',
    fb: '28 Hz',
    ventArea: '60 cm²',
    QL: 7,
    QA: 50,
    QP: 60,
    sourceResistance: '0.1 ohm',
  });
export const system = makeSystem();
export const DRIVE = 2.83;

/** `count` frequencies in 250 equal ratios a decade from 10 Hz; a circuit simulator can step through the same. */
export const frequencies = (count: number): Float64Array =>
  Float64Array.from({ length: count }, (_, i) => 10 * 10 ** (i / 250));
export const POINTS = 500;

const { topology, values: numbers } = system.network;
const { perVentArea: _, ...numbersA } = numbers;
const { coneVelocity, current } = topology.probes as Required<typeof topology.probes>;
/** Column set A: four complex columns (columns.md). The flow out of the system comes first of itself. */
export const networkA: Network = {
  topology: {
    ...topology,
    probes: {
      coneVelocity: coneVelocity as NonNullable<typeof coneVelocity>,
      ventFlow: { of: 'flow', element: 'vent' },
      current: current as NonNullable<typeof current>,
    },
  },
  values: numbersA,
};
/** Column set B needs the air speed and the voltage at the terminals as well: the probes of the box itself. */
export const networkB = system.network;

/** Polynomials of a network: what all peers with our algebra are handed. */
export function polynomials(network: Network): Polynomials & { readonly probes: readonly string[] } {
  const { polynomials: found, probes } = compileNetwork(network);
  if (found === undefined) throw new Error('not lumped');
  return { ...found, probes };
}

/** Numbers by name, for those who write the formulas out. */
export const values = (): Readonly<Record<string, number>> =>
  Object.fromEntries(Object.entries(numbers).map(([name, value]) => [name, value as number]));

/** Eddy currents in the iron of a coil: K (jω)^n. */
const eddy = (name: string, nodes: Law['nodes']): Law => ({
  kind: 'law',
  name,
  nodes,
  stands: 'impedance',
  inReference: false,
  parameters: ['K', 'n'],
  fill: (values, at, frequencies, { re, im }) => {
    const [K, n] = [values[at]!, values[at + 1]!];
    const [c, s] = [Math.cos((n * Math.PI) / 2), Math.sin((n * Math.PI) / 2)];
    for (let i = 0; i < frequencies.length; i++) {
      const size = K * (2 * Math.PI * frequencies[i]!) ** n;
      re[i] = size * c;
      im[i] = size * s;
    }
  },
});

/** The same box with two coils around its cone, each with eddy currents of its own instead of an inductance. */
export const twoLossyCoils: System<VentedBoxSpec> = (() => {
  const { Re, Bl, Le: _Le, ...rest } = numbers as Record<string, number>;
  const coil = (k: number): Element[] => [
    { kind: 'resistor', name: `Re ${k}`, nodes: ['terminals', `coil ${k}`] } satisfies Branch,
    eddy(`eddy ${k}`, [`coil ${k}`, `gap ${k}`]),
    { kind: 'motor', name: `Bl ${k}`, electrical: [`gap ${k}`, 'ground'], mechanical: ['cone', 'ground'] },
  ];
  const own = topology.elements.filter(({ name }) => !['Re', 'Le', 'Bl'].includes(name));
  const each = [1, 2].flatMap((k) => [
    [`Re ${k}`, 2 * (Re as number)],
    [`eddy ${k}`, [0.02, 0.7]],
    [`Bl ${k}`, Bl as number],
  ]);
  const all = { ...rest, ...Object.fromEntries(each) } as Readonly<Record<string, number | readonly number[]>>;
  return systemOf<VentedBoxSpec, VentedBoxSpec>(
    {
      name: 'two lossy coils',
      compile,
      read: (spec) => spec,
      topology: () => ({ ...topology, elements: [...own, ...coil(1), ...coil(2)] }),
      values: (_spec, _air, set) => {
        for (const [name, value] of Object.entries(all)) set(name, ...(typeof value === 'number' ? [value] : value));
      },
    },
    system.spec,
  );
})();
