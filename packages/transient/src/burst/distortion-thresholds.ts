/** A band above a tone, and how high its greatest line may stand. */
export interface DistortionBand {
  /** What is in it, as a word for the reader: 'third harmonic'. */
  readonly name: string;
  /** Its ends, as multiples of the frequency of the tone. */
  readonly from: number;
  readonly to: number;
  /** Level re the tone, dB. */
  readonly level: number;
}

/** How much distortion a short tone may have, as a value: a table of your own is passed in like ours. */
export interface DistortionThresholds {
  readonly name: string;
  readonly sources: readonly string[];
  /** Where the numbers come from and how sure they are, in words. */
  readonly basis: string;
  /** Bands from the lowest. */
  readonly bands: readonly DistortionBand[];
}

/** Up to which multiple of the tone the highest band is heard. */
const TOP = 20;

const bands = (second: number, third: number, fifth: number, eighth: number, above: number) => [
  { name: 'second harmonic', from: 1.5, to: 2.25, level: second },
  { name: 'third harmonic', from: 2.25, to: 3.33, level: third },
  { name: 'fourth and fifth harmonic', from: 3.33, to: 5.66, level: fifth },
  { name: 'sixth to eighth harmonic', from: 5.66, to: 8.5, level: eighth },
  { name: 'ninth harmonic and above', from: 8.5, to: TOP, level: above },
];

/**
 * The wider of two public statements of the thresholds of CTA-2010. They disagree by 5 dB from the third harmonic up; the standard
 * itself was not read. The edges of the bands are stated with this one alone.
 */
export const widerThresholds: DistortionThresholds = {
  name: 'wider thresholds',
  sources: ['forumcea2008'],
  basis: 'a public statement of the thresholds of CTA-2010, of 2008; another one is 5 dB narrower',
  bands: bands(-10, -15, -20, -30, -40),
};

/** The narrower of two public statements of the thresholds of CTA-2010: 5 dB less from the third harmonic up. See {@link widerThresholds}. */
export const narrowerThresholds: DistortionThresholds = {
  name: 'narrower thresholds',
  sources: ['primercea2010'],
  basis: 'a public statement of the thresholds of CTA-2010, in a magazine; another one is 5 dB wider',
  bands: bands(-10, -20, -25, -35, -45),
};
