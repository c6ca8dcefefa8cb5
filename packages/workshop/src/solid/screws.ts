import { type Fault, refuse } from '@airspring/core/fault';
import { NANOMETRE } from '@airspring/core/quantity';
import type { PlanePoint } from '../outline/index.js';
import { faultOf, told } from '../words/told.js';
import { halfWidths, type Section, sidesOf } from './cross-section.js';
import type { Bore } from './swept.js';
import type { VentDrawing } from './vent-drawing.js';

/** Least plastic beside a hole, m (common practice). */
export const BESIDE = 1.5e-3;

/** A flat ring around a cross-section, from one offset beyond it to another, m. */
export interface BoredRing {
  readonly section: Section;
  readonly from: number;
  readonly reach: number;
  readonly thickness: number;
  readonly fineness: number;
}

/** Holes through a ring, m. */
export interface RingScrews {
  readonly count: number;
  readonly diameter: number;
  readonly circle?: number;
  readonly head?: number;
}

/** The holes for screws through the flange of a vent. Throws where there is no room for them. */
export function flangeBores({ section, flange, wall, outerFlare, fineness }: VentDrawing): readonly Bore[] {
  if (flange?.screws === undefined) return [];
  const { reach, thickness, screws } = flange;
  const ring = { section, from: (outerFlare?.widening ?? 0) + wall, reach, thickness, fineness };
  return ringBores(ring, screws, 'flange.screws', 'flange');
}

/** The holes through a ring. Throws, with the path of the screws, where there is no room for them. */
export function ringBores(
  ring: BoredRing,
  screws: RingScrews,
  path: string,
  named: 'flange' | 'frame',
): readonly Bore[] {
  const around = named === 'frame' ? 'cutout' : 'duct';
  const { section, from, reach, thickness, fineness } = ring;
  const { count, diameter, circle, head = 0 } = screws;
  const radius = Math.max(diameter, head) / 2;
  const half = halfWidths(section)[0];
  const offset = circle === undefined || section.form === 'rectangle' ? (from + reach) / 2 : circle / 2 - half;
  const faults: Fault[] = [];
  const [least, most] = [from + radius + BESIDE, reach - radius - BESIDE];
  if (!(offset >= least - NANOMETRE && offset <= most + NANOMETRE)) {
    const room = told`middles of holes ${least} to ${most} beyond the ${around}, which leaves ${BESIDE} beside each hole`;
    const expected =
      least <= most ? room : told`a ${named} that reaches ${least + radius + BESIDE} beyond the ${around}`;
    faults.push(
      faultOf({
        code: 'inconsistent',
        path,
        got: told`${offset}`,
        expected,
        remedy: `Widen the ${named}, or take thinner screws.`,
      }),
    );
  }
  const pitch = section.form === 'round' ? 2 * (half + offset) * Math.sin(Math.PI / count) : Number.POSITIVE_INFINITY;
  if (count > 1 && pitch < 2 * (radius + BESIDE) - NANOMETRE) {
    const expected = told`holes ${2 * (radius + BESIDE)} apart, but they are ${pitch} apart`;
    faults.push(
      faultOf({
        code: 'inconsistent',
        path: `${path}.count`,
        got: String(count),
        expected,
        remedy: 'Take fewer screws.',
      }),
    );
  }
  const sink = Math.max(0, (head - diameter) / 2);
  if (sink > 0 && sink > thickness - BESIDE / 2) {
    const expected = told`a head whose countersink, ${sink}, leaves plastic under it in a ${named} of ${thickness}`;
    faults.push(
      faultOf({
        code: 'inconsistent',
        path: `${path}.head`,
        got: told`${head}`,
        expected,
        remedy: `Thicken the ${named}, or take smaller heads.`,
      }),
    );
  }
  refuse(faults);
  const radii: [number, number][] = [
    [0, radius],
    ...(sink > 0 ? [[sink, diameter / 2] as [number, number]] : []),
    [thickness, diameter / 2],
  ];
  return places(section, offset, count).map((at) => ({ at, offset, radii, sides: sidesOf(radius, 5 * fineness) }));
}

/** On a circle, or in the corners of a slot. The first is off the axes, where a slot turned by a quarter looks the same. */
function places(section: Section, offset: number, count: number): readonly PlanePoint[] {
  const [w, h] = halfWidths(section);
  if (section.form === 'rectangle') {
    const [x, y] = [w + offset, h + offset];
    return [
      [x, y],
      [-x, y],
      [-x, -y],
      [x, -y],
    ];
  }
  return Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * (i + 0.5)) / count;
    return [(w + offset) * Math.cos(angle), (w + offset) * Math.sin(angle)] as const;
  });
}
