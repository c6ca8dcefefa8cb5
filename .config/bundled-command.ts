import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'tsup';

const main = fileURLToPath(new URL('../packages/airspring/src/command/main.ts', import.meta.url));

/**
 * The command as one file of the sources, in a folder; returns its path. A process of it starts at once, where a loader of
 * TypeScript reads some hundred files first: a test that starts many waits for none of that.
 */
export async function bundledCommand(folder: string): Promise<string> {
  await build({
    config: false,
    silent: true,
    entry: [main],
    outDir: folder,
    outExtension: () => ({ js: '.mjs' }),
    format: 'esm',
    target: 'node20',
    splitting: false,
    noExternal: [/./],
    esbuildOptions: (options) => {
      options.conditions = ['@airspring/source', 'module'];
      options.mainFields = ['module', 'main'];
    },
  });
  return join(folder, 'main.mjs');
}
