import type { Profile } from '../duct/index.js';
import { type LawResult, tried } from './law.js';

const PIECES = 200;

/**
 * The laws of every profile of a duct, including your own. Its length is above zero, and so is its radius at each position. Its
 * joints lie within it in rising order. It jumps only at a joint, where sums over a profile are split. It gives the same answer
 * twice, and it names its sources.
 *
 * @validity round ducts
 * @neglects whether the wall is too steep for the formulas, which warn by themselves
 * @returns one result for each law
 * @source rayleigh1896 secs. 303 to 308 (conductivity of a duct of slowly changing width)
 * @example profileLaws(conicalProfile({ innerDiameter: '60 mm', outerDiameter: '90 mm', length: '15 cm' }))
 */
export function profileLaws({ radius, length, joints, sources }: Profile): readonly LawResult[] {
  const positions = Array.from({ length: PIECES + 1 }, (_, i) => (length * i) / PIECES);
  return [
    tried('a length', 'once', () => (length > 0 && length < Infinity ? undefined : `${length} m`)),
    tried('a radius everywhere', `${positions.length} positions`, () => {
      const x = positions.find((at) => !(radius(at) > 0 && radius(at) < Infinity));
      return x === undefined ? undefined : `${radius(x)} m at ${x} m`;
    }),
    tried('joints rise within it', `${joints.length} joints`, () => {
      const i = joints.findIndex((joint, k) => !(joint > (joints[k - 1] ?? 0) && joint < length));
      return i < 0 ? undefined : `joint ${i} at ${joints[i]} m`;
    }),
    tried('no jump except at a joint', `${PIECES} pieces`, () => {
      for (const [i, start] of positions.slice(0, -1).entries()) {
        let [low, high] = [start, positions[i + 1]!];
        for (let k = 0; k < 40; k++) {
          const middle = (low + high) / 2;
          const upper = Math.abs(radius(high) - radius(middle)) > Math.abs(radius(middle) - radius(low));
          if (upper) low = middle;
          else high = middle;
        }
        const isJoint = joints.some((joint) => Math.abs(joint - low) <= 1e-9 * length);
        if (!isJoint && Math.abs(radius(high) - radius(low)) > 1e-6 * radius(low)) return `at ${low} m`;
      }
      return undefined;
    }),
    tried('the same answer twice', 'each position', () => {
      const [first, second] = [positions.map(radius), positions.map(radius)];
      return first.every((value, i) => value === second[i]) ? undefined : 'two answers';
    }),
    tried('sources named', sources.join(', '), () => (sources.length > 0 ? undefined : 'none')),
  ];
}
