import { copyFileSync, existsSync } from 'node:fs';
import { defineConfig, type Options } from 'tsup';
import { pureConstants } from './pure-constants.js';

const shared: Options = {
  target: 'node20',
  splitting: true,
  silent: true,
  treeshake: { moduleSideEffects: false },
  esbuildPlugins: [pureConstants],
};

/** Run in a package's folder: each subpath is one entry, as ESM and as CommonJS, with its types; entries share chunks. */
const subpaths: Options = {
  ...shared,
  entry: ['src/index.ts', 'src/*/index.ts'],
  format: ['esm', 'cjs'],
  clean: ['!command/**'],
  // Neighbours are read as they are published, built before this one.
  dts: { compilerOptions: { customConditions: [] } },
};

/** What stands in the file of the command besides our own, each with its licence beside that file. */
const bundled = ['valibot', '@valibot/to-json-schema', 'jsonc-parser'];

/** What people start and nobody imports: one file with all that it needs, which is found and read sooner than forty. */
const command: Options = {
  ...shared,
  // Packages that a command loads on demand stay outside.
  noExternal: [/^(?!@airspring\/(transient|workshop))/],
  external: [/^@airspring\/(transient|workshop)/],
  // Modules can be shaken, and need no loader of their own.
  esbuildOptions: (options) => {
    options.mainFields = ['module', 'main'];
  },
  onSuccess: async () => {
    for (const name of bundled) {
      copyFileSync(`node_modules/${name}/LICENSE.md`, `dist/command/LICENSE-${name.replace(/^.*\//, '')}.md`);
    }
  },
  entry: ['src/command/main.ts'],
  outDir: 'dist/command',
  format: 'esm',
  clean: true,
};

export default defineConfig(existsSync('src/command') ? [subpaths, command] : subpaths);
