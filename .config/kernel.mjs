/**
 * Compiles the kernel of `@airspring/core/simd` into a module that holds its bytes, so that it is loaded without a fetch. Does
 * nothing where that module was made of the same source already. Set-up and build run it.
 */
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const folder = join(dirname(fileURLToPath(import.meta.url)), '..', 'packages', 'core', 'src', 'simd');
const source = readFileSync(join(folder, 'kernel', 'sweep.ts'), 'utf8');
const module = join(folder, 'bytes.ts');
const { version } = createRequire(import.meta.url)('assemblyscript/package.json');
const options = '-O3 --runtime stub --use abort= --noAssert --enable simd --initialMemory 1';
const hash = createHash('sha256').update(`${version} ${options}\n${source}`).digest('hex').slice(0, 16);
const head = `// Made by .config/kernel.mjs of kernel/sweep.ts, ${hash}.\n`;

if (!existsSync(module) || !readFileSync(module, 'utf8').startsWith(head)) {
  const { default: compiler } = await import('assemblyscript/asc');
  let bytes;
  const { error, stderr } = await compiler.main(['sweep.ts', '-o', 'sweep.wasm', ...options.split(' ')], {
    readFile: (name) => (name === 'sweep.ts' ? source : null),
    writeFile: (_, content) => {
      bytes = content;
    },
    listFiles: () => [],
  });
  if (error) throw new Error(`kernel/sweep.ts: ${error.message}\n${stderr}`);
  writeFileSync(module, `${head}export const bytes: readonly number[] = [${bytes.join(', ')}];\n`);
}
