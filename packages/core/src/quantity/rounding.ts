/** Lengths closer than a nanometre, m, are the same: 70 mm and twice 3 mm make 76 mm, and in binary a little more. */
export const ROUNDING = 1e-9;
