import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { design } from '../../packages/airspring/src/index.js';
import { runRow } from '../measure.js';

/** As published: the build of the packages comes first. */
const command = 'packages/airspring/dist/command/main.js';
const briefs = ['whale-bench', 'campfire-box', 'puppet-thunder', 'impossible-bench'];
const path = (brief: string) => `packages/airspring/briefs/${brief}.json`;

await runRow(
  Object.fromEntries(
    briefs.flatMap((brief) => [
      [
        `warm-${brief}`,
        () => {
          const read = JSON.parse(readFileSync(path(brief), 'utf8'));
          return { call: () => design(read) };
        },
      ],
      [
        `cold-${brief}`,
        () => ({
          elsewhere: true as const,
          call: () => {
            const { status, stderr } = spawnSync(process.execPath, [command, 'design', path(brief)]);
            if (status !== 0 && status !== 1) throw new Error(String(stderr));
          },
        }),
      ],
    ]),
  ),
);
