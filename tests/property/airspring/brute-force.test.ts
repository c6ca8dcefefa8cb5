import { si } from '@airspring/core/quantity';
import { compileLongestVent, type Face, faces, fit } from '@airspring/core/space';
import { compileLengthForTuning } from '@airspring/core/vent';
import type { Brief } from 'airspring';
import { expect, test } from 'vitest';
import type { Job } from '../../../packages/airspring/src/job/job.js';
import { type Criteria, leanings, pointsOf } from '../../../packages/airspring/src/search/points.js';
import { answerTo, demo, searchFor } from '../../arbitrary/brief.js';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { compileTextbookDemand } from './textbook-demand.js';

// Another road than the search's: outer edges first, in whole millimetres; then every whole millimetre of bore, a list of
// tunings, and the vent's length from a quadratic in closed form. No lattice in net volume, no walk downhill, and what each
// box asks for by the textbooks' circuit instead of the network.
const BOXES = fuzzRuns < 300 ? 250 : 1000;
const TUNINGS = Float64Array.from({ length: 64 }, (_, i) => 12 * 1.029 ** i);
const VOLUMES = Float64Array.from({ length: 260 }, (_, i) => 0.003 * 1.0107 ** i);
const ONE_PERCENT_LEVEL = 20 * Math.log10(1.01);

/** The driver of the demonstration, by its own sheet. */
const [{ fs, Qts, Qes, Vas, Sd, Re, Le, Xmax, Pe }] = demo.drivers as [Brief['drivers'][number]];
const number = (text: string | undefined) => Number(text?.split(' ')[0]);
const sheet = {
  fs: number(fs),
  Qes: Qes!,
  Qms: 1 / (1 / Qts! - 1 / Qes!),
  Vas: number(Vas) / 1e3,
  Sd: number(Sd) / 1e4,
  Re: number(Re),
  Le: number(Le) / 1e3,
  Xmax: number(Xmax) / 1e3,
  Pe: number(Pe),
};

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

type Demand = ReturnType<ReturnType<typeof compileTextbookDemand>>;

/** Optimistic demand between two tabulated volumes: it may let a box pass that the exact one refuses, not the reverse. */
const best = (a: Demand, b: Demand): Demand => ({
  cutoff: Math.min(a.cutoff, b.cutoff),
  rise: Math.min(a.rise, b.rise),
  travel: Math.min(a.travel, b.travel),
  heat: Math.min(a.heat, b.heat),
  voltage: Math.min(a.voltage, b.voltage),
  current: Math.min(a.current, b.current),
  ventFlow: Math.min(a.ventFlow, b.ventFlow),
  below: [],
});

const vent = { airSpeedPeak: 12, smallest: 0.04, wall: 0.003, collar: 0.012, faces: ['front'] as const };
const PRINTER = 0.2;
const PLAY = 0.002;

const used = (
  { amplifier }: Job,
  demand: Pick<Demand, 'travel' | 'voltage' | 'current' | 'ventFlow'> & { readonly heat?: number },
  area: number,
) =>
  Math.max(
    demand.travel,
    demand.heat ?? 0,
    demand.ventFlow / area / vent.airSpeedPeak,
    demand.voltage / amplifier.voltage,
    demand.current / amplifier.current,
  );

/** Down to where the response and every limit hold at the wanted level, at each frequency from the band downwards. */
function depthOf(job: Job, { cutoff, below }: Demand, area: number): number {
  let above: readonly [number, number] | undefined;
  for (const need of below) {
    const heat = (need.current * Math.sqrt(sheet.Re / sheet.Pe)) as number;
    const share = Math.max(used(job, need, area), heat);
    if (share > 1) {
      const [f, at] = above ?? [need.frequency, 1];
      if (share <= at) return f;
      return Math.max(cutoff, need.frequency * (f / need.frequency) ** (Math.log(share) / Math.log(share / at)));
    }
    above = [need.frequency, share];
    if (need.frequency < cutoff) break;
  }
  return cutoff;
}

