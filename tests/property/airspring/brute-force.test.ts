import { si } from '@airspring/core/quantity';
import { compileLongestVent, type Face, faces, fit } from '@airspring/core/space';
import { compileLengthForTuning } from '@airspring/core/vent';
import { type Brief, design } from 'airspring';
import { expect, test } from 'vitest';
import type { Demand } from '../../../packages/airspring/src/box/demand.js';
import type { Job } from '../../../packages/airspring/src/brief/job.js';
import { readBrief } from '../../../packages/airspring/src/brief/read.js';
import { type Criteria, leanings, points } from '../../../packages/airspring/src/search/wishes.js';
import { demo } from '../../arbitrary/brief.js';
import { compileTextbookDemand } from './textbook-demand.js';

// Another road than the search's: outer edges first, in whole millimetres; then every whole millimetre of bore, a list of
// tunings, and the vent's length from a quadratic in closed form. No lattice in net volume, no walk downhill, and what each
// box asks for by the textbooks' circuit instead of the network.
const SIZES = 52;
const TUNINGS = Float64Array.from({ length: 64 }, (_, i) => 12 * 1.029 ** i);
const VOLUMES = Float64Array.from({ length: 260 }, (_, i) => 0.003 * 1.0107 ** i);
const ONE_PERCENT_LEVEL = 20 * Math.log10(1.01);
const leaningNames = ['balanced', 'deeper', 'louder', 'smaller', 'simpler'];

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

/** The shapes that a builder is offered: one edge shorter than the space, or all three alike. */
function boxes({ space }: Job): (readonly [number, number, number])[] {
  const full = [space.width, space.height, space.depth].map((edge) => Math.round(edge * 1e3)) as [
    number,
    number,
    number,
  ];
  const litres = ([w, h, d]: readonly number[]) => ((w as number) * (h as number) * (d as number)) / 1e6;
  const most = space.volume * 1e3 + 1e-9;
  return [0, 1, 2, 3].flatMap((axis) => {
    const at = (share: number) =>
      full.map((edge, i) => (axis === 3 || axis === i ? Math.floor(edge * share + 1e-9) : edge)) as [
        number,
        number,
        number,
      ];
    const largest = Array.from({ length: 1000 }, (_, i) => at(1 - i / 1000)).find((edges) => litres(edges) <= most);
    const share = axis === 3 ? (largest as number[])[0]! / full[0] : (largest as number[])[axis]! / full[axis]!;
    return Array.from({ length: SIZES }, (_, i) => at(share * (1 - (0.6 * i) / SIZES)));
  });
}

/** Optimistic demand between two tabulated volumes: it may let a box pass that the exact one refuses, not the reverse. */
const best = (a: Demand, b: Demand): Demand =>
  Object.fromEntries(
    Object.keys(a).map((key) => [key, Math.min(a[key as keyof Demand], b[key as keyof Demand])]),
  ) as unknown as Demand;

const used = ({ amplifier, vent }: Job, demand: Demand, area: number) =>
  Math.max(
    demand.travel,
    demand.heat,
    demand.ventFlow / area / vent.airSpeedPeak,
    demand.voltage / amplifier.voltage,
    demand.current / amplifier.current,
  );

test('no box out of a million beats a design of the demonstration', () => {
  const job = readBrief(demo);
  const answer = design(demo);
  if (!answer.ok) throw new Error('the demonstration is met');
  const { space, vent, wanted } = job;
  const offer = job.offers[0]!;
  const { outerDiameter, cutoutDiameter, depth } = offer.drivers.driver as {
    [K in 'outerDiameter' | 'cutoutDiameter' | 'depth']: number;
  };
  const exact = compileTextbookDemand(sheet, job.air, wanted, { QL: 7, sourceResistance: 0.1 });
  const table = Array.from(TUNINGS, (fb) => {
    const column = Array.from(VOLUMES, (volume) => exact(volume, fb));
    return column.slice(1).map((demand, i) => best(column[i]!, demand));
  });

  const asked = answer.designs.map((one) => {
    const bore = one.vent?.diameter ?? 0;
    const length = (one.vent?.count ?? 0) * (one.vent?.length ?? 0);
    const demand = exact(one.box.netVolume, one.vent?.fb ?? 0);
    const level = wanted.level - 20 * Math.log10(used(job, demand, (Math.PI / 4) * bore ** 2));
    const criteria: Criteria = { cutoff: demand.cutoff, level, volume: one.box.outerVolume, ventLength: length };
    // What the design says of itself, by the other road.
    expect(Math.abs(demand.cutoff - one.response.cutoff)).toBeLessThan(0.01);
    expect(Math.abs(demand.rise - one.response.greatestRise)).toBeLessThan(0.01);
    expect(Math.abs(level - one.loudness.level)).toBeLessThan(0.02);
    const weights = leanings(job)[leaningNames.indexOf(one.leaning)]!;
    return { name: one.name, criteria, weights, points: points(job, weights, criteria) };
  });
  /** Why a box beats a design, or nothing. */
  const beats = (mine: Criteria): string[] =>
    asked.flatMap(({ name, criteria: theirs, weights, points: most }) => {
      const gains = [
        theirs.cutoff / mine.cutoff - 1,
        (mine.level - theirs.level) * (0.01 / ONE_PERCENT_LEVEL),
        theirs.volume / mine.volume - 1,
        theirs.ventLength / mine.ventLength - 1,
      ];
      const dominated = gains.every((gain) => gain >= 0) && gains.some((gain) => gain > 0.01);
      const more = points(job, weights, mine) - most;
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
  const flangeFits = ({ body }: (typeof bores)[number]) => body.flangeDiameter <= job.printer.width;

  let looked = 0;
  let stood = 0;
  const lost: string[] = [];
  for (const edges of boxes(job)) {
    const [w, h, d] = edges.map((edge) => edge / 1e3) as [number, number, number];
    const before =
      (w - 2 * t) * (h - 2 * t) * (d - 2 * t) - space.bracing - (offer.drivers.driver.displacedVolume ?? 0);
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
        const criteria = (demand: Demand): Criteria | undefined => {
          const share = used(job, demand, bore.area);
          if (share > 1 || demand.cutoff > wanted.lowest || demand.rise > wanted.rise) return undefined;
          return {
            cutoff: demand.cutoff,
            level: wanted.level - 20 * Math.log10(share),
            volume: w * h * d,
            ventLength: length,
          };
        };
        const hoped = criteria(hope);
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
            cutoutDiameter: metres(cutoutDiameter),
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
