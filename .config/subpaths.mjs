import { readdirSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';

/** The subpaths of a built package as its `exports` name them after the package's name: '.' alone, or 'air', 'driver' … */
export const subpathsOf = (folder) =>
  readdirSync(join(folder, 'dist'), { recursive: true, encoding: 'utf8' })
    .filter((file) => basename(file) === 'index.d.ts')
    .map((file) => dirname(file))
    .sort();
