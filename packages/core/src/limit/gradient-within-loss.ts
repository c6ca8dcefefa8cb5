import type { Air } from '../air/index.js';
import type { FlowLoss } from '../duct/index.js';
import type { System } from '../enclosure/index.js';
import { LOSS } from '../response/lossy-openings.js';
import { resistanceOf } from '../response/steady-speed.js';
import { onlyOpening } from '../response/vent-at-level.js';
import { boundsOf } from './bounds-with-losses.js';
import { firstPassed } from './first-passed.js';
import { gradientWithin, type Within } from './gradient-within.js';
import type { Limit } from './limit.js';
import { compileOperatingPoints } from './operating-point.js';

/** The step in a logarithm by which a loss is differentiated: four differences leave an error of its fourth power. */
const STEP = 1e-3;
/** A limit that a drive does not pass that is greater by this factor is none. */
const FARTHEST = 1.5 ** 200;

/** Slope of a smooth function of a factor near 1, by the logarithm of the factor. */
const slopeOf = (of: (factor: number) => number): number => {
  const across = (step: number) => of(Math.exp(step)) - of(Math.exp(-step));
  return (8 * across(STEP) - across(2 * STEP)) / (12 * STEP);
};

/** The road with a loss in the vent: the speed at which a limit is reached decides the resistance. */
export function compileWithinLoss(system: System, loss: FlowLoss): (limit: Limit) => Within {
  const { air } = system;
  const { probe, area, perArea, systemWith } = onlyOpening(system);
  const pointsAt = compileOperatingPoints(system, { loss });
  const resistance = (speed: number, f: number, at: Air = air) => resistanceOf(loss, speed, f, at) / area;

  return (limit) => {
    /** What is told of each frequency: the peak speed of the air, and the drive and the flow as logarithms. */
    const solved = (grid: Float64Array) => {
      const points = pointsAt(grid);
      const flow = points.probes.indexOf('radiatedFlow');
      const bounds = boundsOf(points, grid, [limit], { ventCompression: undefined, amplifier: undefined });
      return (i: number) => {
        const { list, start } = bounds(i);
        if (!(list[0]!.excess(start * FARTHEST) > 0)) return { speed: Infinity, drive: Infinity, size: Infinity };
        const { strength: speed } = firstPassed(list, start);
        const { drive, probe: read } = points.at(i, speed);
        const size = Math.log(drive * Math.hypot(...read(flow)) * grid[i]!);
        return { speed, drive: Math.log(drive), size };
      };
    };
    const at = (f: number) => solved(Float64Array.of(f))(0);
    const gradient: Within['gradient'] = (f) => {
      const { speed } = at(f);
      const held = resistance(speed, f);
      const lossy = systemWith([held]);
      const flow = gradientWithin(lossy, 'radiatedFlow', limit, f);
      if (!flow.ok) return flow;
      const vent = gradientWithin(lossy, probe, limit, f);
      if (!vent.ok) return vent;
      // Where the loss is none, a slope by the logarithm of its resistance would not exist.
      const [ofFlow, ofAir] = [flow.byNumber[LOSS]!, vent.byNumber[LOSS]!];
      const bySpeed = slopeOf((factor) => resistance(speed * factor, f));
      const share = ofFlow / (1 - bySpeed * ofAir);
      /** A slope with the resistance held, of the flow and of the speed, and one of the resistance with the speed held. */
      const whole = (held: number, ofSpeed: number, own = 0) => held + share * (own + bySpeed * ofSpeed);
      const each = (by: 'byElement' | 'byNumber', own: number) => {
        const { [LOSS]: _, ...names } = { ...vent[by], ...flow[by] };
        return Object.fromEntries(
          Object.keys(names).map((name) => [
            name,
            whole(flow[by][name] ?? 0, vent[by][name] ?? 0, name === perArea ? own : 0),
          ]),
        );
      };
      const byDensity = slopeOf((factor) => resistance(speed, f, { ...air, density: air.density * factor } as Air));
      return {
        ok: true,
        value: flow.value,
        byElement: { ...each('byElement', held), 'air.density': whole(0, 0, byDensity) },
        byNumber: each('byNumber', held * area),
        byFrequency: whole(
          flow.byFrequency,
          vent.byFrequency,
          slopeOf((factor) => resistance(speed, f * factor)),
        ),
      };
    };
    return {
      limit,
      at,
      slope: (f) => {
        const found = gradient(f);
        return found.ok ? found.byFrequency + 1 : Number.NaN;
      },
      column: (grid) => {
        const one = solved(grid);
        return grid.map((_, i) => one(i).size);
      },
      gradient,
    };
  };
}
