import type { FlareMaker } from '../kind/flare-form.js';

/** What makes the flares of vents; 'missing' where the package that does it is not installed. */
export async function installedFlares(): Promise<FlareMaker | 'missing'> {
  try {
    return await import('@airspring/workshop/solid');
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    if (code === 'ERR_MODULE_NOT_FOUND' && message.includes('@airspring/workshop')) return 'missing';
    throw error;
  }
}

type Flared = { readonly flare?: { readonly innerForm?: unknown; readonly outerForm?: unknown } | null };

/** Whether a brief asks for a flare that is no quarter round. */
export function asksForFlare(brief: unknown): boolean {
  const { flare } = (brief ?? {}) as Flared;
  return flare?.innerForm !== undefined || flare?.outerForm !== undefined;
}

/** What to do where the package is missing. */
export const NO_FLARES = 'a flare that is no quarter round is made by another package: npm install @airspring/workshop';
