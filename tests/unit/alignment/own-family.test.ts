/** A family of a stranger, made as the page about families says, has alignments too. */
import { quasiThirdOrder, solveAlignment } from '@airspring/core/alignment';
import { type Driver, type DriverGroup, group } from '@airspring/core/driver';
import {
  asGroup,
  boxCompliance,
  type Drivers,
  directRadiator,
  equivalentDriver,
  type Family,
  setDirectRadiator,
  ventedFamily,
} from '@airspring/core/enclosure';
import { branch, compile } from '@airspring/core/network';
import { type Resistance, si, type Volume } from '@airspring/core/quantity';
import { expect, test } from 'vitest';
import { driver } from '../laws/boxes.js';

interface Spec {
  readonly drivers: DriverGroup;
  readonly netVolume: Volume;
  readonly fb: number;
  readonly sourceResistance: Resistance;
}
type Input = Omit<Spec, 'drivers' | 'sourceResistance'> & { readonly drivers: Drivers };

const familyWith = (driverOf: (drivers: DriverGroup) => Driver): Family<Spec, Input> => ({
  name: 'bare vented',
  compile,
  unknowns: [
    {
      field: 'netVolume',
      unit: ({ Cms, Sd }, { density, speedOfSound }) => density * speedOfSound ** 2 * Cms * Sd ** 2,
      starts: [0.2, 1, 5],
    },
    { field: 'fb', unit: ({ Mms, Cms }) => 1 / (2 * Math.PI * Math.sqrt(Mms * Cms)), starts: [0.7, 1, 1.5] },
  ],
  read: (input) => ({ ...input, drivers: asGroup(input.drivers), sourceResistance: si('resistance', 0) }),
  topology: ({ drivers, sourceResistance }) => {
    const { elements, probes, cone } = directRadiator(driverOf(drivers), sourceResistance);
    const air = [
      branch('acousticCompliance', 'Cab', ['box', 'ground']),
      branch('acousticMass', 'vent', ['box', 'ground']),
    ];
    const outlets = [cone, { name: 'vent', flow: { of: 'flow', element: 'vent' } }] as const;
    return { elements: [...elements, ...air], probes, outlets };
  },
  values: ({ drivers, netVolume, fb, sourceResistance }, air, set) => {
    const Cab = boxCompliance(netVolume, 1, air);
    setDirectRadiator(driverOf(drivers), sourceResistance, set);
    set('Cab', Cab);
    set('vent', 1 / ((2 * Math.PI * fb) ** 2 * Cab));
  },
});

const { Le: _, ...bare } = driver as Driver & { Le?: unknown };
const drivers = group(bare as Driver);

test('its driver is that of the spec, which a search changes', () => {
  const [own, ours] = [
    solveAlignment(quasiThirdOrder, familyWith(equivalentDriver), { drivers }),
    solveAlignment(quasiThirdOrder, ventedFamily, { drivers }),
  ];
  if (!own.ok || !ours.ok) throw new Error('no box');
  expect(own.system.spec.netVolume / ours.system.spec.netVolume).toBeCloseTo(1, 9);
  expect(own.system.spec.fb / ours.system.spec.fb).toBeCloseTo(1, 9);
});

test('a family that keeps the driver it was first made with is refused, and not told to have no box', () => {
  expect(() =>
    solveAlignment(
      quasiThirdOrder,
      familyWith(({ driver: one }) => one),
      { drivers },
    ),
  ).toThrow(/family\.values: got "bare vented"; expected numbers that follow spec\.drivers\.equivalent/);
});
