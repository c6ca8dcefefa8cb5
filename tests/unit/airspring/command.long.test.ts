import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, existsSync, mkdtempSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { standardShapes } from '@airspring/workshop/shape';
import { briefFields, briefJsonSchema, fieldsText } from 'airspring';
import { expect, test, vi } from 'vitest';
import { bundledCommand } from '../../../.config/bundled-command.js';
import { run as command } from '../../../packages/airspring/src/command/run.js';
import { answerTo } from '../../arbitrary/brief.js';

const top = fileURLToPath(new URL('../../../', import.meta.url));
const briefs = join(top, 'packages/airspring/briefs');
const main = join(top, 'packages/airspring/src/command/main.ts');
const bench = join(briefs, 'whale-bench.json');

// Some of them search.
vi.setConfig({ testTimeout: 60_000 });

/** The command of somebody who stands among the briefs. */
async function run(words: readonly string[], standing = briefs) {
  const { status, out, error } = await command(words, standing);
  return { status, stdout: out, lines: error.split('\n').filter((line) => line !== '') };
}

/** The same as a process, started as npm does: from the top of the repository, told in which folder its reader stands. */
function start(words: readonly string[], standing: string) {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    ['--import', 'tsx', '--conditions=@airspring/source', main, ...words],
    {
      cwd: top,
      encoding: 'utf8',
      env: { ...process.env, npm_package_name: 'airspring-workspace', INIT_CWD: standing },
    },
  );
  return { status, stdout, lines: stderr.split('\n').filter((line) => line !== '') };
}

const folder = mkdtempSync(join(tmpdir(), 'airspring-'));
/** For processes whose start is not what a test is about. */
const bundle = await bundledCommand(join(folder, 'command'));
const write = (name: string, content: string | Uint8Array): string => {
  writeFileSync(join(folder, name), content);
  return join(folder, name);
};

/** A brief whose search is short, where a test asks how an answer is written and not what it is. */
const small = (() => {
  const brief = JSON.parse(readFileSync(bench, 'utf8'));
  return { ...brief, wanted: { ...brief.wanted, lowest: '45 Hz' }, box: { kinds: ['closed'] } };
})();
const smallBrief = write('small.json', JSON.stringify(small));
/** A box that stands, with one saw: it has fewer changes. */
const standingBrief = (() => {
  const brief = JSON.parse(readFileSync(join(briefs, 'old-thunder-box.json'), 'utf8'));
  const standing = { ...brief.standing, keep: ['box', 'drivers', 'wiring'] };
  return write('standing.json', JSON.stringify({ ...brief, standing, workshop: { holeSaws: ['57 mm'] } }));
})();

test('0 and the report with its sketches when the brief is met; the path counts from where the reader stands', () => {
  const { status, stdout, lines } = start(['design', 'small.json'], folder);
  // A slow machine is told that the search goes on.
  expect(lines.filter((line) => !line.startsWith('still searching'))).toEqual([]);
  expect(status).toBe(0);
  expect(stdout).toMatch(/^The whale bench\n=+\n\nEvery wish is met/);
  expect(stdout).toContain('Level at 1 m in half space');
});

test('--json is the answer of the library, whole; a byte order mark is no fault', async () => {
  const { status, stdout } = await run(['design', write('marked.json', `\uFEFF${JSON.stringify(small)}`), '--json']);
  expect(status).toBe(0);
  expect(stdout === `${JSON.stringify(answerTo(small))}\n`).toBe(true);
});

test('1 and a report all the same when it cannot be met', async () => {
  const loud = { ...small, wanted: { ...small.wanted, level: '110 dB' } };
  const { status, stdout, lines } = await run(['design', write('loud.json', JSON.stringify(loud))]);
  expect(lines).toEqual([]);
  expect(status).toBe(1);
  expect(stdout).toContain('No box meets every wish.');
});

test('2 and one line a fault, all at once, each with its path', async () => {
  const brief = JSON.parse(readFileSync(bench, 'utf8'));
  brief.space.width = '480';
  brief.drivers[0].Xmax = '-9 mm';
  brief.wanted.loudness = '92 dB';
  brief.amplifier = {};
  const { status, stdout, lines } = await run(['design', write('broken.json', JSON.stringify(brief))]);
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
  ['no path', ['design'], /expected the path of a brief/],
  ['two paths', ['design', 'a.json', 'b.json'], /expected one path, but also got "b\.json"/],
  ['no verb', [], /expected "design", "play" or "build", got nothing/],
  ['another verb', ['draw', 'a.json'], /expected "design", "play" or "build", got "draw"/],
  ['an unknown option', ['design', 'a.json', '--jsn'], /Unknown option '--jsn'/],
])('2 and one line: %s', async (_, words, expected) => {
  const { status, stdout, lines } = await run(words);
  expect(status).toBe(2);
  expect(stdout).toBe('');
  expect(lines).toHaveLength(1);
  expect(lines[0]).toMatch(expected);
});

