/** Pages for plain JavaScript, workers and CommonJS: their code runs against the built package, and prints what they say. */
import { execFile } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { expect, test } from 'vitest';

const top = fileURLToPath(new URL('../../', import.meta.url));
/** Made by the build of the packages; the release checks run it first. */
const built = existsSync(join(top, 'packages/core/dist/response/index.cjs'));

const blocks = (page: string, language: string): string[] => {
  const text = readFileSync(join(top, `docs-site/src/content/docs/how-to/${page}.mdx`), 'utf8');
  return [...text.matchAll(new RegExp(`\`\`\`${language}\n([\\s\\S]*?)\`\`\``, 'g'))].map(([, code]) => code as string);
};

test.skipIf(!built).each([
  ['use-plain-javascript', ['box.mjs']],
  ['run-in-a-worker', ['worker.mjs', 'page.mjs']],
  ['trade-volume-depth-and-level', ['worker.mjs', 'front.mjs']],
  ['use-commonjs', ['box.cjs']],
  ['sweep-faster', ['fast.mjs']],
] as const)('%s', async (page, files) => {
  mkdirSync(join(top, '.cache'), { recursive: true });
  const folder = mkdtempSync(join(top, '.cache/plain-'));
  try {
    mkdirSync(join(folder, 'node_modules/@airspring'), { recursive: true });
    symlinkSync(join(top, 'packages/core'), join(folder, 'node_modules/@airspring/core'), 'dir');
    symlinkSync(join(top, 'packages/airspring'), join(folder, 'node_modules/airspring'), 'dir');
    const codes = blocks(page, 'js');
    expect(codes).toHaveLength(files.length);
    for (const [i, name] of files.entries()) writeFileSync(join(folder, name), codes[i] as string);
    // Node alone, without the conditions under which the tests read sources.
    const { NODE_OPTIONS: _, ...env } = process.env;
    const { stdout } = await promisify(execFile)(process.execPath, [files.at(-1) as string], { cwd: folder, env });
    expect(stdout.trim()).toBe(blocks(page, 'text')[0]?.trim());
  } finally {
    rmSync(folder, { recursive: true });
  }
});
