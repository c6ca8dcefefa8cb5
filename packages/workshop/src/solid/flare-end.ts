import { type EndCorrection, flanged, type Opening } from '@airspring/core/duct';
import type { Flare } from './flare.js';

/** Steps in which the air in a flare is divided. */
const STEPS = 400;
/** Shift of t for slopes of the curve, and the least angle at which caps differ from planes. */
const [SHIFT, LEAST_ANGLE] = [1e-6, 1e-4];

/**
 * End correction of a round duct with a flare of any profile, whose depth is part of the length of the duct. The air is
 * divided by caps of spheres that meet the wall at right angles, as the surfaces of equal pressure do in a wide flare.
 * Where the flare is so short that plane slices are nearer to the truth, these are taken.
 *
 * $$ \Delta\ell = \pi a^2\left[\int \frac{dt}{G(t)} + \frac{\epsilon}{\pi b}\right] - D,\qquad
 *    G = \frac{2\pi\varrho^2}{z'}\,\ln\frac{\varrho' + z'}{\varrho' + z'\cos\theta} $$
 *
 * | symbol | unit | meaning |
 * | --- | --- | --- |
 * | $a$, $b$ | m | inner radius of the duct and of the mouth |
 * | $D$ | m | depth |
 * | $\theta$ | rad | angle between the wall and the centre line |
 * | $\varrho$, $z$ | m | radius of the cap, $(a + y)/\sin\theta$, and position of its middle, $x - (a + y)\cot\theta$ |
 * | $\epsilon$ | 1 | 1/2 for a mouth that opens fully, where a half sphere of air begins, and 0.8216 for a straight one; between them by $\cos\theta$ |
 *
 * @validity $k\,b \le 0.5$; end and flare together are within 2.4 % of the potential flow for quarter ellipses and exponential
 *   flares whose depth and widening are 0.4 a to 3 a
 * @returns an {@link EndCorrection}
 * @throws nothing
 * @source rayleigh1896 secs. 304-307: surfaces that are taken as those of equal pressure make the air in the flare too light
 * @example flareEnd(ellipticFlare({ depth: '40 mm', widening: '20 mm' }))({ radius: 0.035 }, 0)
 */
export function flareEnd(flare: Flare, end: EndCorrection = flanged): EndCorrection {
  const correction = (opening: Opening, k: number) => {
    const { radius } = opening;
    const mouth = radius + flare.widening;
    const area = Math.PI * radius ** 2;
    const { inPlanes, mass, cosine } = insideOf(flare, radius);
    const byPlanes = inPlanes + end({ ...opening, radius: mouth }, k) / (Math.PI * mouth ** 2);
    const beyond = (0.8216 * cosine + 0.5 * (1 - cosine)) * mouth;
    // An end of another kind differs in the air outside the mouth.
    const other = end({ ...opening, radius: mouth }, k) - flanged({ radius: mouth }, k);
    const byCaps = mass + (beyond + other) / (Math.PI * mouth ** 2);
    return area * Math.max(byPlanes, byCaps) - flare.depth;
  };
  return Object.assign(correction, {
    sources: [...end.sources, 'rayleigh1896'],
    greatestKa: 0.5,
    estimate: 'the air in a flare is divided by caps of spheres',
  });
}

/** The air in a flare by both ways. */
interface Inside extends ReturnType<typeof caps> {
  readonly inPlanes: number;
}

/** What is known of flares, by the radius of the duct: a search asks for the same diameters again and again. */
const known = /* @__PURE__ */ new WeakMap<Flare, Map<number, Inside>>();
/** So many radii are kept. */
const MOST = 1000;

function insideOf(flare: Flare, radius: number): Inside {
  const radii = known.get(flare) ?? new Map<number, Inside>();
  known.set(flare, radii);
  const found = radii.get(radius) ?? { inPlanes: planes(flare, radius), ...caps(flare, radius) };
  if (radii.size === MOST) radii.clear();
  radii.set(radius, found);
  return found;
}

/** Length over area of the air between plane slices, 1/m. */
function planes({ curve }: Flare, radius: number): number {
  let sum = 0;
  let [x] = curve(0);
  for (let i = 0; i < STEPS; i++) {
    const [next] = curve((i + 1) / STEPS);
    sum += (next - x) / (Math.PI * (radius + curve((i + 0.5) / STEPS)[1]) ** 2);
    x = next;
  }
  return sum;
}

/** The same between caps of spheres, and the cosine of the angle of the mouth. */
function caps({ curve, joints = [] }: Flare, radius: number): { readonly mass: number; readonly cosine: number } {
  const cap = (t: number) => {
    const [[x0, y0], [x1, y1]] = [curve(Math.max(0, t - SHIFT)), curve(Math.min(1, t + SHIFT))];
    const [x, y] = curve(t);
    const angle = Math.max(LEAST_ANGLE, Math.atan2(y1 - y0, x1 - x0));
    return { radius: (radius + y) / Math.sin(angle), middle: x - (radius + y) / Math.tan(angle), angle };
  };
  let mass = 0;
  let last = cap(SHIFT);
  for (let i = 1; i <= STEPS; i++) {
    const next = cap(Math.min(1 - SHIFT, i / STEPS));
    const { radius: ro, angle } = cap((i - 0.5) / STEPS);
    const [grows, moves] = [next.radius - last.radius, next.middle - last.middle];
    const [low, high] = [grows + moves * Math.cos(angle), grows + moves];
    // Where a cone is part of the profile, its caps have one middle. At a corner of the profile two caps coincide.
    const open =
      2 *
      Math.PI *
      ro ** 2 *
      (Math.abs(high - low) < 1e-9 * Math.abs(high) ? (1 - Math.cos(angle)) / high : Math.log(high / low) / moves);
    if (low > 0 && Number.isFinite(open)) mass += 1 / open;
    last = next;
  }
  // Corners of a profile have no caps between their two walls: plane slices bound them.
  return { mass: joints.length > 0 ? 0 : mass, cosine: Math.cos(last.angle) };
}
