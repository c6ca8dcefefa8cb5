import { type LineBoxInput, lineBox } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { compiledSystem, probeColumns, respond } from '@airspring/core/response';
import { expect, test } from 'vitest';
import { checkIn } from '../../ledger/check.js';
import { tubeAir as air } from '../tube-air.js';
import { drivers, largest } from './lines.js';
import lines from './lines.json' with { type: 'json' };

const check = checkIn(air);

const frequencies = Float64Array.from(lines.frequencies);
const columnsOf = (input: LineBoxInput, at = frequencies) => probeColumns(compiledSystem(lineBox(input, air)), at);
const flat = ({ re, im }: { readonly re: Float64Array; readonly im: Float64Array }, factor = 1) =>
  Array.from(re, (x, i) => [factor * x, factor * im[i]!]).flat();

const scipy = {
  source: { key: 'scipy', locator: 'solve_ivp along the line, special.jve for the walls; script lines.py' },
};
/** Of the largest value, and of the level in dB: steps for what tapers, else the accuracy of the integration. */
const accuracies: Readonly<Record<string, readonly [column: number, level: number, why: string]>> = {
  'conical pipe': [1e-5, 1e-4, 'twenty steps; their error falls as the fourth power of their number, see below'],
  'exponential pipe, driver along it': [1e-5, 1e-3, 'twenty steps on each side of the driver'],
  'wedge, filled': [1e-5, 1e-4, 'twenty steps on each side of the driver'],
  'steps, one filled, walls of boards': [1e-12, 1e-11, 'the integration'],
  'opening in the side': [1e-11, 1e-10, 'the integration'],
  'closed and filled': [1e-4, 1e-3, 'twenty steps, over which the area falls to an eighth'],
};

for (const [name, { coneVelocity, 'opening flow': flow, ...box }] of Object.entries(lines.cases)) {
  const input = { drivers, ...box } as unknown as LineBoxInput;
  const [accuracy, decibels, why] = accuracies[name]!;
  const common = {
    ...scipy,
    formula: 'enclosure/lineBox',
    status: 'derived',
    kind: 'program',
    given: { line: { value: name, unit: '' } },
  } as const;
  check(`enclosure.line.${name.replaceAll(' ', '-')}.cone`, {
    ...common,
    got: () => flat(columnsOf(input).coneVelocity!),
    expected: coneVelocity,
    unit: 'm/s per V',
    tolerance: { absolute: accuracy * largest(coneVelocity), why },
  });
  if (input.opening === undefined) continue;
  check(`enclosure.line.${name.replaceAll(' ', '-')}.opening`, {
    ...common,
    got: () => flat(columnsOf(input).ventAirSpeed!, (box as { opening: { area: number } }).opening.area),
    expected: flow,
    unit: 'm³/s per V',
    tolerance: { absolute: accuracy * largest(flow), why },
  });
  const sum = coneVelocity.map((v, i) => drivers.Sd * v + flow[i]!);
  check(`enclosure.line.${name.replaceAll(' ', '-')}.level`, {
    ...common,
    got: () => [...respond(lineBox(input, air), [...frequencies], { driveVoltageRms: '1 V' }).levelHalfSpace],
    // p = ωρ|U|/2π at 1 m in half space.
    expected: Array.from(
      frequencies,
      (f, i) => 20 * Math.log10((f * air.density * Math.hypot(sum[2 * i]!, sum[2 * i + 1]!)) / 20e-6),
    ),
    unit: 'dB for 1 V',
    tolerance: { absolute: decibels, why },
  });
}

test('a cone that is written as two has about a sixteenth of the error', () => {
  const { coneVelocity, 'opening flow': _, ...box } = lines.cases['conical pipe'];
  const input = { drivers, ...box } as unknown as LineBoxInput;
  const [{ length, area, conicalTo }] = box.parts as [{ length: number; area: number; conicalTo: number }];
  const middle = ((Math.sqrt(area) + Math.sqrt(conicalTo)) / 2) ** 2;
  const half = { length: length / 2, area, conicalTo: middle };
  const halves = [half, { ...half, area: middle, conicalTo }] as unknown as LineBoxInput['parts'];
  const error = (parts: LineBoxInput['parts']) =>
    largest(flat(columnsOf({ ...input, parts }).coneVelocity!).map((v, i) => v - coneVelocity[i]!));
  const ratio = error(input.parts) / error(halves);
  expect(ratio).toBeGreaterThan(12);
  expect(ratio).toBeLessThan(17);
});

