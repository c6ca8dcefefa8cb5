/** Families that lie, each in one way: the vented or the mixed family with one thing changed. */
import {
  type Family,
  type MixedBoxInput,
  type MixedBoxSpec,
  mixedFamily,
  type VentedBoxInput,
  type VentedBoxSpec,
  ventedFamily,
} from '@airspring/core/enclosure';
import {
  branch,
  compile,
  type Law,
  type Line,
  losslessLine,
  type Outlet,
  type Topology,
} from '@airspring/core/network';

type Vented = Family<VentedBoxSpec, VentedBoxInput>;
type Mixed = Family<MixedBoxSpec, MixedBoxInput>;

/** The vented family with other numbers. */
const withNumbers = (change: (name: string, number: number, all: Map<string, number>) => number): Vented => ({
  ...ventedFamily,
  values: (spec, air, set) => {
    const all = new Map<string, number>();
    ventedFamily.values(spec, air, (name, ...numbers) => all.set(name, numbers[0]!));
    for (const [name, number] of all) set(name, change(name, number, all));
  },
});
const scaled = (element: string, factor: number): Vented =>
  withNumbers((name, number) => (name === element ? factor * number : number));
const exchanged = (one: string, other: string): Vented =>
  withNumbers(
    (name, number, all) => (name === one ? all.get(other) : name === other ? all.get(one) : number) as number,
  );
const withTopology = (change: (topology: Topology) => Topology): Vented => ({
  ...ventedFamily,
  topology: (spec) => change(ventedFamily.topology(spec)),
});
const withOutlets = (change: (outlet: Outlet) => readonly Outlet[]): Vented =>
  withTopology((topology) => ({ ...topology, outlets: topology.outlets.flatMap(change) }));
const opposed = ({ flow, ...outlet }: Outlet): Outlet => ({ ...outlet, flow: { ...flow, sign: -1 } });

/** The box leaks through something over frequency, whose law may be a lie. */
const leaking = (fill: Law['fill'], more: Partial<Law> = {}): Vented => ({
  ...ventedFamily,
  topology: (spec) => {
    const topology = ventedFamily.topology(spec);
    const cloth: Law = {
      kind: 'law',
      name: 'cloth',
      nodes: ['box', 'ground'],
      stands: 'admittance',
      parameters: ['conductance'],
      fill,
      ...more,
    };
    const outlets: readonly Outlet[] = [...topology.outlets, { name: 'cloth', flow: { of: 'flow', element: 'cloth' } }];
    return { ...topology, elements: [...topology.elements, cloth], outlets };
  },
  values: (spec, air, set) => {
    ventedFamily.values(spec, air, set);
    set('cloth', 1e-6);
  },
});
type At = (frequency: number, conductance: number, i: number) => number;
const filled =
  (at: At): Law['fill'] =>
  (values, start, frequencies, { re }) =>
    frequencies.forEach((f, i) => {
      re[i] = at(f, values[start]!, i);
    });

/** The vent as a line whose matrix may be a lie. */
const ventLine = (change: (chain: Parameters<Line['fill']>[3], i: number) => void): Vented => ({
  ...ventedFamily,
  compile,
  topology: (spec) => {
    const topology = ventedFamily.topology(spec);
    const honest = losslessLine('vent', ['box', 'mouth']);
    const line: Line = {
      ...honest,
      fill: (values, at, frequencies, out) => {
        honest.fill(values, at, frequencies, out);
        frequencies.forEach((_, i) => {
          change(out, i);
        });
      },
    };
    return { ...topology, elements: topology.elements.map((element) => (element.name === 'vent' ? line : element)) };
  },
  values: (spec, air, set) =>
    ventedFamily.values(spec, air, (name, ...numbers) =>
      name === 'vent' ? set('vent', 9e4, 4.873e-4) : set(name, ...numbers),
    ),
});
/** The line itself tells the truth. */
export const honestLine = ventLine(() => {});
export const honestCloth = leaking(filled((_, conductance) => conductance));

let calls = 0;
const rereadSpec: Vented['read'] = (input) => {
  const spec = ventedFamily.read(input);
  return { ...spec, QL: (spec.QL ?? 7) * 1.02 };
};

