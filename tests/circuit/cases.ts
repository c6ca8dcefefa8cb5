/** Networks that both roads solve. Every driver is invented. */
import { type Driver, driver, group } from '@airspring/core/driver';
import { closedBox, type System, ventedBox } from '@airspring/core/enclosure';
import { branch, type Element, losslessLine, type Network, type Probe } from '@airspring/core/network';

export const ten = driver({
  Sd: '330 cm²',
  Mms: '86 g',
  Cms: '0.4 mm/N',
  Rms: '3.6 N·s/m',
  Re: '5.6 ohm',
  Bl: '14.3 T·m',
  Xmax: '9 mm',
  Pe: '200 W',
});
export const lossyCoil: Driver = driver({ ...ten, Le: '0.6 mH', R2: '7 ohm', L2: '1.4 mH' });

const losses = { QL: 7, QA: 50, QP: 60 };
export const closed = closedBox({ drivers: ten, netVolume: '40 L' });
export const vented = ventedBox({ drivers: ten, netVolume: '60 L', fb: '28 Hz', ventArea: '60 cm²', ...losses });
export const systems: Readonly<Record<string, System>> = {
  closed,
  'closed with losses': closedBox({
    drivers: ten,
    netVolume: '40 L',
    fillGain: 1.2,
    QL: 15,
    QA: 10,
    sourceResistance: '0.3 ohm',
  }),
  'vented without losses': ventedBox({ drivers: ten, netVolume: '60 L', fb: '28 Hz', ventArea: '60 cm²' }),
  vented,
  'lossy coil behind a cable': ventedBox({
    drivers: lossyCoil,
    netVolume: '60 L',
    fb: '28 Hz',
    QL: 7,
    sourceResistance: '0.4 ohm',
  }),
};

/** Four drivers, two in series in each of two branches, each a part of its own: what a group stands for. */
export const fourApart: Network = (() => {
  const each = (n: number): Element[] => {
    const cone = `cone ${n}`;
    const from = n % 2 === 0 ? 'drive' : `middle ${(n - 1) / 2}`;
    const to = n % 2 === 0 ? `middle ${n / 2}` : 'ground';
    return [
      branch('resistor', `Re ${n}`, [from, `coil ${n}`], ten.Re),
      { kind: 'motor', name: `Bl ${n}`, electrical: [`coil ${n}`, to], mechanical: [cone, 'ground'], Bl: ten.Bl },
      branch('mass', `Mms ${n}`, [cone, 'ground'], ten.Mms),
      branch('spring', `Cms ${n}`, [cone, 'ground'], ten.Cms),
      branch('damper', `Rms ${n}`, [cone, 'ground'], ten.Rms),
      { kind: 'piston', name: `Sd ${n}`, mechanical: [cone, 'ground'], front: 'ground', rear: 'box', Sd: ten.Sd },
    ];
  };
  const Cab = fourTogether().network.elements.find(({ name }) => name === 'Cab') as Element;
  const probes: Record<string, Probe> = {
    radiatedFlow: { of: 'flow', element: 'Cab', factor: -1 },
    coneVelocity: { of: 'potential', node: 'cone 3' },
    current: { of: 'flow', element: 'drive' },
  };
  return {
    elements: [{ kind: 'source', name: 'drive', nodes: ['drive', 'ground'] }, ...[0, 1, 2, 3].flatMap(each), Cab],
    probes,
  };
})();

export function fourTogether(): System {
  return closedBox({ drivers: group(ten, { series: 2, parallel: 2 }), netVolume: '150 L' });
}

/** A stranger's box: its own list of elements, a passive radiator in a leaking box and a capacitor before the driver. */
export const stranger: System = (() => {
  const Cab = 3.9e-7;
  const elements: Element[] = [
    { kind: 'source', name: 'amplifier', nodes: ['out', 'ground'] },
    branch('capacitor', 'in series', ['out', 'in'], 1.2e-3),
    branch('resistor', 'coil', ['in', 'gap'], 5.6),
    { kind: 'motor', name: 'motor', electrical: ['gap', 'ground'], mechanical: ['cone', 'ground'], Bl: 14.3 },
    branch('mass', 'moving', ['cone', 'ground'], 0.086),
    branch('spring', 'suspension', ['cone', 'ground'], 0.4e-3),
    branch('damper', 'suspension loss', ['cone', 'ground'], 3.6),
    { kind: 'piston', name: 'cone', mechanical: ['cone', 'ground'], front: 'ground', rear: 'air', Sd: 0.033 },
    branch('acousticCompliance', 'air', ['air', 'ground'], Cab),
    branch('acousticResistance', 'leak', ['air', 'ground'], 1.5e5),
    { kind: 'piston', name: 'radiator', mechanical: ['radiator', 'ground'], front: 'ground', rear: 'air', Sd: 0.05 },
    branch('mass', 'radiator mass', ['radiator', 'ground'], 0.3),
    branch('spring', 'radiator suspension', ['radiator', 'ground'], 0.5e-3),
    branch('damper', 'radiator loss', ['radiator', 'ground'], 2),
  ];
  const probes: Record<string, Probe> = {
    radiatedFlow: { of: 'flow', element: 'air', factor: -1 },
    coneVelocity: { of: 'potential', node: 'cone' },
    current: { of: 'flow', element: 'amplifier' },
    terminalVoltage: { of: 'potential', node: 'in' },
    radiatorFlow: { of: 'flow', element: 'radiator' },
  };
  return { spec: { family: "a stranger's" }, air: closed.air, network: { elements, probes } };
})();

/** The vented box with its vent as a tube of 60 cm² and half a metre, open at its far end: modes and all. */
export const tubed: Network = (() => {
  const { density, speedOfSound } = vented.air;
  const tube = losslessLine('tube', ['box', 'ground'], (density * speedOfSound) / 60e-4, 0.5 / speedOfSound);
  const kept = vented.network.elements.filter(({ name }) => name !== 'vent' && name !== 'ventLoss');
  const { ventAirSpeed: _, ...probes } = vented.network.probes;
  return { elements: [...kept, tube], probes };
})();
