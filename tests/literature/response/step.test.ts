import { type Air, standardAir } from '@airspring/core/air';
import type { Driver } from '@airspring/core/driver';
import { closedBox, type System, ventedBox } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { stepResponse } from '@airspring/core/response';
import { checkIn } from '../../ledger/check.js';
import fixture from './step.json' with { type: 'json' };

const air: Air = { ...standardAir, density: si('density', 1.2), speedOfSound: si('speed', 343) };
const check = checkIn(air);
const drivers = fixture.driver as unknown as Driver;
const systems: Record<'closed' | 'vented', System> = {
  closed: closedBox({ drivers, netVolume: '40 L' }, air),
  vented: ventedBox({ drivers, netVolume: '60 L', fb: '28 Hz', QL: 7, QP: 60 }, air),
};
for (const [name, system] of Object.entries(systems)) {
  const expected = fixture.boxes[name as keyof typeof fixture.boxes].pressure;
  check(`response.step.${name}`, {
    formula: 'response/stepResponse',
    source: { key: 'scipy', locator: 'signal.step on the equations of motion; script step.py' },
    status: 'derived',
    kind: 'program',
    given: { family: { value: name, unit: '' }, drive: { value: 1, unit: 'V' } },
    got: () => stepResponse(system, { until: '0.1 s', points: fixture.points }).pressure.filter((_, i) => i % 10 === 0),
    expected,
    unit: 'Pa',
    tolerance: {
      absolute: name === 'closed' ? 2e-13 : 2e-14,
      why: 'rounding of the exponential of a matrix, largest value 0.05',
    },
  });
}
