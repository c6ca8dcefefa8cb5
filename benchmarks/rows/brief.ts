import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { design } from '../../packages/airspring/src/index.js';
import { runRow } from '../measure.js';

const command = fileURLToPath(new URL('../../packages/airspring/src/command/main.js', import.meta.url));
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
