import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Brief, design } from '../../packages/airspring/src/index.js';
import { runRow } from '../measure.js';

/** As published: the build of the packages comes first. */
const command = 'packages/airspring/dist/command/main.js';
const demos = ['whale-bench', 'campfire-box', 'puppet-thunder', 'impossible-bench', 'fog-horn', 'classroom-organ-pipe'];
const demoOf = (name: string): Brief =>
  JSON.parse(readFileSync(`packages/airspring/briefs/${name}.json`, 'utf8')) as Brief;
const whale = demoOf('whale-bench');

/** The whale bench with a passive radiator to choose from, and every kind of box allowed. */
const everyKind: Brief = {
  ...whale,
  radiators: [
    {
      name: 'ten-inch radiator, invented',
      Sd: '330 cm²',
      fs: '17 Hz',
      Vas: '110 L',
      Qms: 6,
      Xmax: '14 mm',
      outerDiameter: '260 mm',
      cutoutDiameter: '232 mm',
      depth: '70 mm',
    },
  ],
  box: { QL: 7, kinds: ['closed', 'vented', 'slot-vented', 'flared-vented', 'radiator'] },
};

/** Thirty choices of drivers, none of which plays so loud in 55 L: the report tells what conflicts, and the nearest brief. */
const tenDrivers: Brief = {
  ...whale,
  drivers: Array.from({ length: 10 }, (_, i) => ({
    ...(whale.drivers[0] as Brief['drivers'][number]),
    name: `driver ${i + 1}, invented`,
    fs: `${22 + i} Hz`,
    Vas: `${50 + 4 * i} L`,
    wirings: [{}, { series: 2 }, { parallel: 2 }],
  })),
  wanted: { ...whale.wanted, level: '112 dB' },
};

/** With quiet vents as a wish: the campfire box can have them, the whale bench cannot. */
const quiet = (name: string): Brief => {
  const demo = demoOf(name);
  return { ...demo, vent: { ...demo.vent, quiet: true } };
};

const briefs: Readonly<Record<string, () => Brief>> = {
  ...Object.fromEntries(demos.map((name) => [name, () => demoOf(name)])),
  'quiet-campfire-box': () => quiet('campfire-box'),
  'quiet-whale-bench': () => quiet('whale-bench'),
  'every-kind': () => everyKind,
  'ten-drivers': () => tenDrivers,
};

await runRow(
  Object.fromEntries(
    Object.entries(briefs).flatMap(([name, read]) => [
      [
        `warm-${name}`,
        () => {
          const brief = read();
          return { call: () => design(brief) };
        },
      ],
      [
        `cold-${name}`,
        () => {
          const path = join(mkdtempSync(join(tmpdir(), 'airspring-')), `${name}.json`);
          writeFileSync(path, JSON.stringify(read()));
          return {
            elsewhere: true as const,
            call: () => {
              const { status, stderr } = spawnSync(process.execPath, [command, 'design', path]);
              if (status !== 0 && status !== 1) throw new Error(String(stderr));
            },
          };
        },
      ],
    ]),
  ),
);