test('no box out of a million beats a design of the demonstration', () => {
  const { job } = searchFor(demo);
  const answer = answerTo(demo);
  if (!answer.ok) throw new Error('the demonstration is met');
  const { space, wanted } = job;
  const choice = job.choices[0]!;
  const { outerDiameter, cutoutDiameter, depth } = choice.drivers.driver as {
    [K in 'outerDiameter' | 'cutoutDiameter' | 'depth']: number;
  };
  const exact = compileTextbookDemand(sheet, job.air, wanted, { QL: 7, sourceResistance: 0.1 });
  const exactAt = Array.from(TUNINGS, (fb) => Array.from(VOLUMES, (volume) => exact(volume, fb)));
  const table = exactAt.map((column) => column.slice(1).map((demand, i) => best(column[i]!, demand)));

  const asked = answer.designs.map((one) => {
    const bore = one.vent?.diameter ?? 0;
    const length = (one.vent?.count ?? 0) * (one.vent?.length ?? 0);
    const demand = exact(one.box.netVolume, one.vent?.fb ?? 0);
    const level = wanted.level - 20 * Math.log10(used(job, demand, (Math.PI / 4) * bore ** 2));
    const depth = depthOf(job, demand, (Math.PI / 4) * bore ** 2);
    const criteria: Criteria = { depth, level, volume: one.box.outerVolume, effort: length };
    // What the design says of itself, by the other road.
    expect(Math.abs(demand.cutoff - one.response.cutoff)).toBeLessThan(0.01);
    expect(Math.abs(depth - one.response.depth)).toBeLessThan(0.02);
    expect(Math.abs(demand.rise - one.response.greatestRise)).toBeLessThan(0.01);
    expect(Math.abs(level - one.loudness.level)).toBeLessThan(0.02);
    const weights = leanings(job).find(({ name }) => name === one.leaning)!.weights;
    return { name: one.name, criteria, weights, points: pointsOf(job, weights, criteria) };
  });
  /** Why a box beats a design, or nothing. */
  const beats = (mine: Criteria): string[] =>
    asked.flatMap(({ name, criteria: theirs, weights, points: most }) => {
      const gains = [
        theirs.depth / mine.depth - 1,
        (mine.level - theirs.level) * (0.01 / ONE_PERCENT_LEVEL),
        theirs.volume / mine.volume - 1,
        theirs.effort / mine.effort - 1,
      ];
      const dominated = gains.every((gain) => gain >= 0) && gains.some((gain) => gain > 0.01);
      const more = pointsOf(job, weights, mine) - most;
      return [
        ...(dominated ? [`dominates ${name}: ${gains.map((gain) => gain.toFixed(4))}`] : []),
        ...(more > 0.01 * Math.abs(most) ? [`${more.toFixed(3)} points over ${name}'s ${most.toFixed(3)}`] : []),
      ];
    });

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
  const bores = Array.from({ length: 81 }, (_, i) => {
    const diameter = (40 + i) / 1e3;
    const length = compileLengthForTuning({ diameter: si('length', diameter), wall: si('length', vent.wall) }, job.air);
    const area = (Math.PI / 4) * diameter ** 2;
    // S/k² and both end corrections: what one cubic metre, and what infinitely many leave.
    const ends = Array.from(TUNINGS, (fb) => -length(Number.POSITIVE_INFINITY, fb));
    const mass = Array.from(TUNINGS, (fb, k) => length(1, fb) + ends[k]!);
    return {
      diameter,
      area,
      ends,
      mass,
      body: body(diameter),
      taken: (Math.PI / 4) * body(diameter).outerDiameter ** 2,
    };
  });
  const flangeFits = ({ body }: (typeof bores)[number]) => body.flangeDiameter <= PRINTER;

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
        if (most <= 0 || before <= 0 || !flangeFits(bore)) continue;
        const W = before + bore.taken * t;
        const b = W - bore.taken * bore.ends[k]!;
        const c = bore.mass[k]! - bore.ends[k]! * W;
        const length = (2 * c) / (b + Math.sqrt(b * b - 4 * bore.taken * c));
        if (!(length > t && length <= most)) continue;
        const netVolume = W - bore.taken * length;
        const place = Math.floor(Math.log(netVolume / VOLUMES[0]!) / Math.log(1.0107));
        const hope = table[k]![place];
        if (hope === undefined) throw new Error(`no table at ${netVolume} m³`);
        const criteria = (demand: Demand, depths = [demand]): Criteria | undefined => {
          const share = used(job, demand, bore.area);
          if (share > 1 || demand.cutoff > wanted.lowest || demand.rise > wanted.rise) return undefined;
          return {
            depth: Math.min(...depths.map((one) => depthOf(job, one, bore.area))),
            level: wanted.level - 20 * Math.log10(share),
            volume: w * h * d,
            effort: length,
          };
        };
        const hoped = criteria(hope, [exactAt[k]![place]!, exactAt[k]![place + 1]!]);
        if (hoped === undefined) continue;
        stood++;
        if (beats(hoped).length === 0) continue;
        const fb = TUNINGS[k]!;
        const real = criteria(exact(netVolume, fb));
        const why = real === undefined ? [] : beats(real);
        if (why.length === 0) continue;
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
            `${edges} mm, ⌀${bore.diameter * 1e3}, ${(length * 1e3).toFixed(0)} mm long, ${fb.toFixed(2)} Hz: ${why.join('; ')}`,
          );
      }
    }
  }
  expect(looked).toBeGreaterThanOrEqual(1e6);
  expect(stood).toBeGreaterThan(1e4);
  expect(lost.slice(0, 5)).toEqual([]);
}, 30_000);
