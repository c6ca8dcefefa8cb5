/** Networks that everything is asked of which a network can answer. Every driver is invented. */
import { standardAir } from '@airspring/core/air';
import { completeDriver, type Driver } from '@airspring/core/driver';
import { compileSteppedLine, flaredProfile } from '@airspring/core/duct';
import {
  boxCompliance,
  closedBox,
  lineBox,
  lineVentedBox,
  mixedBox,
  type System,
  ventedBox,
} from '@airspring/core/enclosure';
import { compile, type Law, type Network } from '@airspring/core/network';
import { compileVentAdmittance } from '@airspring/core/vent';
import {
  chained,
  listed,
  type Numbered,
  networkOf,
  outletsOf,
  part,
  partsOf,
  probesOf,
} from '../arbitrary/network-of.js';

const sheet = completeDriver({ fs: '27 Hz', Qts: 0.36, Qes: 0.4, Vas: '62 L', Sd: '330 cm²', Re: '5.6 Ω' });
if (!sheet.ok) throw new Error(sheet.because[0]?.text);
export const driver: Driver = sheet.driver;

/** An eddy-current coil: K (jω)^n in series with it, a short for the reference. */
export const eddy = (name: string, nodes: readonly [string, string]): Law => ({
  kind: 'law',
  name,
  nodes,
  stands: 'impedance',
  inReference: false,
  parameters: ['K', 'n'],
  fill: (values, at, frequencies, { re, im }) => {
    const [K, n] = [values[at]!, values[at + 1]!];
    frequencies.forEach((f, i) => {
      const size = K * (2 * Math.PI * f) ** n;
      re[i] = size * Math.cos((n * Math.PI) / 2);
      im[i] = size * Math.sin((n * Math.PI) / 2);
    });
  },
});

/** A network with such a coil in series with the motor of each name. */
export function withEddy(network: Network, values: readonly number[], motors: readonly string[] = ['Bl']): Network {
  const parts = partsOf(network).flatMap((one): Numbered[] => {
    if (one.kind !== 'motor' || !motors.includes(one.name)) return [one];
    const [from, to] = one.electrical;
    const gap = `gap of ${one.name}`;
    return [
      { ...eddy(`eddy ${one.name}`, [from, gap]), values },
      { ...one, electrical: [gap, to] },
    ];
  });
  return networkOf(parts, probesOf(network), outletsOf(network));
}

const vented = ventedBox({
  drivers: driver,
  netVolume: '45 L',
  fb: '28 Hz',
  QL: 7,
  QA: 60,
  QP: 80,
  ventArea: '50 cm²',
});
const six = { ...{ Sd: '130 cm²', Mms: '14 g', Cms: '0.8 mm/N', Rms: '1 N·s/m', Re: '6.2 ohm', Bl: '7 T·m' } } as const;
const unlike = mixedBox({
  drivers: {
    parallel: [
      { name: 'low', driver, chamber: 'below' },
      { name: 'wide', driver: six as unknown as Driver, chamber: 'above' },
    ],
  },
  chambers: { below: { netVolume: '45 L', fb: '28 Hz', ventArea: '50 cm²', QL: 7 }, above: { netVolume: '8 L' } },
});

/** Two coils, each with its own eddy currents, around one cone. */
const twoCoils = (() => {
  const { Re, Bl } = driver;
  const parts = partsOf(vented.network).flatMap((one): Numbered[] => {
    if (one.name === 'Re') {
      return [1, 2].flatMap((k): Numbered[] => [
        part('resistor', `Re ${k}`, ['drive', `coil ${k}`], 2 * Re),
        { ...eddy(`eddy ${k}`, [`coil ${k}`, `gap ${k}`]), values: [0.02, 0.7] },
        {
          kind: 'motor',
          name: `Bl ${k}`,
          electrical: [`gap ${k}`, 'ground'],
          mechanical: ['cone', 'ground'],
          values: k === 1 ? Bl : 0.9 * Bl,
        },
      ]);
    }
    return one.name === 'Bl' ? [] : [one];
  });
  return networkOf(parts, probesOf(vented.network), outletsOf(vented.network));
})();

/** The vented box with something else for its vent, its mouth joined to the air outside by a meter. */
const withVent = (vent: Numbered, mouth: boolean): Network => {
  const { ventAirSpeed: _, ...probes } = probesOf(vented.network);
  const parts = partsOf(vented.network).filter(({ name }) => name !== 'vent' && name !== 'ventLoss');
  const meter: Numbered = { kind: 'meter', name: 'mouth', nodes: ['mouth', 'ground'] };
  return networkOf([...parts, vent, ...(mouth ? [meter] : [])], probes, [
    ...outletsOf(vented.network).filter(({ name }) => name !== 'vent'),
    { name: 'vent', flow: { of: 'flow', element: mouth ? 'mouth' : 'vent' } },
  ]);
};

const tube = compileVentAdmittance({ vent: { diameter: '80 mm', length: '25 cm' } });
const flare = compileSteppedLine(flaredProfile({ diameter: '70 mm', length: '20 cm', outerFlare: '20 mm' }));

