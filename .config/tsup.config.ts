import { copyFileSync, existsSync, readdirSync } from 'node:fs';
import { basename } from 'node:path';
import { defineConfig, type Options } from 'tsup';
import { pureConstants } from './pure-constants.js';

const shared: Options = {
  target: 'node20',
  splitting: true,
  silent: true,
  treeshake: { moduleSideEffects: false },
  esbuildPlugins: [pureConstants],
};

const entries = ['index', ...readdirSync('src').map((folder) => `${folder}/index`)].filter((entry) =>
  existsSync(`src/${entry}.ts`),
);
const checked = `../../.cache/types/${basename(process.cwd())}/src`;

/** Run in a package's folder: each subpath is one entry, as ESM and as CommonJS, with its types; entries share chunks. */
const subpaths: Options = {
  ...shared,
  entry: Object.fromEntries(entries.map((entry) => [entry, `src/${entry}.ts`])),
  format: ['esm', 'cjs'],
  clean: ['!command/**'],
  dts: {
    // The declarations that the check of types has written: nothing is checked a second time. Neighbours stay as they are named.
    entry: Object.fromEntries(entries.map((entry) => [entry, `${checked}/${entry}.d.ts`])),
    compilerOptions: { customConditions: [] },
  },
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
      // With LICENSE in any name, pnpm would take the package to have a licence already, and leave ours out.
      copyFileSync(`node_modules/${name}/LICENSE.md`, `dist/command/NOTICE-${name.replace(/^.*\//, '')}.md`);
    }
  },
  entry: ['src/command/main.ts'],
  outDir: 'dist/command',
  format: 'esm',
  clean: true,
};

export default defineConfig(existsSync('src/command') ? [subpaths, command] : subpaths);
