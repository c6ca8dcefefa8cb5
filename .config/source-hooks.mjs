/** How Node finds and reads a module of ours in TypeScript; what was made of a file is kept in .cache. */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const kept = fileURLToPath(new URL('../.cache/source', import.meta.url));
mkdirSync(kept, { recursive: true });
const options = {
  target: 'node20.10',
  sourcemap: 'inline',
  sourcesContent: false,
  tsconfigRaw: '{ "compilerOptions": { "verbatimModuleSyntax": true, "useDefineForClassFields": true } }',
};
const recipe = createHash('sha1').update(JSON.stringify(options)).digest('hex');

/** One may be asked for twice: what follows a question mark is no part of its name. */
const isTypeScript = (url = '') => /\.ts(\?|$)/.test(url);

/** A module of ours names its neighbours as they are called when they are built. */
export function resolve(specifier, context, next) {
  if (!/^\.{1,2}\/.*\.js(\?|$)/.test(specifier) || !isTypeScript(context.parentURL)) return next(specifier, context);
  return next(specifier.replace(/\.js(?=\?|$)/, '.ts'), context);
}

export async function load(url, context, next) {
  if (url.endsWith('?raw')) {
    const text = readFileSync(fileURLToPath(url), 'utf8');
    return { format: 'module', source: `export default ${JSON.stringify(text)}`, shortCircuit: true };
  }
  if (/\.json(\?|$)/.test(url)) return next(url, { ...context, importAttributes: { type: 'json' } });
  if (!isTypeScript(url)) return next(url, context);
  const file = fileURLToPath(url);
  const text = readFileSync(file, 'utf8');
  const name = createHash('sha1').update(`${recipe}\n${file}\n${text}`).digest('hex');
  const place = join(kept, `${name}.js`);
  if (!existsSync(place)) {
    const { transformWithEsbuild } = await import('vite');
    const { code } = await transformWithEsbuild(text, file, options);
    // Other workers read the same folder: a file is there whole or not at all.
    writeFileSync(`${place}.${process.pid}`, code);
    renameSync(`${place}.${process.pid}`, place);
  }
  return { format: 'module', source: readFileSync(place), shortCircuit: true };
}
