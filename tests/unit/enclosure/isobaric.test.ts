/** An isobaric pair has the front of one driver, and twice its mass, stiffness and motor. Every family takes one. */
import { type Driver, type DriverGroup, driver, group } from '@airspring/core/driver';
import {
  aperiodicBox,
  capacitorBox,
  closedBox,
  fourthOrderBandPass,
  infiniteBaffle,
  mixedBox,
  openBaffle,
  parallelBandPass,
  passiveRadiatorBox,
  type System,
  seriesBandPass,
  ventedBox,
} from '@airspring/core/enclosure';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import { compiledSystem, probeColumns } from '@airspring/core/response';
import { expect, test } from 'vitest';
import { worst } from '../../circuit/compare.js';

/** Invented. */
const one = driver({
  Sd: '330 cm²',
  Mms: '86 g',
  Cms: '0.4 mm/N',
  Rms: '3.6 N·s/m',
  Re: '5.6 ohm',
  Bl: '14.3 T·m',
  Le: '0.6 mH',
});
const pair = group(one, { parallel: 2, isobaric: true });
const radiator = { Sd: 0.045, Mms: 0.2, Cms: 6e-4, Rms: 2 };

type Make = (drivers: Driver | DriverGroup, half: number) => System;
const litres = (value: number) => si('volume', value / 1e3);
const sixth = (drivers: Driver | DriverGroup, half: number) => ({
  drivers,
  rearVolume: litres(40 * half),
  rearTuning: '33 Hz' as const,
  rearQL: 9,
  frontVolume: litres(18 * half),
  frontTuning: '66 Hz' as const,
  frontQP: 40,
});
/** Boxes around impedances of the air that grow as the volume shrinks. */
const families: Readonly<Record<string, Make>> = {
  closed: (drivers, half) => closedBox({ drivers, netVolume: litres(40 * half), QL: 9, QA: 40 }),
  vented: (drivers, half) => ventedBox({ drivers, netVolume: litres(60 * half), fb: '28 Hz', QL: 7 }),
  'infinite baffle': (drivers) => infiniteBaffle({ drivers }),
  'passive radiator': (drivers, half) =>
    passiveRadiatorBox({
      drivers,
      netVolume: litres(50 * half),
      QL: 9,
      radiator: {
        Sd: si('coneArea', radiator.Sd),
        Mms: si('mass', radiator.Mms / half),
        Cms: si('compliance', radiator.Cms * half),
        Rms: si('mechanicalResistance', radiator.Rms / half),
      },
    }),
  mixed: (drivers, half) =>
    mixedBox({ drivers: { name: 'low', driver: drivers }, chambers: { box: { netVolume: litres(40 * half), QL: 9 } } }),
  'fourth-order band-pass': (drivers, half) => {
    const { rearTuning: _, ...box } = sixth(drivers, half);
    return fourthOrderBandPass(box);
  },
  'sixth-order band-pass, parallel': (drivers, half) => parallelBandPass(sixth(drivers, half)),
  'sixth-order band-pass, series': (drivers, half) => seriesBandPass(sixth(drivers, half)),
  'closed with series capacitor': (drivers, half) =>
    capacitorBox({ drivers, netVolume: litres(20 * half), seriesCapacitance: si('capacitance', 7e-4 / half) }),
  aperiodic: (drivers, half) =>
    aperiodicBox({ drivers, netVolume: litres(20 * half), ventResistance: si('acousticResistance', 11e3 / half) }),
  'open baffle': (drivers) => openBaffle({ drivers, path: '45 cm' }),
};

test.each(Object.entries(families))(
  '%s: a parallel pair in half the box plays as one driver in the whole',
  (name, make) => {
    const [single, double] = [make(one, 1), make(pair, 0.5)];
    expect(single.family).toBe(name);
    const grid = logarithmicGrid(5, 500, 41);
    const [a, b] = [single, double].map((system) => probeColumns(compiledSystem(system), grid));
    expect(worst(a!.radiatedFlow!, b!.radiatedFlow!)).toBeLessThan(1e-11);
    const cone = Object.keys(a!).find((probe) => probe.startsWith('coneVelocity'))!;
    expect(worst(a![cone]!, b![cone]!)).toBeLessThan(1e-11);
  },
);
