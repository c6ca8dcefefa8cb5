import { notNegative, type RatioInput, readFields } from '../quantity/index.js';
import { type LineSection, withoutLoss } from './line-section.js';

/**
 * The same section with walls that take more or less from the air than smooth walls of a round tube: its boundary layer is
 * `factor` times as thick. The factor is 0 without loss. For a wide duct that is not round it is the ratio of its perimeter to
 * that of a circle of the same area, because the loss is proportional to the wetted surface:
 *
 * $$ F'(s) = F\left(\frac{s}{w}\right),\qquad w = \frac{P}{2\sqrt{\pi S}} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $w$ | `factor` | 1 | thickness of the boundary layer over that at smooth round walls |
 * | $F$ | `section` | 1 | fraction of the section in the boundary layer |
 * | $P, S$ | | m, m² | perimeter and area of a duct that is not round |
 *
 * @validity a boundary layer that is thin compared with the duct; rough and porous walls take more than smooth ones, and by how
 *   much must be measured
 * @neglects the corners of the section
 * @returns a {@link LineSection}
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`
 * @source zwikker1949 line constants of a wide tube, whose loss goes with perimeter over area
 * @example withWallLoss(roundSection({ diameter: '169 mm' }), 1.128) // a square duct of 15 cm
 */
export function withWallLoss(section: LineSection, factor: RatioInput): LineSection {
  return wallLossOf(section, readFields('', { factor }, { factor: notNegative('ratio') }).factor);
}

/** {@link withWallLoss} for an unchecked number. */
export const wallLossOf = (section: LineSection, factor: number): LineSection =>
  factor === 0
    ? withoutLoss(section)
    : factor === 1
      ? section
      : { ...section, layer: (s, out) => section.layer(s / factor, out) };
