/** The elimination plan where it could go wrong: exactly at fb, without losses, with nothing but losses, long chains, lines. */
import { type ClosedBoxInput, type System, ventedBox } from '@airspring/core/enclosure';
import { compile, losslessLine } from '@airspring/core/network';
import type { ComplexColumn } from '@airspring/core/numeric';
import { frequencyGrid, si } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import { expect } from 'vitest';
import { ventedBoxArbitrary } from '../../arbitrary/box.js';
import {
  listed,
  type Numbered,
  networkOf,
  part,
  partsOf,
  type Scaled,
  withProbes,
} from '../../arbitrary/network-of.js';
import { fc, test } from '../../arbitrary/property.js';
import { byPlan, byPolynomials, largest, minus, worst } from '../../circuit/compare.js';

const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const source: Numbered = { kind: 'source', name: 'drive', nodes: ['in', 'ground'] };
const close = (got: number, expected: number, relative: number) =>
  expect(Math.abs(got - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));

/** Of the largest value: where the cone stands still both roads have nothing but rounding. */
const apart = (a: ComplexColumn, b: ComplexColumn) => largest(minus(a, b)) / largest(a);

test.prop([ventedBoxArbitrary, fc.boolean()])('at fb, and a millionth beside it: both roads', (input, lossless) => {
  const { QL: _1, QA: _2, QP: _3, ...bare } = input;
  const { network, spec } = ventedBox(lossless ? bare : input);
  const { fb } = spec as { fb: number };
  const grid = Float64Array.from([0.5, 0.999, 0.999999, 1, 1.000001, 1.001, 2], (x) => x * fb);
  const [a, b] = [byPolynomials(network, grid), byPlan(network, grid)];
  for (const name of Object.keys(a)) expect(apart(a[name]!, b[name]!), name).toBeLessThan(1e-12);
});

test.prop([ventedBoxArbitrary])('so much loss that nothing moves: both roads, and the coil alone is left', (input) => {
  const drivers = { ...(input.drivers as object), Rms: si('mechanicalResistance', 1e6) } as typeof input.drivers;
  const { network, spec } = ventedBox({ ...input, drivers, QL: 1e-3, QA: 1e-3, QP: 1e-3 });
  const grid = Float64Array.of(5, 20, 50, 200);
  const [a, b] = [byPolynomials(network, grid), byPlan(network, grid)];
  for (const name of Object.keys(a)) expect(apart(a[name]!, b[name]!), name).toBeLessThan(1e-9);
  const { equivalent } = (spec as { drivers: { equivalent: { Re: number; Bl: number } } }).drivers;
  const { impedance, impedancePhase } = respond(
    { family: 'vented', spec, network, air: ventedBox(input).air, compile },
    grid,
  );
  // What the held cone leaves of the motor is Bl²/Rms at most.
  const resistance = impedance.map((Z, i) => Z * Math.cos(impedancePhase[i]!));
  expect(Math.min(...resistance)).toBeGreaterThanOrEqual(equivalent.Re * (1 - 1e-12));
  expect(resistance[0]!).toBeLessThanOrEqual(equivalent.Re * 1.5 + equivalent.Bl ** 2 / 1e6);
});

/** A chain of equal links, by the powers of its chain matrix: u, i at the near end from those at the far one. */
test.prop([fc.integer({ min: 1, max: 120 }), size(0.05, 20), size(0.05, 20), size(1, 1000)], { numRuns: 50 })(
  'a long chain is the product of its links, also where it lets nothing through',
  (links, x, y, loss) => {
    const elements = Array.from({ length: links }, (_, k): Numbered[] => [
      part('inductor', `L${k}`, [k === 0 ? 'in' : `n${k}`, `n${k + 1}`], x / (2 * Math.PI * 50)),
      part('capacitor', `C${k}`, [`n${k + 1}`, 'ground'], y / (2 * Math.PI * 50)),
      part('resistor', `R${k}`, [`n${k + 1}`, 'ground'], loss),
    ]).flat();
    const probes: Record<string, Scaled> = {
      current: { of: 'flow', element: 'drive' },
      far: { of: 'potential', node: `n${links}` },
    };
    const { current, far } = byPlan(networkOf([source, ...elements], probes), Float64Array.of(50));
    type C = readonly [number, number];
    const times = ([a, b]: C, [c, d]: C): C => [a * c - b * d, a * d + b * c];
    const plus = ([a, b]: C, [c, d]: C): C => [a + c, b + d];
    let [u, i]: [C, C] = [
      [1, 0],
      [0, 0],
    ];
    for (let k = 0; k < links; k++) {
      i = plus(i, times([1 / loss, y], u));
      u = plus(u, times([0, x], i));
      const scale = 1 / Math.max(1, Math.hypot(...u) / 1e100);
      if (scale < 1) return; // beyond double precision
    }
    const over = ([a, b]: C, [c, d]: C): C => {
      const n = c * c + d * d;
      return [(a * c + b * d) / n, (b * c - a * d) / n];
    };
    const [wantI, wantFar] = [over(i, u), over([1, 0], u)];
    const off = ({ re, im }: { re: Float64Array; im: Float64Array }, want: C) =>
      Math.hypot(re[0]! - want[0], im[0]! - want[1]) / Math.hypot(...want);
    expect(off(current!, wantI)).toBeLessThan(1e-8);
    expect(off(far!, wantFar)).toBeLessThan(1e-8);
  },
);

