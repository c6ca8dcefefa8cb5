import { driver } from '../packages/core/src/driver/index.js';
import { ventedBox } from '../packages/core/src/enclosure/index.js';
import { compileTopology, elementValues, type Network, type Topology } from '../packages/core/src/network/index.js';

/** The box that every row of the sweep plays: an invented ten-inch driver behind a cable, vented, all three losses. */
export const VENT_AREA = 0.006;
export const system = ventedBox({
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
export const DRIVE = 2.83;

/** `count` frequencies in 250 equal ratios a decade from 10 Hz; a circuit simulator can step through the same. */
export const frequencies = (count: number): Float64Array =>
  Float64Array.from({ length: count }, (_, i) => 10 * 10 ** (i / 250));
export const POINTS = 500;

const { radiatedFlow, coneVelocity, current } = system.network.probes as Required<typeof system.network.probes>;
/** Column set A: four complex columns (columns.md). */
export const networkA: Network = {
  elements: system.network.elements,
  probes: {
    radiatedFlow: radiatedFlow as NonNullable<typeof radiatedFlow>,
    coneVelocity: coneVelocity as NonNullable<typeof coneVelocity>,
    ventFlow: { of: 'flow', element: 'vent' },
    current: current as NonNullable<typeof current>,
  },
};
/** Column set B needs the air speed and the voltage at the terminals as well: the probes of the box itself. */
export const networkB = system.network;

/** Polynomials of a network: what all peers with our algebra are handed. */
export function polynomials(network: Network): { topology: Topology; coefficients: Float64Array } {
  const topology = compileTopology(network);
  if (topology === undefined) throw new Error('not lumped');
  const coefficients = new Float64Array((1 + topology.probes.length) * topology.width);
  topology.coefficients(elementValues(network.elements), coefficients);
  return { topology, coefficients };
}

/** Element values by name, for those who write the formulas out. */
export function values(): Readonly<Record<string, number>> {
  return Object.fromEntries(
    system.network.elements.map((element) => [
      element.name,
      'value' in element
        ? element.value
        : element.kind === 'motor'
          ? element.Bl
          : element.kind === 'piston'
            ? element.Sd
            : 1,
    ]),
  );
}