/** Each liar of the vented family, and the law that must find it. */
export const ventedLiars: readonly (readonly [lie: string, law: string, family: Vented])[] = [
  ['grams for kilograms', 'the network has the numbers of the driver', scaled('Mms', 1000)],
  [
    'stiffness for compliance',
    'the network has the numbers of the driver',
    withNumbers((n, x) => (n === 'Cms' ? 1 / x : x)),
  ],
  ['moving mass 2 % too great', 'the network has the numbers of the driver', scaled('Mms', 1.02)],
  ['area by the diameter of the surround', 'the network has the numbers of the driver', scaled('Sd', 1.02)],
  ['inductances exchanged', 'the network has the numbers of the driver', exchanged('Le', 'L2')],
  ['resistances of the coil exchanged', 'the network has the numbers of the driver', exchanged('Re', 'R2')],
  ['the amplifier in the coil', 'the network has the numbers of the driver', exchanged('Re', 'sourceResistance')],
  ['damping and compliance exchanged', 'the network has the numbers of the driver', exchanged('Rms', 'Cms')],
  [
    'a driver that is lighter in thin air',
    'the driver is the same in another air',
    {
      ...ventedFamily,
      values: (spec, air, set) =>
        ventedFamily.values(spec, air, (name, ...numbers) =>
          name === 'Mms' ? set(name, numbers[0]! * (1 + 0.02 * (air.density / 1.2041 - 1))) : set(name, ...numbers),
        ),
    },
  ],
  [
    'flow of the vent with the wrong sign',
    'the outlets are all the flow that leaves',
    withOutlets((o) => [o.name === 'vent' ? opposed(o) : o]),
  ],
  [
    'flow of the vent doubled',
    'the outlets are all the flow that leaves',
    withOutlets((o) => (o.name === 'vent' ? [o, o] : [o])),
  ],
  [
    'the leak is not heard',
    'the outlets are all the flow that leaves',
    withOutlets((o) => (o.name === 'leak' ? [] : [o])),
  ],
  ['all outlets turned round', 'air either leaves or is stored', withOutlets((o) => [opposed(o)])],
  ['an air speed 2 % too low', 'air speed is flow over the stated area', scaled('perVentArea', 1 / 1.02)],
  ['the diameter as area', 'air speed is flow over the stated area', scaled('perVentArea', 0.25)],
  ['an amplifier 2 % stiffer', 'the resistance before it is as stated', scaled('sourceResistance', 0.98)],
  [
    'a leak that plays in the reference',
    'its reference is ρ Bl Sd/(2π Mms (Rg + Re))',
    withTopology((t) => ({
      ...t,
      elements: t.elements.map((one) =>
        one.name === 'leak' && one.kind === 'acousticResistance' ? branch(one.kind, one.name, one.nodes) : one,
      ),
    })),
  ],
  [
    'an inductance that plays in the reference',
    'the reference leaves out coil and leak',
    withTopology((t) => ({
      ...t,
      elements: t.elements.map((one) =>
        one.kind === 'inductor' && one.name === 'Le' ? branch('inductor', one.name, one.nodes) : one,
      ),
    })),
  ],
  [
    'wired the wrong way round',
    'a positive voltage pushes cones outwards',
    withTopology((t) => ({
      ...t,
      elements: t.elements.map((one) =>
        one.kind === 'motor' ? { ...one, electrical: [one.electrical[1], one.electrical[0]] as const } : one,
      ),
    })),
  ],
  [
    'all outlets late',
    'delays count from the nearest outlet',
    {
      ...withOutlets((outlet) => [{ ...outlet, delay: 'late' }]),
      values: (spec, air, set) => {
        ventedFamily.values(spec, air, set);
        set('late', 1e-3);
      },
    },
  ],
  [
    'a vent that the topology knows by number',
    'the topology contains no number',
    {
      ...ventedFamily,
      topology: (spec) => leaking(filled((_, g) => g * (1 + spec.netVolume))).topology(spec),
      values: (spec, air, set) => {
        ventedFamily.values(spec, air, set);
        set('cloth', 1e-6);
      },
    },
  ],
  [
    'no leak where one is stated',
    'tuning and losses are as stated',
    {
      ...ventedFamily,
      topology: ({ QL: _, ...spec }) => ventedFamily.topology(spec),
      values: ({ QL: _, ...spec }, air, set) => ventedFamily.values(spec, air, set),
    },
  ],
  [
    'absorption told as a leak',
    'the outlets are all the flow that leaves',
    withTopology((t) => ({
      ...t,
      outlets: [...t.outlets, { name: 'fibre', flow: { of: 'flow', element: 'absorption' } }],
    })),
  ],
  [
    'velocity of something else',
    'the velocity of a cone is that of a motor',
    withTopology((t) => ({ ...t, probes: { ...t.probes, coneVelocity: { of: 'potential', node: 'box' } } })),
  ],
  [
    'velocity inwards',
    'the velocity of a cone is that of a motor',
    withTopology((t) => ({ ...t, probes: { ...t.probes, coneVelocity: { of: 'potential', node: 'cone', sign: -1 } } })),
  ],
  [
    'current of a part of the coil',
    'the current is that of the source',
    withTopology((t) => ({ ...t, probes: { ...t.probes, current: { of: 'flow', element: 'R2' } } })),
  ],
  [
    'terminals behind the resistance of the coil',
    'the network has the numbers of the driver',
    withTopology((t) => ({ ...t, probes: { ...t.probes, terminalVoltage: { of: 'potential', node: 'coil' } } })),
  ],
  [
    'a probe forgotten',
    'all probes exist',
    withTopology(({ probes: { terminalVoltage: _, ...probes }, ...t }) => ({ ...t, probes })),
  ],
  ['a box 2 % too great', 'the air of a box is the stated volume', scaled('Cab', 1.02)],
  [
    'always the air of one day',
    'springs of air follow the medium',
    {
      ...ventedFamily,
      values: (spec, air, set) =>
        ventedFamily.values(spec, air, (name, ...numbers) =>
          name === 'Cab' ? set(name, spec.netVolume / (1.204 * 343.2 ** 2)) : set(name, ...numbers),
        ),
    },
  ],
  [
    'a vent that weighs the same in any gas',
    'masses of air follow the density',
    {
      ...ventedFamily,
      values: (spec, air, set) =>
        ventedFamily.values(spec, air, (name, ...numbers) =>
          name === 'vent' ? set(name, (numbers[0]! * 1.2041) / air.density) : set(name, ...numbers),
        ),
    },
  ],
  ['tuned 1 % too low', 'tuning and losses are as stated', scaled('vent', 1.02)],
  ['leak 2 % too tight', 'tuning and losses are as stated', scaled('leak', 1.02)],
  ['leak and absorption exchanged', 'tuning and losses are as stated', exchanged('leak', 'absorption')],
  ['leak and loss of the vent exchanged', 'tuning and losses are as stated', exchanged('leak', 'ventLoss')],
  [
    'three kilograms per m⁴ for good luck',
    'values scale with the units',
    withNumbers((n, x) => (n === 'vent' ? x + 3 : x)),
  ],
  [
    'a vent in square centimetres',
    'results scale with the units',
    withNumbers((n, x) => (n === 'perVentArea' ? x + 1 : x)),
  ],
  [
    'a number set twice',
    'reads its spec and sets each number once',
    {
      ...ventedFamily,
      values: (spec, air, set) => {
        ventedFamily.values(spec, air, set);
        set('Re', spec.drivers.equivalent.Re);
      },
    },
  ],
  ['a spec that grows each time it is read', 'the family accepts its own spec', { ...ventedFamily, read: rereadSpec }],
  [
    'a spec that JSON loses',
    'spec survives JSON',
    { ...ventedFamily, read: (input) => ({ ...ventedFamily.read(input), QL: Number.POSITIVE_INFINITY }) },
  ],
  [
    'numbers by chance',
    'the same spec gives the same network',
    withNumbers((n, x) => (n === 'Cab' ? x * (1 + 1e-6 * ++calls) : x)),
  ],
  ['power out of nothing', 'takes in power and gives out none', leaking(filled(() => -1e-4))],
  ['nothing at the tuning', 'answers at every frequency', leaking(filled((f, g) => (f === 29 ? Number.NaN : g)))],
  [
    'active above 5 kHz only',
    'cloth: gives out no power',
    leaking(filled((f, g) => (f > 5000 ? 0.98 * g - 1.01 * g : g))),
  ],
  ['2 % more above 700 Hz', 'cloth: no jump', leaking(filled((f, g) => (f > 700 ? 1.02 * g : g)))],
  ['the first of a block counts double', 'cloth: without memory', leaking(filled((_, g, i) => (i === 0 ? 2 * g : g)))],
  [
    'it adds to what is there',
    'cloth: changes nothing that it reads',
    leaking((values, at, frequencies, { re }) => {
      for (let i = 0; i < re.length; i++) re[i] = re[i]! + values[at]!;
      frequencies.sort();
    }),
  ],
  [
    'numbers of the first call for ever',
    'the same result after other numbers',
    {
      ...honestCloth,
      topology: (spec) => {
        let first: number | undefined;
        const fill = filled((_, g) => {
          first ??= g;
          return first;
        });
        return leaking(fill).topology(spec);
      },
    },
  ],
  [
    'a compiler of its own that forgets a digit',
    'all methods agree',
    {
      ...ventedFamily,
      compile: (topology) => {
        const compiled = compile(topology);
        return {
          ...compiled,
          network: (values, inReference) => compiled.network(values.map(Math.fround), inReference),
        };
      },
    },
  ],
  ['a parameter for nothing', 'cloth: each parameter matters', leaking(filled(() => 1e-6))],
  [
    'the slot of another',
    'cloth: reads its own slots',
    leaking((values, _, frequencies, { re }) => {
      re.fill(Math.abs(values[0]!) || 2e-6, 0, frequencies.length);
    }),
  ],
  [
    'a slope 2 % off',
    'cloth: its slope is that of its values',
    leaking(
      filled((f, g) => g * Math.sqrt(f)),
      { slope: filled((f, g) => 0.51 * g * Math.sqrt(f)) },
    ),
  ],
  [
    'a one-way duct',
    'reciprocal',
    ventLine(({ B }, i) => {
      B.im[i] = 1.02 * B.im[i]!;
    }),
  ],
  [
    'a duct that pushes',
    'vent: gives out no power',
    ventLine(({ A, D, B, C }, i) => {
      // Reciprocal as before: AD − BC of a line that is gained along its way, not lost.
      const [a, d] = [A.re[i]!, D.re[i]!];
      const [b, c] = [B.im[i]!, C.im[i]!];
      const [cosh, sinh] = [Math.cosh(-0.01), Math.sinh(-0.01)];
      const z = Math.sqrt(b / c);
      const sine = b / z;
      A.re[i] = D.re[i] = a * cosh;
      A.im[i] = D.im[i] = sine * sinh;
      B.re[i] = z * d * sinh;
      B.im[i] = z * sine * cosh;
      C.re[i] = (d * sinh) / z;
      C.im[i] = (sine * cosh) / z;
    }),
  ],
  [
    'a reference without words',
    'the reference is a level, or refused with words',
    leaking(
      filled((f, g) => {
        if (f > 1e5) throw new Error('');
        return g;
      }),
    ),
  ],
];