const tube = (near: string, far: string, impedance: number, delay: number): Numbered => ({
  ...losslessLine('tube', [near, far]),
  values: [impedance, delay],
});
const [Z, length, c] = [4e4, 0.7, 343];
const quarter = c / length / 4;
test.prop([size(0.02, 8), size(1e3, 1e7)])('a line before a resistance: Z (R + jZ tan)/(Z + jR tan)', (x, R) => {
  const network = networkOf(
    [source, tube('in', 'end', Z, length / c), part('acousticResistance', 'R', ['end', 'ground'], R)],
    {
      flow: { of: 'flow', element: 'drive' },
      end: { of: 'potential', node: 'end' },
      through: { of: 'flow', element: 'tube' },
    },
  );
  // Cosine and sine instead of the tangent: it has poles where the line is a quarter wave.
  const [cos, sin] = [Math.cos((x * Math.PI) / 2), Math.sin((x * Math.PI) / 2)];
  const { flow, end, through } = byPlan(network, Float64Array.of(x * quarter));
  const n = (R * cos) ** 2 + (Z * sin) ** 2;
  const want = [R * (cos ** 2 + sin ** 2) * 1, (cos * sin * (R * R - Z * Z)) / Z].map((v) => v / n) as [number, number];
  expect(Math.hypot(flow!.re[0]! - want[0], flow!.im[0]! - want[1]) / Math.hypot(...want)).toBeLessThan(1e-9);
  close(Math.hypot(end!.re[0]!, end!.im[0]!), R / Math.sqrt(n), 1e-9);
  close(Math.hypot(through!.re[0]!, through!.im[0]!), 1 / Math.sqrt(n), 1e-9);
});
test.prop([size(1e3, 1e7)])('exactly a quarter wave turns R into Z²/R, a half wave leaves it', (R) => {
  const network = networkOf(
    [source, tube('in', 'end', Z, length / c), part('acousticResistance', 'R', ['end', 'ground'], R)],
    { flow: { of: 'flow', element: 'drive' } },
  );
  const { flow } = byPlan(network, Float64Array.of(quarter, 2 * quarter, 3 * quarter, 1.99999999 * quarter));
  [R / Z ** 2, 1 / R, R / Z ** 2, 1 / R].forEach((Y, i) => close(flow!.re[i]!, Y, 1e-5 * (1 + (R / Z) ** 2 * 1e-6)));
});

/** A tube instead of a vent: short against the wavelength it is the vent's mass, and its own modes come after. */
test.prop([ventedBoxArbitrary], { numRuns: 40 })(
  'a short tube is a vent, and any tube is its impedance jZ tan kl',
  (input) => {
    const { QP: _, ...rest } = input;
    const { network, air } = ventedBox({ ...(rest as ClosedBoxInput), fb: input.fb, ventArea: '50 cm²' });
    const mass = network.values.vent as number;
    const kept = partsOf(network).filter(({ name }) => name !== 'vent');
    // What goes into the box comes out of it: of a tube the flow at the near end.
    const intoBox = { of: 'flow', element: 'Cab' } as const;
    const probes = { intoBox, coneVelocity: { of: 'potential', node: 'cone' } } as const;
    const tubeOf = (delay: number) => tube('box', 'ground', mass / delay, delay); // Z τ = mass
    const short = networkOf([...kept, tubeOf(1e-7)], probes);
    const grid = frequencyGrid([8, 20, 33, 60, 150]);
    const [vent, narrow] = [byPolynomials(withProbes(network, probes), grid), byPlan(short, grid)];
    for (const name of Object.keys(probes)) expect(worst(vent[name]!, narrow[name]!), name).toBeLessThan(1e-6);
    const delay = 0.8 / air.speedOfSound;
    const admittance = listed('tube', ['box', 'ground'], (frequencies, _re, im) => {
      frequencies.forEach((f, i) => {
        im[i] = -delay / mass / Math.tan(2 * Math.PI * f * delay);
      });
    });
    const modes = frequencyGrid([8, 20, 33, 60, 107.3, 150, 215.1, 400]);
    const [line, formula] = [
      byPlan(networkOf([...kept, tubeOf(delay)], probes), modes),
      byPlan(networkOf([...kept, admittance], probes), modes),
    ];
    for (const name of Object.keys(probes)) expect(worst(line[name]!, formula[name]!), name).toBeLessThan(1e-9);
  },
);

test.prop([size(1e-4, 0.05), size(1e3, 1e7)])(
  'a matched line delays by its length, whatever the frequency',
  (delay, Z) => {
    const network = networkOf(
      [
        source,
        part('acousticResistance', 'before', ['in', 'near'], Z),
        tube('near', 'end', Z, delay),
        part('acousticResistance', 'after', ['end', 'ground'], Z),
      ],
      {
        radiatedFlow: { of: 'flow', element: 'after' },
        coneVelocity: { of: 'potential', node: 'end' },
        current: { of: 'flow', element: 'drive' },
        terminalVoltage: { of: 'potential', node: 'in' },
      },
    );
    const system: System = {
      family: 'line',
      compile,
      spec: {},
      air: ventedBox({ drivers: driver, netVolume: '10 L', fb: '40 Hz' }).air,
      network,
    };
    respond(system, [5, 28, 200, 1000]).groupDelay.forEach((value) => close(value, delay, 1e-5));
  },
);
const driver = {
  Sd: si('coneArea', 0.033),
  Mms: si('mass', 0.086),
  Cms: si('compliance', 4e-4),
  Rms: si('mechanicalResistance', 3.6),
  Re: si('resistance', 5.6),
  Bl: si('forceFactor', 14.3),
};
