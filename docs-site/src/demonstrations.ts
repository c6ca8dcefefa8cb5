/** The briefs of the demonstrations and all that is made of each, once a build. */
import type { Brief } from 'airspring';
import oldThunderBox from '../../packages/airspring/briefs/old-thunder-box.json?raw';
import unknownDrivers from '../../packages/airspring/briefs/unknown-drivers.json?raw';
import whaleBench from '../../packages/airspring/briefs/whale-bench.json?raw';
import { briefText, fileName } from './brief-text.js';
import { jobOf } from './job/job.js';
import { type FileName, files, type Told } from './job/told.js';

export interface Demonstration {
  readonly title: string;
  readonly text: string;
  readonly told: Told;
}

function demonstration(written: string): Demonstration {
  const brief = JSON.parse(written) as Brief;
  const text = briefText(brief);
  return { title: brief.title, text, told: jobOf(brief, text) };
}

/** By the last part of the address of their page. */
export const demonstrations: Readonly<Record<string, Demonstration>> = {
  'quiet-vent': demonstration(whaleBench),
  'it-chuffs': demonstration(oldThunderBox),
  'no-sheet': demonstration(unknownDrivers),
};

/** Files beside the page, for those without script: its brief, and what the job made of it. */
export const filesOf = ({ title, text, told }: Demonstration) => [
  { name: 'brief', file: 'brief.json', download: fileName(title, '.json'), text, type: 'application/json' },
  ...Object.entries(told.files).map(([name, { text: body, type }]) => {
    const { ending } = files[name as FileName];
    return { name, file: ending.slice(1), download: fileName(title, ending), text: body, type };
  }),
];
