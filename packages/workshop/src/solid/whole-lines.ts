/** The usual nozzle of printers that melt plastic, m (common practice). */
export const usualNozzle = 4e-4;

/** The least whole number of lines of a nozzle that is as thick as a wall, m. */
export const wholeLines = (wall: number, nozzle: number): number => Math.ceil(wall / nozzle - 1e-6) * nozzle;
