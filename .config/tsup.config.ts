import { readFileSync } from 'node:fs';
import { defineConfig } from 'tsup';

/** Run in a package's folder. What its manifest exports as source is what is built: dist/<name> for each subpath. */
const { exports, publishConfig } = JSON.parse(readFileSync('package.json', 'utf8'));
const entry: Record<string, string> = {};
for (const [subpath, target] of Object.entries<{ '@airspring/source'?: string }>(exports)) {
  const source = target['@airspring/source'];
  if (source) entry[subpath === '.' ? 'index' : subpath.slice(2)] = source;
}
for (const made of Object.values<string>(publishConfig.bin ?? {})) {
  const name = made.replace(/^\.\/dist\/|\.js$/g, '');
  entry[name] = `./src/${name}.ts`;
}

export default defineConfig({
  entry,
  format: ['esm', 'cjs'],
  dts: true,
  sourcemap: true,
  treeshake: true,
  clean: true,
  target: 'es2023',
});
