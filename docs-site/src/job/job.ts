import type { Brief } from 'airspring';
import { stands } from '../../../packages/airspring/src/standing/read.js';
import { designJob } from './design-job.js';
import { retrofitJob } from './retrofit-job.js';
import type { Told } from './told.js';

/** The whole job of a brief: a new box, or one that stands; `text` is the brief as its reader wrote it. */
export const jobOf = (brief: unknown, text: string): Told =>
  stands(brief) ? retrofitJob(brief as Brief) : designJob(brief as Brief, text);
