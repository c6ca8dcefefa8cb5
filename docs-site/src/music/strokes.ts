import { compileLinear } from '@airspring/transient/simulation';
import type { Simulate } from '@airspring/transient/timeline';

/** How far the air in the vent went one way and back: its tone follows from that and from its speed. */
interface Strokes {
  way: number;
  sign: number;
  /** The longest in this slice, and the samples of it that were heard. */
  longest: number;
  heard: number;
}

interface Moving {
  readonly states: readonly Float64Array[];
  readonly strokes: Strokes;
}

/**
 * The linear simulation, which also tells the longest stroke of the air in the vent of each slice: the way that it goes in one
 * direction, m. Slices are those of the timeline: so many samples each.
 */
export function withStrokes(samples: number, tell: (longest: number) => void): Simulate<Moving> {
  return (system, options) => {
    const { start, run } = compileLinear(system, options);
    const at = options.outputs.indexOf('ventAirSpeed');
    const interval = 1 / options.sampleRate;
    return {
      start: () => ({ states: start(), strokes: { way: 0, sign: 0, longest: 0, heard: 0 } }),
      run: ({ states, strokes }, drive, out) => {
        run(states, drive, out);
        if (at >= 0) follow(strokes, out[at]!, interval, samples, tell);
        return { unsolved: 0 };
      },
    };
  };
}

function follow(
  strokes: Strokes,
  speed: Float64Array,
  interval: number,
  samples: number,
  tell: (stroke: number) => void,
) {
  let { way, sign, longest, heard } = strokes;
  for (let i = 0; i < speed.length; i++) {
    const value = speed[i]!;
    const now = value > 0 ? 1 : -1;
    if (now !== sign) {
      sign = now;
      way = 0;
    }
    way += interval * value * now;
    if (way > longest) longest = way;
    if (++heard === samples) {
      tell(longest);
      longest = heard = 0;
    }
  }
  Object.assign(strokes, { way, sign, longest, heard });
}
