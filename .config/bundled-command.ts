import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'tsup';

const main = fileURLToPath(new URL('../packages/airspring/src/command/main.ts', import.meta.url));

/**
 * A script of the sources with all that it imports as one file, in a folder; returns its path. It starts at once, where a loader of
 * TypeScript reads some hundred files first: a test that starts many waits for none of that.
 */
export async function bundledScript(script: string, folder: string, format: 'esm' | 'cjs' = 'esm'): Promise<string> {
  const extension = { esm: '.mjs', cjs: '.cjs' }[format];
  await build({
    config: false,
    silent: true,
    entry: [script],
    outDir: folder,
    outExtension: () => ({ js: extension }),
    format,
    target: 'node20',
    splitting: false,
    noExternal: [/./],
    esbuildOptions: (options) => {
      options.conditions = ['@airspring/source', 'module'];
      options.mainFields = ['module', 'main'];
    },
  });
  return join(folder, basename(script, '.ts') + extension);
}

/** The command as such a file. */
export const bundledCommand = (folder: string): Promise<string> => bundledScript(main, folder);
