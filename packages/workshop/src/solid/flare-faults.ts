import type { Fault } from '@airspring/core/fault';
import { faultOf, told } from '../words/told.js';
import type { Flare } from './flare.js';

/** Faults of a flare that somebody else wrote: of its fields, and of its curve at 65 places. */
export function flareFaults(flare: Flare, path: string): Fault[] {
  if (!isFlare(flare)) {
    const expected = `a flare: depth and widening of at most ${LONGEST} m, curve (a function that gives two numbers), joints in increasing order`;
    const remedy = 'Give roundFlare({ radius }) or one of your own.';
    return [{ code: 'inconsistent', path, got: flare, expected, remedy }];
  }
  const tried = Array.from({ length: SAMPLES + 1 }, (_, i) => i / SAMPLES);
  return curveFaults(flare, tried, (i) => `${path}.curve(${tried[i]!.toFixed(2)})`, `${path}.depth`);
}

/** Faults of a curve that runs back, so that the wall would cross itself, or that does not go where the flare says. */
export function curveFaults(
  flare: Flare,
  tried: readonly number[],
  pathOfPlace: (i: number) => string,
  pathOfDepth: string,
): Fault[] {
  const points = tried.map((t) => flare.curve(t));
  const faults: Fault[] = [];
  const remedy = 'Give it from the throat to the mouth.';
  points.forEach(([x, y], i) => {
    if (Number.isFinite(x) && Number.isFinite(y)) return;
    faults.push({
      code: 'not-finite',
      path: pathOfPlace(i),
      got: [x, y].find((v) => !Number.isFinite(v)),
      expected: 'finite lengths in m',
      remedy,
    });
  });
  if (faults.length > 0) return faults.slice(0, 1);
  const last = points.at(-1)!;
  const near = (a: number, b: number) => Math.abs(a - b) <= 1e-6;
  if (!near(points[0]![0], 0) || !near(points[0]![1], 0)) {
    faults.push({
      code: 'inconsistent',
      path: pathOfPlace(0),
      got: points[0]!.join(', '),
      expected: 'the throat, 0, 0',
      remedy,
    });
  }
  if (!near(last[0], flare.depth) || !near(last[1], flare.widening)) {
    const expected = `its depth and widening, ${flare.depth}, ${flare.widening}`;
    faults.push({ code: 'inconsistent', path: pathOfPlace(points.length - 1), got: last.join(', '), expected, remedy });
  }
  if (!(flare.depth >= SHORTEST)) {
    const expected = told`a depth of ${SHORTEST} or more`;
    faults.push(faultOf({ code: 'not-positive', path: pathOfDepth, got: flare.depth, expected, remedy }));
  }
  for (let i = 1; i < points.length; i++) {
    const [[x, y], [beforeX]] = [points[i]!, points[i - 1]!];
    if (x >= beforeX - 1e-12 && y >= -1e-12) continue;
    const expected =
      x < beforeX
        ? told`a distance from the throat of ${beforeX} or more: it runs back and would cross itself`
        : 'a widening of zero or more';
    const [code, got] = x < beforeX ? (['unsorted', x] as const) : (['not-positive', y] as const);
    faults.push(faultOf({ code, path: pathOfPlace(i), got, expected, remedy }));
    break;
  }
  return faults;
}

/** What a stranger gives may lack anything. */
function isFlare(flare: Partial<Flare> | undefined): boolean {
  if (typeof flare?.curve !== 'function') return false;
  const { depth, widening, joints = [], endCorrection } = flare;
  const sizes = [depth, widening].every((size) => typeof size === 'number' && Math.abs(size) <= LONGEST);
  const joined =
    Array.isArray(joints) && joints.every((t, i) => typeof t === 'number' && t > (joints[i - 1] ?? 0) && t < 1);
  const point = flare.curve(0.5);
  const gives = Array.isArray(point) && point.length === 2 && point.every((x) => typeof x === 'number');
  return sizes && joined && gives && (endCorrection === undefined || typeof endCorrection === 'function');
}

/** The shortest and the longest flare that any printer makes, m. */
const [SHORTEST, LONGEST] = [1e-5, 10];

/** Places at which a flare of a stranger is tried. */
const SAMPLES = 64;