const swapped = (pairs: Readonly<Record<string, string>>): Mixed => ({
  ...mixedFamily,
  values: (spec, air, set) => mixedFamily.values(spec, air, (name, ...numbers) => set(pairs[name] ?? name, ...numbers)),
});

/** Each liar of the mixed family, and the law that must find it. */
export const mixedLiars: readonly (readonly [lie: string, law: string, family: Mixed])[] = [
  [
    'two drivers exchange their masses',
    'the network has the numbers of the driver',
    swapped({ 'Mms low': 'Mms high', 'Mms high': 'Mms low' }),
  ],
  [
    'two drivers exchange their coils',
    'the network has the numbers of the driver',
    swapped({ 'Re low': 'Re high', 'Re high': 'Re low' }),
  ],
  [
    'two chambers exchange their air',
    'the air of a box is the stated volume',
    swapped({ 'Cab big': 'Cab little', 'Cab little': 'Cab big' }),
  ],
  [
    'one cone told as two',
    'the velocity of a cone is that of a motor',
    {
      ...mixedFamily,
      topology: (spec) => {
        const { probes, ...topology } = mixedFamily.topology(spec);
        return { ...topology, probes: { ...probes, 'coneVelocity high': { of: 'potential', node: 'cone low' } } };
      },
    },
  ],
  [
    'two currents exchanged',
    'the current is that of the source',
    {
      ...mixedFamily,
      topology: (spec) => {
        const { probes, ...topology } = mixedFamily.topology(spec);
        const { 'current low': low, 'current high': high } = probes;
        return {
          ...topology,
          probes: { ...probes, ...(low && { 'current high': low }), ...(high && { 'current low': high }) },
        };
      },
    },
  ],
  [
    'two velocities exchanged',
    'the network has the numbers of the driver',
    {
      ...mixedFamily,
      topology: (spec) => {
        const { probes, ...topology } = mixedFamily.topology(spec);
        const { 'coneVelocity low': low, 'coneVelocity high': high } = probes;
        return {
          ...topology,
          probes: { ...probes, ...(low && { 'coneVelocity high': low }), ...(high && { 'coneVelocity low': high }) },
        };
      },
    },
  ],
  [
    'a driver that plays into the chamber of the other',
    'the driver plays into its own chamber',
    {
      ...mixedFamily,
      topology: (spec) => {
        const { elements, ...topology } = mixedFamily.topology(spec);
        return {
          ...topology,
          elements: elements.map((one) =>
            one.kind === 'piston' && one.name === 'Sd high' ? { ...one, rear: 'box big' } : one,
          ),
        };
      },
    },
  ],
  [
    'a cone that is not heard',
    'air either leaves or is stored',
    {
      ...mixedFamily,
      topology: (spec) => {
        const { outlets, ...topology } = mixedFamily.topology(spec);
        return { ...topology, outlets: outlets.filter(({ name }) => name !== 'cone high') };
      },
    },
  ],
];