/** Two lossless tubes of unlike bore, one after the other: a chain matrix of its own, and two lines for the simulator. */
const steppedLine: Numbered = {
  kind: 'line',
  name: 'steps',
  nodes: ['box', 'mouth'],
  parameters: ['near impedance', 'near delay', 'far impedance', 'far delay'],
  values: [8e4, 0.4e-3, 5e4, 0.7e-3],
  fill: (values, at, frequencies, { A, B, C, D }) => {
    const [Y, s, Z, t] = [0, 1, 2, 3].map((k) => values[at + k]!) as [number, number, number, number];
    frequencies.forEach((f, i) => {
      const [a, b] = [2 * Math.PI * f * s, 2 * Math.PI * f * t];
      A.re[i] = Math.cos(a) * Math.cos(b) - (Y / Z) * Math.sin(a) * Math.sin(b);
      B.im[i] = Z * Math.cos(a) * Math.sin(b) + Y * Math.sin(a) * Math.cos(b);
      C.im[i] = (Math.sin(a) * Math.cos(b)) / Y + (Math.cos(a) * Math.sin(b)) / Z;
      D.re[i] = Math.cos(a) * Math.cos(b) - (Z / Y) * Math.sin(a) * Math.sin(b);
    });
  },
  netlist: ([Y, s, Z, t], name, [a, b]) => [
    `T_${name}_near ${a} 0 ${name}_step 0 Z0=${Y} TD=${s}`,
    `T_${name}_far ${name}_step 0 ${b} 0 Z0=${Z} TD=${t}`,
  ],
};

/** A driver between a closed chamber and one with a vent, which alone plays outside: a band-pass of fourth order. */
export const bandPass: System = (() => {
  const air = standardAir;
  const rear = boxCompliance(0.025, 1, air);
  const front = boxCompliance(0.02, 1, air);
  const vent = 1 / ((2 * Math.PI * 48) ** 2 * front);
  const parts = partsOf(closedBox({ drivers: driver, netVolume: '25 L' }).network).map(
    (one): Numbered => (one.kind === 'piston' ? { ...one, front: 'front' } : one),
  );
  const { coneVelocity, current, terminalVoltage } = probesOf(vented.network);
  const network = networkOf(
    [
      ...parts.filter(({ name }) => name !== 'Cab'),
      part('acousticCompliance', 'rear', ['box', 'ground'], rear),
      part('acousticCompliance', 'front', ['front', 'ground'], front),
      part('acousticResistance', 'frontLeak', ['front', 'ground'], 15 / (2 * Math.PI * 48 * front)),
      part('acousticMass', 'vent', ['front', 'ground'], vent),
    ],
    { coneVelocity: coneVelocity!, current: current!, terminalVoltage: terminalVoltage! },
    [{ name: 'vent', flow: { of: 'flow', element: 'vent' } }],
  );
  return { family: 'band-pass of fourth order', spec: {}, air, network, compile };
})();

/** Two uniform parts without loss, the driver along the first and the opening in the second: four tubes for the simulator. */
export const uniformLine = lineBox({
  drivers: driver,
  parts: [
    { length: '1.1 m', area: '400 cm²', wallLoss: 0 },
    { length: '1.5 m', area: '250 cm²', wallLoss: 0 },
  ],
  driverAt: '35 cm',
  opening: { at: '2.3 m', area: '120 cm²' },
  sourceResistance: '0.2 ohm',
});
/** Two tubes without loss on a box that leaks and absorbs. */
export const tubeVented = lineVentedBox({
  drivers: driver,
  netVolume: '45 L',
  vent: { diameter: '60 mm', length: '42 cm', count: 2, wallLoss: 0 },
  QL: 7,
  QA: 60,
  sourceResistance: '0.2 ohm',
});
const taperedLine = lineBox({
  drivers: driver,
  parts: [{ length: '1.6 m', area: '400 cm²', wedgeTo: '250 cm²', flowResistivity: '800 Pa·s/m²' }],
  driverAt: '35 cm',
  opening: {},
});

export interface SeamCase {
  readonly network: Network;
  /** Whether it has states. */
  readonly lumped: boolean;
  /** Whether polynomials are its road. */
  readonly polynomials: boolean;
  /** What its netlist cannot say. */
  readonly unwritten?: readonly string[];
}

export const seamCases: Readonly<Record<string, SeamCase>> = {
  closed: {
    network: closedBox({ drivers: driver, netVolume: '30 L', QL: 12, sourceResistance: '0.2 ohm' }).network,
    lumped: true,
    polynomials: true,
  },
  vented: { network: vented.network, lumped: true, polynomials: true },
  'two unlike drivers in two chambers': { network: unlike.network, lumped: true, polynomials: true },
  'vented with two lossy coils': {
    network: twoCoils,
    lumped: false,
    polynomials: true,
    unwritten: ['eddy_1', 'eddy_2'],
  },
  'two unlike drivers, each with a lossy coil': {
    network: withEddy(unlike.network, [0.02, 0.7], ['Bl low', 'Bl wide']),
    lumped: false,
    polynomials: true,
    unwritten: ['eddy_Bl_low', 'eddy_Bl_wide'],
  },
  'vent as a lossy line': {
    network: withVent(listed('vent', ['box', 'ground'], tube), false),
    lumped: false,
    polynomials: true,
    unwritten: ['vent'],
  },
  'stepped line': { network: withVent(steppedLine, true), lumped: false, polynomials: false },
  'flared vent with friction, a line': {
    network: withVent(chained('vent', ['box', 'mouth'], flare), true),
    lumped: false,
    polynomials: false,
    unwritten: ['vent'],
  },
  'driver in a uniform line': { network: uniformLine.network, lumped: false, polynomials: false },
  'vented by a tube without loss': { network: tubeVented.network, lumped: false, polynomials: false },
  'driver in a tapered line with a fill': {
    network: taperedLine.network,
    lumped: false,
    polynomials: false,
    unwritten: ['duct_1', 'duct_2'],
  },
  'band-pass of fourth order': { network: bandPass.network, lumped: true, polynomials: true },
};

export { vented as seamVented };
