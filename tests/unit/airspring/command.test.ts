import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { briefJsonSchema, design } from 'airspring';
import { expect, test, vi } from 'vitest';
import { run as command } from '../../../packages/airspring/src/command/run.js';

const top = fileURLToPath(new URL('../../../', import.meta.url));
const briefs = join(top, 'packages/airspring/briefs');
const main = join(top, 'packages/airspring/src/command/main.ts');
const bench = join(briefs, 'whale-bench.json');

// Some of them search.
vi.setConfig({ testTimeout: 60_000 });

/** The command of somebody who stands among the briefs. */
function run(words: readonly string[], standing = briefs) {
  const { status, out, error } = command(words, standing);
  return { status, stdout: out, lines: error.split('\n').filter((line) => line !== '') };
}

/** The same as a process, started as npm does: from the top of the repository, told in which folder its reader stands. */
function start(words: readonly string[]) {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    ['--import', 'tsx', '--conditions=@airspring/source', main, ...words],
    {
      cwd: top,
      encoding: 'utf8',
      env: { ...process.env, npm_package_name: 'airspring-workspace', INIT_CWD: briefs },
    },
  );
  return { status, stdout, lines: stderr.split('\n').filter((line) => line !== '') };
}

const folder = mkdtempSync(join(tmpdir(), 'airspring-'));
const write = (name: string, content: string | Uint8Array): string => {
  writeFileSync(join(folder, name), content);
  return join(folder, name);
};

test('0 and the report with its sketches when the brief is met; the path counts from where the reader stands', () => {
  const { status, stdout, lines } = start(['design', 'whale-bench.json']);
  expect(lines).toEqual([]);
  expect(status).toBe(0);
  expect(stdout).toMatch(/^The whale bench\n=+\n\nEvery wish is met/);
  expect(stdout).toContain('Level at one metre');
});

test('--json is the answer of the library, whole; a byte order mark is no fault', () => {
  const brief = JSON.parse(readFileSync(bench, 'utf8'));
  const { status, stdout } = run(['design', write('marked.json', `\uFEFF${JSON.stringify(brief)}`), '--json']);
  expect(status).toBe(0);
  expect(stdout === `${JSON.stringify(design(brief))}\n`).toBe(true);
});

test('1 and a report all the same when it cannot be met', () => {
  const { status, stdout, lines } = run(['design', 'impossible-bench.json']);
  expect(lines).toEqual([]);
  expect(status).toBe(1);
  expect(stdout).toContain('No box meets every wish.');
});

test('2 and one line a fault, all at once, each with its path', () => {
  const brief = JSON.parse(readFileSync(bench, 'utf8'));
  brief.space.width = '480';
  brief.drivers[0].Xmax = '-9 mm';
  brief.wanted.loudness = '92 dB';
  brief.amplifier = {};
  const { status, stdout, lines } = run(['design', write('broken.json', JSON.stringify(brief))]);
  expect(status).toBe(2);
  expect(stdout).toBe('');
  expect(lines.map((line) => line.split(':')[0]).sort()).toEqual([
    'amplifier.voltage',
    'drivers[0].Xmax',
    'space.width',
    'wanted.loudness',
  ]);
});

test.each([
  ['a missing file', ['design', 'none.json'], /^none\.json: there is no such file$/],
  ['a folder', ['design', '.'], /^\.: that is a folder$/],
  ['no path', ['design'], /expected the path of a brief/],
  ['two paths', ['design', 'a.json', 'b.json'], /expected one path, got also "b\.json"/],
  ['no verb', [], /expected "design", got nothing/],
  ['another verb', ['draw', 'a.json'], /expected "design", got "draw"/],
  ['an unknown option', ['design', 'a.json', '--jsn'], /Unknown option '--jsn'/],
])('2 and one line: %s', (_, words, expected) => {
  const { status, stdout, lines } = run(words);
  expect(status).toBe(2);
  expect(stdout).toBe('');
  expect(lines).toHaveLength(1);
  expect(lines[0]).toMatch(expected);
});

test('a process that is refused ends with 2 as well, and says why on the error stream alone', () => {
  const words = ['design', 'none.json'];
  expect(start(words)).toEqual({ status: 2, stdout: '', lines: ['none.json: there is no such file'] });
});

test('2 and one line with line and column where the file is not JSON', () => {
  const path = write('comma.json', '{\r\n  "version": 1,\r\n  "title": "x",\r\n}\r\n');
  expect(run(['design', path])).toEqual({
    status: 2,
    stdout: '',
    lines: [`${path}:4:1: this is not JSON here; expected a name in double quotes`],
  });
  const blank = write('blank.json', ' \n');
  expect(run(['design', blank]).lines).toEqual([`${blank}: that file is empty`]);
  const latin = write('latin.json', Uint8Array.from([0x7b, 0x22, 0xb2, 0x22, 0x7d]));
  expect(run(['design', latin]).lines).toEqual([`${latin}: that is not a text in UTF-8; save it as UTF-8`]);
});

test('--schema prints the JSON Schema, --help the use', () => {
  const schema = run(['design', '--schema']);
  expect(schema.status).toBe(0);
  expect(JSON.parse(schema.stdout)).toEqual(briefJsonSchema());
  const help = run(['--help']);
  expect(help.status).toBe(0);
  expect(help.stdout).toContain('airspring design <brief.json>');
});
