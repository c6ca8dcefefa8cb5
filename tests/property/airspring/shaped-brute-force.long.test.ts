import { standardShapes } from '@airspring/workshop/shape';
import { design } from 'airspring';
import { expect, test } from 'vitest';
import { demo, searchFor } from '../../arbitrary/brief.js';
import { boresFor, judging, TUNINGS } from './judged-by-textbook.js';

// As for cuboids, by another road than the search's: every few millimetres of the open edge, every second millimetre of bore, a
// list of tunings. The section is cut by hand, and straight vents stand beside the driver where a plain grid of places has room, with
// more room around them than the search asks for: what stands so, the search must find as well.

type Corner = readonly [x: number, y: number];
const T = 0.015;
const SPARE = 0.01;
/** Cone, basket and frame of the driver of the demonstration. */
const [FRAME, CUTOUT, DEEP] = [0.262, 0.232, 0.118];
const [CONTENTS, TALLEST] = [0.0016 + 0.0005, 0.42];

/** What is within a convex section, counter-clockwise, a distance from each of its sides: where neighbouring sides cross. */
function within(section: readonly Corner[], by: number): Corner[] {
  const sides = section.map(([x, y], i) => {
    const [u, v] = section[(i + 1) % section.length]!;
    const long = Math.hypot(u - x, v - y);
    const [nx, ny] = [-(v - y) / long, (u - x) / long];
    return { nx, ny, c: nx * x + ny * y + by };
  });
  return sides.map((one, i) => {
    const before = sides[(i + sides.length - 1) % sides.length]!;
    const cross = before.nx * one.ny - before.ny * one.nx;
    return [(before.c * one.ny - before.ny * one.c) / cross, (before.nx * one.c - before.c * one.nx) / cross];
  });
}
const areaOf = (corners: readonly Corner[]): number =>
  corners.reduce((sum, [x, y], i) => {
    const [u, v] = corners[(i + 1) % corners.length]!;
    return sum + (x * v - u * y) / 2;
  }, 0);
const isWithin = (corners: readonly Corner[], [x, y]: Corner): boolean =>
  corners.every(([a, b], i) => {
    const [u, v] = corners[(i + 1) % corners.length]!;
    return (u - a) * (y - b) - (v - b) * (x - a) >= 0;
  });
/** How far something of a width reaches inwards from the front, from the outer surface: in steps of 2 mm. */
function reach(air: readonly Corner[], x: number, width: number): number {
  let y = T + 1e-6;
  const fits = (at: number) => [x - width / 2, x + width / 2].every((side) => isWithin(air, [side, at]));
  if (!fits(y)) return 0;
  while (fits(y + 0.002)) y += 0.002;
  return y;
}

const rectangle = (w: number, d: number): Corner[] => [
  [0, 0],
  [w, 0],
  [w, d],
  [0, d],
];
const written = (corners: readonly Corner[]) => corners.map((corner) => corner.map((at) => `${at * 1e3} mm`));
const [LOWER, UPPER, STEP] = [rectangle(0.52, 0.4), rectangle(0.38, 0.3), 0.1];
const CUT: Corner[] = [
  [0, 0],
  [0.52, 0],
  [0.52, 0.24],
  [0.3, 0.4],
  [0, 0.4],
];
const stack = {
  stack: {
    along: 'height',
    layers: [{ corners: written(LOWER) }, { corners: written(UPPER), length: `${STEP * 1e3} mm` }],
  },
};

const cases = [
  { name: 'a stack', shape: stack, section: LOWER, above: UPPER, step: STEP },
  { name: 'a prism', shape: { outline: { along: 'height', corners: written(CUT) } }, section: CUT, step: 0 },
] as const;

test.each(cases)('no box of a grid beats a design of $name', ({ shape, section, step, ...more }) => {
  const above: readonly Corner[] | undefined = 'above' in more ? more.above : undefined;
  const brief = {
    ...demo,
    space: { width: '520 mm', height: '420 mm', depth: '400 mm', panelThickness: '15 mm', bracing: '0.5 L', shape },
    wanted: { ...demo.wanted, level: '88 dB' },
    box: { ...demo.box, kinds: ['vented'] },
    vent: { ...demo.vent, bends: 0, largest: '110 mm' },
  };
  const { job } = searchFor(brief, undefined, { shapes: standardShapes });
  const answer = design(brief, { shapes: standardShapes });
  if (!answer.ok) throw new Error(answer.because.join(' '));
  const { why } = judging(job, answer);
  const air = within(section, T);
  const [wide] = [Math.max(...section.map(([x]) => x))];
  const bores = boresFor(job).filter((_, i) => i % 2 === 0 && i <= 70);
  const places = Array.from({ length: Math.floor(wide / 0.01) + 1 }, (_, i) => i * 0.01);
  /** For each bore, what reaches how far in at each place. */
  const ways = bores.map((bore) => places.map((x) => reach(air, x, bore.outerDiameter + SPARE)));
  const driverAt = places.filter(
    (x) => x - FRAME / 2 > SPARE && x + FRAME / 2 < wide - SPARE && reach(air, x, CUTOUT + SPARE) > DEEP + SPARE,
  );
  /** The longest straight vent beside the driver in a box so high. */
  const longest = (high: number, i: number): number => {
    const { flangeDiameter, diameter } = bores[i]!;
    const apart = (FRAME + flangeDiameter) / 2 + SPARE;
    const inner = high - 2 * T - 2 * SPARE;
    if (inner < FRAME || inner < flangeDiameter) return 0;
    // One at the bottom, the other at the top.
    const rise = inner - (FRAME + flangeDiameter) / 2;
    const across = Math.sqrt(Math.max(0, apart ** 2 - rise ** 2));
    return places.reduce((most, x, k) => {
      if (x - flangeDiameter / 2 < SPARE || x + flangeDiameter / 2 > wide - SPARE) return most;
      if (!driverAt.some((at) => Math.abs(at - x) >= across)) return most;
      return Math.max(most, ways[i]![k]! - diameter - SPARE);
    }, 0);
  };
  const airIn = (tall: number): number =>
    areaOf(air) * (tall - step - 2 * T) + (above ? areaOf(within(above, T)) * step : 0) - CONTENTS;
  for (const { box, vent: tube } of answer.designs) {
    const takes = tube ? (Math.PI / 4) * tube.outerDiameter ** 2 * (tube.length - T) : 0;
    expect(box.netVolume).toBeCloseTo(airIn(box.outer[1]) - takes, 9);
  }
  let stood = 0;
  const lost: string[] = [];
  for (let tall = 0.2; tall <= TALLEST + 1e-9; tall += 0.003) {
    const before = airIn(tall);
    const volume = areaOf(section) * (tall - step) + (above ? areaOf(above) * step : 0);
    bores.forEach((bore, i) => {
      const most = longest(tall - step, i);
      if (most <= 0) return;
      for (let k = 0; k < TUNINGS.length; k++) {
        const { length, netVolume } = bore.tuned(before, T, k);
        if (!(length > T && length <= most)) continue;
        const reasons = why(netVolume, k, bore.area, { volume, effort: length });
        if (reasons === undefined) continue;
        stood++;
        if (reasons.length > 0)
          lost.push(
            `${(tall * 1e3).toFixed(0)} mm, ⌀${bore.diameter * 1e3}, ${(length * 1e3).toFixed(0)} mm long: ${reasons.join('; ')}`,
          );
      }
    });
  }
  expect(stood).toBeGreaterThan(500);
  expect(lost.slice(0, 5)).toEqual([]);
});
