import type { BriefFor } from '../brief/schema.js';
import { closed } from './closed.js';
import { radiatorBox } from './radiator.js';
import { vented } from './vented.js';

/** The kinds of box that are tried when none are passed in. */
export const standard = [closed, vented, radiatorBox] as const;

/** A brief for these kinds as it stands in a file. */
export type Brief = BriefFor<typeof standard>;
