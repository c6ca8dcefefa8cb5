/** Lengths that differ by less than this, in m, count as equal: in binary, 70 mm plus twice 3 mm is a little more than 76 mm. */
export const NANOMETRE = 1e-9;
