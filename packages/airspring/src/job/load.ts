/**
 * The impedance may fall to this share of the nominal impedance, and no lower. From memory: the standard was not seen.
 *
 * @source iec60268-5 rated impedance
 */
export const LEAST_OF_NOMINAL = 0.8;

/** The range in which a load is judged, Hz: the audible bass, and up to the end of the band. */
export const loadRange = (highest: number): readonly [from: number, to: number] => [20, Math.max(200, highest)];
