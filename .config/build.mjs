/**
 * Run in a package's folder: each module of src becomes one of dist, as ESM and as CommonJS, with its types.
 * No bundle: a bundler of the reader leaves out a whole module that nobody uses, but not the first lines of one merged with
 * others; and one module is one class InputError, whichever subpath it was reached by.
 */
import { spawnSync } from 'node:child_process';
import { chmodSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import ts from 'typescript';

rmSync('dist', { recursive: true, force: true });
const compiler = createRequire(import.meta.url).resolve('typescript/bin/tsc');
// Neighbours are read as they are published, built before this one.
const options = '--noEmit false --noEmitOnError --declaration --rootDir src --outDir dist --customConditions null';
const { status } = spawnSync(process.execPath, [compiler, ...options.split(' ')], { stdio: 'inherit' });
if (status !== 0) process.exit(1);

/** Relative paths, as a CommonJS module names its neighbours. */
const renamed = (text) => text.replace(/(\bfrom |\bimport\(|\bimport )(['"]\..*?)\.js(['"])/g, '$1$2.cjs$3');
const commonJs = { module: ts.ModuleKind.CommonJS, target: ts.ScriptTarget.ES2023, esModuleInterop: true };

const commands = Object.values(JSON.parse(readFileSync('package.json', 'utf8')).publishConfig.bin ?? {});
for (const command of commands) chmodSync(command, 0o755);
const commandFolders = commands.map((command) => dirname(command));
for (const file of readdirSync('dist', { recursive: true, encoding: 'utf8' })) {
  const path = join('dist', file);
  if (commandFolders.includes(`./${dirname(path)}`)) continue;
  if (path.endsWith('.d.ts')) {
    writeFileSync(path.replace(/\.d\.ts$/, '.d.cts'), renamed(readFileSync(path, 'utf8')));
  } else if (path.endsWith('.js')) {
    const { outputText } = ts.transpileModule(renamed(readFileSync(path, 'utf8')), { compilerOptions: commonJs });
    writeFileSync(path.replace(/\.js$/, '.cjs'), outputText);
  }
}
