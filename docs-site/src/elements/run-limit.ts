/** Code on a page may run this long, ms; the clock starts when the worker is there. */
export const LIMIT = 2000;