/** A uniform line without loss: what the textbook says of it, for ends without any correction. */
const L = 2.4;
const S = 0.03;
const quarter = air.speedOfSound / (4 * L);
const pipe: LineBoxInput = {
  drivers,
  parts: [{ length: si('length', L), area: si('area', S), wallLoss: 0 }],
  opening: { endCorrection: si('length', 0) },
};
const textbook = {
  key: 'morse1968',
  locator: 'tube closed by a piston at one end and open at the other: cos kL, tan kL',
};
const places = [0.2, 0.5, 0.9, 1.05, 1.5, 2.4, 3.7];
const angle = (ratio: number) => (Math.PI / 2) * ratio;
check('enclosure.line.quarter-wave.flow', {
  formula: 'enclosure/lineBox',
  source: textbook,
  status: 'derived',
  kind: 'standard',
  given: { ratio: { value: places, unit: 'f/f1' } },
  got: ({ ratio }) => {
    const { radiatedFlow, coneVelocity } = columnsOf(pipe, Float64Array.of(ratio * quarter));
    const [a, b, c, d] = [radiatedFlow!.re[0]!, radiatedFlow!.im[0]!, coneVelocity!.re[0]!, coneVelocity!.im[0]!];
    return (a * c + b * d) / (c * c + d * d) / drivers.Sd;
  },
  expected: places.map((ratio) => 1 - 1 / Math.cos(angle(ratio))),
  unit: 'of the flow of the cone',
  tolerance: { relative: 1e-13, why: 'double precision; the difference of both flows at the lowest' },
});
check('enclosure.line.quarter-wave.cone', {
  formula: 'enclosure/lineBox',
  source: textbook,
  status: 'derived',
  kind: 'standard',
  given: { ratio: { value: places, unit: 'f/f1' } },
  got: ({ ratio }) => {
    const { coneVelocity } = columnsOf(pipe, Float64Array.of(ratio * quarter));
    return Math.hypot(coneVelocity!.re[0]!, coneVelocity!.im[0]!);
  },
  expected: places.map((ratio) => {
    const w = 2 * Math.PI * ratio * quarter;
    const { Sd, Mms, Cms, Rms, Re, Bl } = drivers;
    const load = ((Sd ** 2 * air.density * air.speedOfSound) / S) * Math.tan(angle(ratio));
    return Bl / Re / Math.hypot(Rms + Bl ** 2 / Re, w * Mms - 1 / (w * Cms) + load);
  }),
  unit: 'm/s per V',
  tolerance: { relative: 2e-14, why: 'double precision' },
});
check('enclosure.line.path', {
  formula: 'enclosure/lineBox',
  source: { key: 'rayleigh1896', locator: 'sec. 278: sources add with the delays of their paths' },
  status: 'derived',
  kind: 'standard',
  given: { ratio: { value: places, unit: 'f/f1' } },
  got: ({ ratio }) => {
    const box = { ...pipe, opening: { ...pipe.opening, path: si('length', 0.7) } };
    const { radiatedFlow, coneVelocity } = columnsOf(box, Float64Array.of(ratio * quarter));
    const [a, b, c, d] = [radiatedFlow!.re[0]!, radiatedFlow!.im[0]!, coneVelocity!.re[0]!, coneVelocity!.im[0]!];
    return (b * c - a * d) / (c * c + d * d);
  },
  expected: places.map((ratio) => {
    const [mouth, k] = [1 / Math.cos(angle(ratio)), angle(ratio) / L];
    return drivers.Sd * mouth * Math.sin(0.7 * k);
  }),
  unit: 'm², the part of the flow out of phase with the cone',
  tolerance: { relative: 1e-13, why: 'double precision' },
});
