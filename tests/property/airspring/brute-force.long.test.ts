import { si } from '@airspring/core/quantity';
import { compileLongestVent, type Face, faces, fit } from '@airspring/core/space';
import { expect, test } from 'vitest';
import type { Job } from '../../../packages/airspring/src/job/job.js';
import { answerTo, demo, searchFor } from '../../arbitrary/brief.js';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { boresFor, judging, TUNINGS, vent } from './judged-by-textbook.js';

// Another road than the search's: outer edges first, in whole millimetres; then every whole millimetre of bore, a list of
// tunings, and the vent's length from a quadratic in closed form. No lattice in net volume, no walk downhill, and what each
// box asks for by the textbooks' circuit instead of the network.
const BOXES = fuzzRuns < 300 ? 250 : 1000;
const PRINTER = 0.2;
const PLAY = 0.002;

/** Boxes whose three edges are free, spread evenly without a pattern: whole millimetres within the space and its volume. */
function boxes({ space }: Job): (readonly [number, number, number])[] {
  const full = [space.width, space.height, space.depth].map((edge) => Math.round(edge * 1e3));
  const steps = [0.819173, 0.671044, 0.5497];
  const all = Array.from({ length: 4 * BOXES }, (_, i) =>
    full.map((edge, axis) => Math.floor(edge * (1 - 0.45 * ((0.5 + i * steps[axis]!) % 1)))),
  ) as [number, number, number][];
  const litres = ([w, h, d]: readonly [number, number, number]) => (w * h * d) / 1e6;
  return all.filter((edges) => litres(edges) <= space.volume * 1e3 && litres(edges) >= 22).slice(0, BOXES);
}

test('no box out of a million beats a design of the demonstration', () => {
  const { job } = searchFor(demo);
  const answer = answerTo(demo);
  if (!answer.ok) throw new Error('the demonstration is met');
  const { space } = job;
  const choice = job.choices[0]!;
  const { outerDiameter, cutoutDiameter, depth } = choice.drivers.driver as {
    [K in 'outerDiameter' | 'cutoutDiameter' | 'depth']: number;
  };
  const { why } = judging(job, answer);

  const layout = {
    thickness: faces.map(() => space.panelThickness),
    gap: 0.005,
    edgeMargin: 0.005,
    cutoutMargin: 0.002,
    bodies: [
      {
        part: 'driver' as const,
        outerDiameter,
        cutoutDiameter,
        depth,
        count: 1,
        faces: [faces.indexOf('front')],
        opposed: false,
      },
    ],
    vent: { count: 1, faces: vent.faces.map((face: Face) => faces.indexOf(face)), bend: true, walls: 0 as const },
  };
  const longest = compileLongestVent(layout);
  const reach = new Float64Array(2);
  const t = space.panelThickness;
  const body = (diameter: number) => {
    const outer = diameter + 2 * vent.wall;
    return { outerDiameter: outer, flangeDiameter: outer + 2 * vent.collar, clearance: diameter, bendRadius: outer };
  };
  const bores = boresFor(job).map((bore) => ({ ...bore, body: body(bore.diameter) }));

  let looked = 0;
  let stood = 0;
  const lost: string[] = [];
  for (const edges of boxes(job)) {
    const [w, h, d] = edges.map((edge) => edge / 1e3) as [number, number, number];
    const before =
      (w - 2 * t) * (h - 2 * t) * (d - 2 * t) - space.bracing - (choice.drivers.driver.displacedVolume ?? 0);
    for (const bore of bores) {
      longest(w - 2 * t, h - 2 * t, d - 2 * t, bore.body, reach);
      const most = Math.max(reach[0]!, reach[1]!);
      for (let k = 0; k < TUNINGS.length; k++) {
        looked++;
        if (most <= 0 || before <= 0 || bore.flangeDiameter > PRINTER) continue;
        const { length, netVolume } = bore.tuned(before, t, k);
        if (!(length > t && length <= most)) continue;
        const reasons = why(netVolume, k, bore.area, { volume: w * h * d, effort: length });
        if (reasons === undefined) continue;
        stood++;
        if (reasons.length === 0) continue;
        const fb = TUNINGS[k]!;
        const metres = (value: number) => si('length', value);
        const fits = fit({
          outer: { width: metres(w), height: metres(h), depth: metres(d) },
          thickness: metres(t),
          driver: {
            outerDiameter: metres(outerDiameter),
            cutoutDiameter: metres(cutoutDiameter + 2 * PLAY),
            depth: metres(depth),
          },
          vent: {
            diameter: metres(bore.diameter),
            wall: metres(vent.wall),
            flangeDiameter: metres(bore.body.flangeDiameter),
            faces: vent.faces,
            length: metres(length),
          },
        });
        if (fits.ok)
          lost.push(
            `${edges} mm, ⌀${bore.diameter * 1e3}, ${(length * 1e3).toFixed(0)} mm long, ${fb.toFixed(2)} Hz: ${reasons.join('; ')}`,
          );
      }
    }
  }
  expect(looked).toBeGreaterThanOrEqual(1e6);
  expect(stood).toBeGreaterThan(1e4);
  expect(lost.slice(0, 5)).toEqual([]);
}, 30_000);
