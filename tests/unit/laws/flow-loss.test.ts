/** Our losses of flow obey every law of losses; planted liars are found by the law that is named for it. */
import { type FlowLoss, lossesTogether, quadraticLoss, turbulentWall } from '@airspring/core/duct';
import { flowLossLaws } from '@airspring/core/laws';
import { ventLoss } from '@airspring/core/vent';
import { expect, test } from 'vitest';
import { brokenLaws } from './boxes.js';

const vent = { diameter: '75 mm', length: '40 cm', wall: '3 mm' } as const;
const bend = { angle: '90 deg', centreLineRadius: '80 mm' } as const;
const walls = turbulentWall({ diameter: '50 mm', length: '2 m', roughness: '0.3 mm' });
const { low, nominal, high } = ventLoss({ vent: { ...vent, bend } });

test.each([
  ['a quadratic one', quadraticLoss({ outward: 1.5, inward: 2 })],
  ['none', quadraticLoss({ outward: 0 })],
  ['walls', walls],
  ['two together', lossesTogether([quadraticLoss({ outward: 0.5 }), walls])],
  ['the least of a vent', low],
  ['that of a vent', nominal],
  ['the greatest of a vent', high],
] as const)('%s', (_, loss) => {
  expect(brokenLaws(flowLossLaws(loss))).toEqual([]);
});

const lie = (resistance: FlowLoss['resistance'], sources: readonly string[] = ['own']): FlowLoss => ({
  name: 'mine',
  sources,
  resistance,
});
let calls = 0;
test.each([
  ['a division by the speed', 'is finite, in still air too', lie((u) => 1 / u)],
  ['a source of energy', 'never gives energy', lie((u) => u - 1)],
  ['a loss that gives way', 'loses no less pressure at a greater speed', lie((u) => 100 / (1 + u ** 3))],
  ['a step of 5 Pa·s/m at 10 m/s', 'does not jump', lie((u) => (u > 10 ? 5 : 0.1 * u))],
  ['other at each call', 'gives the same answer twice', lie((u) => u + 1e-9 * ++calls)],
  ['nobody', 'has a name and sources', lie((u) => u, undefined as never)],
] as const)('%s: %s', (_, law, loss) => {
  expect(
    brokenLaws(flowLossLaws({ ...loss, ...(law === 'has a name and sources' && { sources: undefined as never }) })),
  ).toContain(law);
});

test('a loss that is off by 5 % from a known value is found', () => {
  const known = [{ airSpeedPeak: 10, frequency: 30, resistance: 7.64 }];
  const rho = { ...quadraticLoss({ outward: 1.5 }) };
  expect(brokenLaws(flowLossLaws(rho, { known }))).toEqual([]);
  const off = lie((u, f, air) => 1.05 * rho.resistance(u, f, air));
  expect(brokenLaws(flowLossLaws(off, { known }))).toEqual(['agrees with known values']);
});
