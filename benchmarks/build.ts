import {
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import ts from 'typescript';

/** Folders whose TypeScript the rows run, and packages of others that it imports. */
const SOURCES = [
  'packages/core/src',
  'packages/transient/src',
  'packages/workshop/src',
  'packages/airspring/src',
  'benchmarks',
  'tests/circuit',
];
const BORROWED = {
  valibot: 'packages/airspring',
  '@valibot/to-json-schema': 'packages/airspring',
  'eecircuit-engine': 'tests',
  'maxrects-packer': '.',
  fflate: 'packages/workshop',
  '@tarikjabiri/dxf': 'packages/workshop',
};

/**
 * Writes every module as plain JavaScript, one file each, as the packages are published: a loader that compiles on the fly
 * adds a call to each inner function, which would be measured as ours. Gives the folder, laid out as the repository is.
 */
export function build(top: string): string {
  const made = join(top, '.cache/bench/build');
  rmSync(made, { recursive: true, force: true });
  const compilerOptions = { module: ts.ModuleKind.ESNext, target: ts.ScriptTarget.ES2023, verbatimModuleSyntax: true };
  for (const folder of SOURCES) {
    for (const file of readdirSync(join(top, folder), { recursive: true, encoding: 'utf8' })) {
      const to = join(made, folder, file);
      mkdirSync(dirname(to), { recursive: true });
      if (file.endsWith('.mjs')) cpSync(join(top, folder, file), to);
      if (!file.endsWith('.ts')) continue;
      const { outputText } = ts.transpileModule(readFileSync(join(top, folder, file), 'utf8'), { compilerOptions });
      writeFileSync(to.replace(/\.ts$/, '.js'), outputText);
    }
  }
  const link = (target: string, name: string) => {
    const at = join(made, 'node_modules', name);
    mkdirSync(dirname(at), { recursive: true });
    symlinkSync(realpathSync(target), at, 'dir');
  };
  const manifest = (name: string, exports: Record<string, string>) => {
    writeFileSync(join(made, 'packages', name, 'package.json'), JSON.stringify({ type: 'module', exports }));
  };
  writeFileSync(join(made, 'package.json'), JSON.stringify({ type: 'module' }));
  manifest('core', { './*': './src/*/index.js' });
  manifest('transient', { './*': './src/*/index.js' });
  manifest('workshop', { './*': './src/*/index.js' });
  manifest('airspring', { '.': './src/index.js' });
  link(join(made, 'packages/core'), '@airspring/core');
  link(join(made, 'packages/transient'), '@airspring/transient');
  link(join(made, 'packages/workshop'), '@airspring/workshop');
  link(join(made, 'packages/airspring'), 'airspring');
  for (const [name, owner] of Object.entries(BORROWED)) {
    const target = join(top, owner, 'node_modules', name);
    if (existsSync(target)) link(target, name);
  }
  return made;
}