const locked = write('locked.json', '{}');
chmodSync(locked, 0);
const endless = join(folder, 'endless.json');
symlinkSync('/dev/zero', endless);
const circle = join(folder, 'circle.json');
symlinkSync(circle, circle);
// Who may read everything has no file that may not be read.
const readable = process.getuid?.() === 0;
const unreadable: readonly (readonly [what: string, path: string, says: RegExp])[] = [
  ['a missing file', 'none.json', /^none\.json: there is no such file$/],
  ['a file taken for a folder', 'whale-bench.json/x', /: there is no such file$/],
  ['a folder', '.', /^\.: this is a folder, not a file$/],
  ...(readable ? [] : [['a locked file', locked, /locked\.json: you have no permission to read this file$/] as const]),
  ['a file without an end', endless, /: the file is larger than 16 MiB, the most that a brief may have$/],
  ['links in a circle', circle, /: its symbolic links form a loop$/],
  ['a name with an escape in it', 'a\u001b[2J\u202e.json', /^a\\u001b\[2J\\u202e\.json: there is no such file$/],
  ['a very long name', 'x'.repeat(5000), /: the name is too long for a file$/],
];
test.each(unreadable)('3 and one line: %s', async (_, path, expected) => {
  const { status, stdout, lines } = await run(['design', path]);
  expect({ status, stdout }).toEqual({ status: 3, stdout: '' });
  expect(lines).toEqual([expect.stringMatching(expected)]);
});

test('a process ends with the same, and says why on the error stream alone', () => {
  const { status, stdout, stderr } = spawnSync(process.execPath, [bundle, 'design', 'none.json'], { encoding: 'utf8' });
  expect({ status, stdout, stderr }).toEqual({ status: 3, stdout: '', stderr: 'none.json: there is no such file\n' });
});

/** The command in a shell, its output led somewhere: the status that a script sees, and the error stream. */
function shell(line: string) {
  const script = line.replace('airspring', `${process.execPath} ${bundle}`);
  const { status, stderr } = spawnSync('bash', ['-c', script], { cwd: top, encoding: 'utf8' });
  // A slow machine is told that the search goes on.
  return { status, lines: stderr.split('\n').filter((one) => one !== '' && !one.startsWith('still searching')) };
}

test.runIf(existsSync('/dev/full'))('4 and one line on a full disk', () => {
  const lines = ['airspring: the report cannot be written: the disk is full'];
  expect(shell('airspring --help > /dev/full')).toEqual({ status: 4, lines });
  expect(shell(`airspring design ${smallBrief} > /dev/full`)).toEqual({ status: 4, lines });
});

test('5 and one line where the reader closes the pipe', () => {
  const { status, lines } = shell(`airspring design --schema | true; exit \${PIPESTATUS[0]}`);
  expect(lines).toEqual(['airspring: the reader of the report closed the pipe early']);
  expect(status).toBe(5);
});

test('Ctrl-C ends it at once', async () => {
  // Of a brief that takes a while, so that the signal comes in the midst of the work.
  const words = [bundle, 'design', join(briefs, 'impossible-bench.json')];
  const child = spawn(process.execPath, words, { stdio: 'ignore' });
  setTimeout(() => child.kill('SIGINT'), 300);
  const [, signal] = await once(child, 'exit');
  expect(signal).toBe('SIGINT');
});

test('no escape and no override of a title or a name reaches the terminal', async () => {
  const brief = structuredClone(small);
  const odd = '\u001b]0;x\u0007\u009b2J\u202e\u2066\nx';
  brief.title = odd;
  brief.drivers[0].name = odd;
  const path = write('odd.json', JSON.stringify(brief));
  const { status, stdout } = await run(['design', path]);
  expect(status).toBe(0);
  expect(stdout.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Cf}]/u);
  expect(stdout).toContain('\\u001b]0;x\\u0007');
  const data = (await run(['design', path, '--json'])).stdout;
  expect(data.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Cf}]/u);
  expect(JSON.parse(data).title).toBe(odd);
  brief[odd] = 1;
  const refused = await run(['design', write('odd-name.json', JSON.stringify(brief))]);
  expect(refused.status).toBe(2);
  expect(refused.lines).toHaveLength(1);
  expect(refused.lines.join('')).not.toMatch(/[\p{Cc}\p{Cf}]/u);
});

