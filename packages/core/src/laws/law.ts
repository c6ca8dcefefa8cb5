/** One law, and whether it is obeyed. */
export interface LawResult {
  readonly law: string;
  readonly holds: boolean;
  /** Where the law is broken, or how far it was tried. */
  readonly detail: string;
}

/** The result of a law that holds as far as it was tried. */
const holds = (law: string, tried: string): LawResult => ({ law, holds: true, detail: tried });

/** The result of a law that is broken, and where. */
export const broken = (law: string, where: string): LawResult => ({ law, holds: false, detail: where });

/**
 * Runs a trial, which returns the fault that it found, if any. An exception breaks the law just as a wrong number does. How far it
 * was tried is a text, or is asked for afterwards.
 */
export function tried(law: string, extent: string | (() => string), fault: () => string | undefined): LawResult {
  try {
    const found = fault();
    if (found !== undefined) return broken(law, found);
    return holds(law, typeof extent === 'string' ? extent : extent());
  } catch (error) {
    return broken(law, `threw ${error instanceof Error ? error.message : String(error)}`);
  }
}

/** Whether two finite numbers are equal except for rounding. */
export const alike = (a: number, b: number, relative = 1e-9): boolean =>
  Number.isFinite(a) && Number.isFinite(b) && Math.abs(a - b) <= relative * Math.max(Math.abs(a), Math.abs(b));

/** The same for numbers of elements. They may be infinite, like the compliance of the space behind a wall. */
export const alikeNumbers = (a: number, b: number): boolean => a === b || alike(a, b);
