import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { Row } from './result.js';

interface Measured {
  readonly name: string;
  readonly size?: number;
  readonly sizeLimit?: number;
  readonly passed?: boolean;
}

/** Sizes of imports, brotli, from the built packages: the limits of `.size-limit.json` are the goals. */
export function importSizes(top: string): Row[] {
  const row = (missing: string): Row[] => [
    { id: 'import-size', what: 'imports of the built packages', unit: 'kB', missing },
  ];
  if (!existsSync(join(top, '.size-limit.json'))) return row('no .size-limit.json');
  if (!existsSync(join(top, 'packages/core/dist'))) return row('not built; npm run build');
  const tool = join(top, 'node_modules/.bin/size-limit');
  const { stdout, stderr } = spawnSync(tool, ['--json'], { cwd: top, encoding: 'utf8' });
  let sizes: readonly Measured[];
  try {
    sizes = JSON.parse(stdout) as readonly Measured[];
  } catch {
    return row(`size-limit gave no numbers: ${(stderr ?? '').trim().split('\n')[0] ?? ''}`);
  }
  return sizes.map(({ name, size, sizeLimit, passed }) => ({
    id: `size: ${name}`,
    what: name,
    unit: 'kB',
    ...(size === undefined ? { missing: 'no size' } : { median: size / 1000 }),
    ...(sizeLimit !== undefined && { goal: `≤ ${sizeLimit / 1000} kB` }),
    ...(passed !== undefined && { met: passed }),
  }));
}
