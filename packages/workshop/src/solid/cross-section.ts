import type { PlanePoint } from '../outline/index.js';
import { circleOf } from './swept.js';

/** The clear cross-section of a duct, in plain SI numbers. */
export type Section =
  | { readonly form: 'round'; readonly diameter: number }
  | { readonly form: 'rectangle'; readonly width: number; readonly height: number };

/** Area of the cross-section where it is wider by an offset on each side, m². */
export const sectionArea = (section: Section, offset = 0): number =>
  section.form === 'round'
    ? Math.PI * (section.diameter / 2 + offset) ** 2
    : (section.width + 2 * offset) * (section.height + 2 * offset);

/** Half the width of the cross-section in each direction, m. */
export const halfWidths = (section: Section): PlanePoint =>
  section.form === 'round' ? [section.diameter / 2, section.diameter / 2] : [section.width / 2, section.height / 2];

/** Sides of a polygon that stays within `chord` of a circle; a multiple of four, so that it is as wide along each axis. */
export const sidesOf = (radius: number, chord: number): number =>
  4 * Math.max(4, Math.ceil(Math.PI / 4 / Math.acos(1 - Math.min(0.5, chord / radius))));

/** The line around a cross-section at an offset, with the same number of points at each. */
export function around(section: Section, sides: number): (offset: number) => readonly PlanePoint[] {
  if (section.form === 'round') {
    const unit = circleOf(1, sides);
    return (offset) => unit.map(([x, y]) => [x * (section.diameter / 2 + offset), y * (section.diameter / 2 + offset)]);
  }
  const [w, h] = halfWidths(section);
  return (offset) => [
    [w + offset, h + offset],
    [-w - offset, h + offset],
    [-w - offset, -h - offset],
    [w + offset, -h - offset],
  ];
}
