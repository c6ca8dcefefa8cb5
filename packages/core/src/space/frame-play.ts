/** Room for the frame of a driver in its recess, on the diameter, m (common practice). */
export const framePlay = 1e-3;
