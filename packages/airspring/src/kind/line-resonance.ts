import { bracketedRoot } from '@airspring/core/numeric';
import { between, type Stretch } from './line-form.js';

/** Steps that a tapered stretch is divided into. */
const STEPS = 40;
const SCANNED = 400;

/** A line whose resonances are asked for: closed at its beginning, open at a distance from it. */
interface OpenLine {
  readonly stretches: readonly Stretch[];
  readonly length: number;
  readonly openAt: number;
  /** What the air around the opening adds to the length, m. */
  readonly endCorrection: number;
  readonly speedOfSound: number;
}

/**
 * The first two resonances of a line without loss, Hz: the tones for which no air flows at the closed end while the outside keeps the
 * opening at rest. A channel of changing depth counts as many short ones.
 */
export function lineResonances({ stretches, length, openAt, endCorrection, speedOfSound }: OpenLine): number[] {
  const stub = stepsOf(between(stretches, openAt, length)).reverse();
  const line = stepsOf(between(stretches, 0, openAt)).reverse();
  const opening = line[0]!.depth;
  /** Flow at the closed end for k, where the far end of the stub is closed. */
  function flow(k: number): number {
    let [pressure, flow] = [1, 0];
    const pass = ({ length, depth }: { length: number; depth: number }) => {
      const [cos, sin] = [Math.cos(k * length), Math.sin(k * length)];
      [pressure, flow] = [pressure * cos + (flow / depth) * sin, flow * cos - pressure * depth * sin];
    };
    stub.forEach(pass);
    flow += (pressure * opening) / (k * endCorrection);
    line.forEach(pass);
    return flow;
  }
  const found: number[] = [];
  const most = (2 * Math.PI * 3) / length;
  for (let i = 1, before = flow(most / SCANNED); i < SCANNED && found.length < 2; i++) {
    const [low, high] = [(most * i) / SCANNED, (most * (i + 1)) / SCANNED];
    const now = flow(high);
    const root = now * before < 0 ? bracketedRoot(flow, low, high) : undefined;
    if (root?.ok) found.push((root.x * speedOfSound) / (2 * Math.PI));
    before = now;
  }
  return found;
}

const stepsOf = (stretches: readonly Stretch[]) =>
  stretches.flatMap(({ length, from, to }) => {
    const steps = from === to ? 1 : STEPS;
    return Array.from({ length: steps }, (_, i) => ({
      length: length / steps,
      depth: from + ((to - from) * (i + 0.5)) / steps,
    }));
  });