test('2 and one line with line and column where the file is not JSON', async () => {
  const path = write('comma.json', '{\r\n  "version": 1,\r\n  "title": "x",,\r\n}\r\n');
  expect(await run(['design', path])).toEqual({
    status: 2,
    stdout: '',
    lines: [`${path}:3:16: this is not JSON; expected a name in double quotes`],
  });
  const blank = write('blank.json', ' \n');
  expect((await run(['design', blank])).lines).toEqual([`${blank}: the file is empty`]);
  const latin = write('latin.json', Uint8Array.from([0x7b, 0x22, 0xb2, 0x22, 0x7d]));
  expect((await run(['design', latin])).lines).toEqual([`${latin}: the file is not UTF-8 text; save it as UTF-8`]);
});

test('a brief may have comments, and commas before closing brackets', async () => {
  const text = readFileSync(smallBrief, 'utf8');
  const noted = write('noted.json', `// The box for the summer\n${text.replace(/}\s*$/, ',\n /* the end */ }')}`);
  const { status, stdout } = await run(['design', noted]);
  expect(status).toBe(0);
  expect(stdout).toBe((await run(['design', smallBrief])).stdout);
});

test('--only prints one box alone, as text and as data', async () => {
  const whole = await run(['design', smallBrief, '--json']);
  const { designs } = JSON.parse(whole.stdout);
  const one = await run(['design', smallBrief, '--only', 'b', '--json']);
  expect(JSON.parse(one.stdout).designs).toEqual([designs[1]]);
  const text = (await run(['design', smallBrief, '--only', 'B'])).stdout;
  expect(text).toContain('Box B');
  expect(text).toContain('TO CUT AND TO PRINT');
  expect(text).not.toContain('Box A');
  const none = await run(['design', smallBrief, '--only', 'Z']);
  expect(none).toEqual({ status: 2, stdout: '', lines: ['there is no box "Z"; there are A, B'] });
  const standing = await run(['design', standingBrief, '--only', 'A']);
  expect(standing.status).toBe(0);
  expect(standing.stdout).toContain('Design A, ');
  expect(standing.stdout).not.toContain('What could be done');
  const unknown = await run(['design', standingBrief, '--only', 'Z']);
  expect(unknown).toEqual({ status: 2, stdout: '', lines: ['there is no design "Z"; there are A, B, C'] });
});

test('--html writes a page whole, replaces an older one, and leaves nothing else behind', async () => {
  const page = write('page.html', 'an older page');
  const { status, stdout } = await run(['design', smallBrief, '--only', 'A', '--html', page]);
  expect(status).toBe(0);
  expect(stdout).toContain('Box A');
  const html = readFileSync(page, 'utf8');
  expect(html).toMatch(/^<!doctype html>.*<\/html>\n$/s);
  expect(html.match(/<article/g)).toHaveLength(1);
  expect(readdirSync(folder).filter((name) => name.includes('part'))).toEqual([]);
  expect((await run(['design', standingBrief, '--html', page])).status).toBe(0);
  const about = readFileSync(page, 'utf8');
  expect(about).toMatch(/^<!doctype html>.*<\/html>\n$/s);
  for (const part of ['What it does now', 'Do this first', 'The steps', 'Sets of tubes']) expect(about).toContain(part);
});

test('6 and one line where the page cannot be written; the report is printed all the same', async () => {
  const page = join(folder, 'nowhere', 'page.html');
  const missing = await run(['design', smallBrief, '--html', page]);
  expect(missing.status).toBe(6);
  expect(missing.stdout).toContain('The whale bench');
  expect(missing.lines).toEqual([`airspring: ${page}: the page cannot be written: there is no such folder`]);
  expect((await run(['design', smallBrief, '--html', folder])).lines).toEqual([
    `airspring: ${folder}: the page cannot be written: this is a folder, not a file`,
  ]);
  expect((await run(['design', smallBrief, '--html', ''])).status).toBe(2);
});

test('--fields prints every field of a brief', async () => {
  const { status, stdout } = await run(['design', '--fields']);
  expect(status).toBe(0);
  expect(stdout).toBe(fieldsText(briefFields({ shapes: standardShapes })));
});

test('--schema prints the JSON Schema, --help the use', async () => {
  const schema = await run(['design', '--schema']);
  expect(schema.status).toBe(0);
  expect(JSON.parse(schema.stdout)).toEqual(briefJsonSchema({ shapes: standardShapes }));
  const help = await run(['--help']);
  expect(help.status).toBe(0);
  expect(help.stdout).toContain('airspring design <brief.json>');
  for (const status of [0, 1, 2, 3, 4, 5, 6, 7, 70, 130])
    expect(help.stdout).toMatch(new RegExp(`^ +${status} +(every|not|the|a) `, 'm'));
});
