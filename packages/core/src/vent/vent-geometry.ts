import type { EndCorrection, LineSection, Opening } from '../duct/index.js';
import type { Field } from '../quantity/index.js';
import type { BendGeometry } from './bend.js';

/** The geometry of a vent without its length, in plain SI numbers. */
export interface VentGeometry extends BendGeometry {
  /** Cross-section of one tube and the effect of its walls on the air. */
  readonly section: LineSection;
  readonly count: number;
  /** Cross-section of all openings together, m². */
  readonly area: number;
  /** Cross-section of all tubes together with their walls, m². */
  readonly outerArea: number;
  readonly inner: Opening;
  readonly outer: Opening;
  readonly innerEnd: EndCorrection;
  readonly outerEnd: EndCorrection;
}

export const endCorrection: Field<EndCorrection> = {
  optional: false,
  read: (faults, value, path) => {
    if (typeof value === 'function') return value as EndCorrection;
    const expected = 'an end correction: a function of the opening and the wave number';
    faults.push({
      code: 'unit',
      path,
      got: value,
      expected,
      remedy: 'Pass flanged, unflanged, or a function of your own.',
    });
    return undefined;
  },
};
