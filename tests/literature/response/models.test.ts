/** A closed box with models of coil and suspension, against the equations of its circuit worked out by models.py. */
import { type Air, standardAir } from '@airspring/core/air';
import {
  type CoilModel,
  type Driver,
  fourParameterInductor,
  hystereticDamping,
  logarithmicCreep,
  lossyInductor,
  lr2Inductor,
  type SuspensionModel,
  semiInductor,
} from '@airspring/core/driver';
import { closedBox, type System } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { complexGradient, cutoff, respond, stepResponse } from '@airspring/core/response';
import { expect, test } from 'vitest';
import { checkIn } from '../../ledger/check.js';
import fixture from './models.json' with { type: 'json' };

const air: Air = { ...standardAir, density: si('density', 1.2), speedOfSound: si('speed', 343) };
const check = checkIn(air);
type Make<Model> = Readonly<Record<string, (numbers: never) => Model>>;
const coils: Make<CoilModel> = { lossyInductor, semiInductor, fourParameterInductor, lr2Inductor };
const suspensions: Make<SuspensionModel> = {
  logarithmicCreep: ({ lambda, frequency }: { readonly lambda: number; readonly frequency: never }) =>
    logarithmicCreep({ lambda, at: frequency }),
  hystereticDamping,
};
const { frequencies, times, netVolume } = fixture;
const source = {
  key: 'mpmath',
  locator: 'circuit of driver and box (small1972closed1) with the models; script models.py',
} as const;

for (const one of fixture.cases) {
  const { coil, suspension, f3, pressure, step } = one;
  // Made anew each time it is asked for, so that what is checked is what is made.
  const box = (): System => {
    const models = {
      coil: coils[coil]?.(one.coilNumbers as never),
      suspension: suspensions[suspension]?.(one.suspensionNumbers as never),
    };
    return closedBox(
      { drivers: { ...fixture.driver, ...models } as unknown as Driver, netVolume: si('volume', netVolume) },
      air,
    );
  };
  const name = [coil, suspension].filter((one) => one !== 'none').join('-');
  const shared = {
    source,
    status: 'derived',
    kind: 'program',
    given: { coil: { value: coil, unit: '' }, suspension: { value: suspension, unit: '' } },
  } as const;
  const rounding = { relative: 1e-13, why: 'the same closed form; rounding' };
  check(`response.models.${name}.pressure`, {
    ...shared,
    formula: 'response/respond',
    got: () => respond(box(), frequencies).levelHalfSpace.map((level) => 20e-6 * 10 ** (level / 20)),
    expected: pressure,
    unit: 'Pa',
    tolerance: rounding,
  });
  check(`response.models.${name}.impedance`, {
    ...shared,
    formula: 'response/respond',
    got: () => {
      const { impedance, impedancePhase } = respond(box(), frequencies);
      return [...impedance].flatMap((size, i) => [
        size * Math.cos(impedancePhase[i]!),
        size * Math.sin(impedancePhase[i]!),
      ]);
    },
    expected: one.impedance.flat(),
    unit: 'Ω',
    tolerance: { relative: 1e-13, why: 'the same closed form; rounding of a phase' },
  });
  check(`response.models.${name}.f3`, {
    ...shared,
    formula: 'response/cutoff',
    got: () => {
      const found = cutoff(box());
      return found.ok ? found.frequency : Number.NaN;
    },
    expected: f3,
    unit: 'Hz',
    tolerance: { relative: 4e-12, why: 'both solved to rounding' },
  });
  const { f, ...slopes } = one.slopes as unknown as Readonly<Record<string, readonly number[]>> & {
    readonly f: number;
  };
  check(`response.models.${name}.gradient`, {
    ...shared,
    formula: 'response/complexGradient',
    got: () => {
      const found = complexGradient(box(), 'radiatedFlow', si('frequency', f));
      if (!found.ok) return Number.NaN;
      const { re, im } = found.value;
      return Object.keys(slopes).flatMap((key) => {
        const by = found.byElement[key] ??
          found.byElement[key.slice(key.indexOf('.') + 1)] ?? { re: Number.NaN, im: 0 };
        const size = re * re + im * im;
        return [(by.re * re + by.im * im) / size, (by.im * re - by.re * im) / size];
      });
    },
    expected: Object.values(slopes).flat(),
    unit: '1',
    tolerance: { relative: 2e-12, why: 'exact slopes of the same closed form; rounding' },
  });
  if (step === null) continue;
  const most = Math.max(...step.map(Math.abs));
  const circuit = coil === 'lr2Inductor';
  check(`response.models.${name}.step`, {
    ...shared,
    source: { ...source, locator: `${source.locator}, inverse Laplace transform` },
    formula: 'response/stepResponse',
    got: () => {
      const { pressure } = stepResponse(box(), { until: '80 ms', points: 81 });
      return times.map((time) => pressure[Math.round(1000 * time)]!);
    },
    expected: step,
    unit: 'Pa',
    tolerance: circuit
      ? { absolute: 2e-14 * most, why: 'a circuit is exact: rounding of the exponential of a matrix' }
      : { absolute: 1e-6 * most, why: 'a fit that is off by up to 6e-6 of the pressure at single frequencies' },
  });
  test(`${name}: the step response tells its fit, or needs none`, () => {
    const { fit } = stepResponse(box(), { until: '10 ms', points: 11 });
    if (circuit) expect(fit).toBeUndefined();
    else {
      expect(fit).toMatchObject({ from: 1, to: 20_000 });
      expect(fit?.greatestError).toBeGreaterThan(1e-9);
      expect(fit?.greatestError).toBeLessThan(1e-5);
    }
  });
}
