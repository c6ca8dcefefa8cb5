/** Networks that both roads solve. Every driver is invented. */
import { type Driver, driver, group, lr2Inductor } from '@airspring/core/driver';
import { closedBox, type System, ventedBox } from '@airspring/core/enclosure';
import { compile, losslessLine, type Network } from '@airspring/core/network';
import { type Numbered, networkOf, outletsOf, part, partsOf, probesOf, type Scaled } from '../arbitrary/network-of.js';

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
export const lossyCoil: Driver = driver({ ...ten, coil: lr2Inductor({ Le: '0.6 mH', R2: '7 ohm', L2: '1.4 mH' }) });

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
  const each = (n: number): Numbered[] => {
    const cone = `cone ${n}`;
    const from = n % 2 === 0 ? 'drive' : `middle ${(n - 1) / 2}`;
    const to = n % 2 === 0 ? `middle ${n / 2}` : 'ground';
    return [
      part('resistor', `Re ${n}`, [from, `coil ${n}`], ten.Re),
      { kind: 'motor', name: `Bl ${n}`, electrical: [`coil ${n}`, to], mechanical: [cone, 'ground'], values: ten.Bl },
      part('mass', `Mms ${n}`, [cone, 'ground'], ten.Mms),
      part('spring', `Cms ${n}`, [cone, 'ground'], ten.Cms),
      part('damper', `Rms ${n}`, [cone, 'ground'], ten.Rms),
      { kind: 'piston', name: `Sd ${n}`, mechanical: [cone, 'ground'], front: 'ground', rear: 'box', values: ten.Sd },
    ];
  };
  const Cab = partsOf(fourTogether().network).find(({ name }) => name === 'Cab') as Numbered;
  const probes: Record<string, Scaled> = {
    radiatedFlow: { of: 'flow', element: 'Cab', sign: -1 },
    coneVelocity: { of: 'potential', node: 'cone 3' },
    current: { of: 'flow', element: 'drive' },
  };
  return networkOf(
    [{ kind: 'source', name: 'drive', nodes: ['drive', 'ground'] }, ...[0, 1, 2, 3].flatMap(each), Cab],
    probes,
  );
})();

export function fourTogether(): System {
  return closedBox({ drivers: group(ten, { series: 2, parallel: 2 }), netVolume: '150 L' });
}

/** A stranger's box: its own list of elements, a passive radiator in a leaking box and a capacitor before the driver. */
export const stranger: System = (() => {
  const Cab = 3.9e-7;
  const elements: Numbered[] = [
    { kind: 'source', name: 'amplifier', nodes: ['out', 'ground'] },
    part('capacitor', 'in series', ['out', 'in'], 1.2e-3),
    part('resistor', 'coil', ['in', 'gap'], 5.6),
    { kind: 'motor', name: 'motor', electrical: ['gap', 'ground'], mechanical: ['cone', 'ground'], values: 14.3 },
    part('mass', 'moving', ['cone', 'ground'], 0.086),
    part('spring', 'suspension', ['cone', 'ground'], 0.4e-3),
    part('damper', 'suspension loss', ['cone', 'ground'], 3.6),
    { kind: 'piston', name: 'cone', mechanical: ['cone', 'ground'], front: 'ground', rear: 'air', values: 0.033 },
    part('acousticCompliance', 'air', ['air', 'ground'], Cab),
    part('acousticResistance', 'leak', ['air', 'ground'], 1.5e5),
    {
      kind: 'piston',
      name: 'radiator',
      mechanical: ['radiator', 'ground'],
      front: 'ground',
      rear: 'air',
      values: 0.05,
    },
    part('mass', 'radiator mass', ['radiator', 'ground'], 0.3),
    part('spring', 'radiator suspension', ['radiator', 'ground'], 0.5e-3),
    part('damper', 'radiator loss', ['radiator', 'ground'], 2),
  ];
  const probes: Record<string, Scaled> = {
    radiatedFlow: { of: 'flow', element: 'air', sign: -1 },
    coneVelocity: { of: 'potential', node: 'cone' },
    current: { of: 'flow', element: 'amplifier' },
    terminalVoltage: { of: 'potential', node: 'in' },
    radiatorFlow: { of: 'flow', element: 'radiator' },
  };
  return { family: "a stranger's", spec: {}, air: closed.air, network: networkOf(elements, probes), compile };
})();

/** The vented box with its vent as a tube of 60 cm² and half a metre, open at its far end: modes and all. */
export const tubed: Network = (() => {
  const { density, speedOfSound } = vented.air;
  const parts: readonly Numbered[] = [
    ...partsOf(vented.network).filter(({ name }) => name !== 'vent' && name !== 'ventLoss'),
    { ...losslessLine('tube', ['box', 'mouth']), values: [(density * speedOfSound) / 60e-4, 0.5 / speedOfSound] },
    { kind: 'meter', name: 'mouth', nodes: ['mouth', 'ground'] },
  ];
  const { ventAirSpeed: _, ...probes } = probesOf(vented.network);
  return networkOf(parts, { ...probes, intoBox: { of: 'flow', element: 'Cab' } }, [
    ...outletsOf(vented.network).filter(({ name }) => name !== 'vent'),
    { name: 'mouth', flow: { of: 'flow', element: 'mouth' } },
  ]);
})();
