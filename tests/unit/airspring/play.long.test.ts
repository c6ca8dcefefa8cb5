/** `airspring play`: what it says of a recording must be what a timeline of the same box says. */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { pcm16, wavBytes } from '@airspring/transient/recording';
import { expect, test, vi } from 'vitest';
import type { Transient } from '../../../packages/airspring/src/command/play.js';
import { playedBox } from '../../../packages/airspring/src/command/played-box.js';
import { run as command } from '../../../packages/airspring/src/command/run.js';

vi.setConfig({ testTimeout: 60_000 });

const briefs = fileURLToPath(new URL('../../../packages/airspring/briefs', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'airspring-'));
const write = (name: string, content: string | Uint8Array): string => {
  writeFileSync(join(folder, name), content);
  return join(folder, name);
};
async function run(words: readonly string[], load?: Transient) {
  const { status, out, error } = await command(words, folder, () => {}, load && { transient: load });
  return { status, stdout: out, lines: error.split('\n').filter((line) => line !== '') };
}

/** A report in one line. */
const unbroken = (text: string) => text.replace(/\s+/g, ' ');

const bench = JSON.parse(readFileSync(join(briefs, 'whale-bench.json'), 'utf8'));
const brief = { ...bench, wanted: { ...bench.wanted, lowest: '45 Hz' }, box: { kinds: ['closed'] } };
const closed = write('closed.json', JSON.stringify(brief));
const standing = join(briefs, 'old-thunder-box.json');

const sampleRate = '32 kHz';
const seconds = (count: number, value: (t: number) => number) =>
  Float64Array.from({ length: count * 32_000 }, (_, n) => value(n / 32_000));
const wav = (name: string, ...channels: Float64Array[]) =>
  write(name, wavBytes({ sampleRate, channels, format: pcm16 }));
/** A soft tone, in the middle of it a second of a loud one. */
const thunder = seconds(3, (t) => (t >= 1 && t < 2 ? 0.99 : 0.02) * Math.sin(2 * Math.PI * 40 * t));
const recording = wav('thunder.wav', thunder, thunder);
const silent = wav('silent.wav', new Float64Array(32_000));

test('the report says which limit is passed, when, and how much quieter keeps it', async () => {
  const loud = ['play', standing, recording, '--peak', '60 V'];
  const { status, stdout, lines } = await run(loud);
  expect(lines).toEqual([]);
  expect(status).toBe(1);
  expect(stdout).toMatch(/^The old thunder box: the box as it stands, plays\n=+\n/);
  expect(unbroken(stdout)).toContain('the mean of 2 channels');
  expect(stdout).toMatch(/once, 1\.\d s in all, for the first time\s+at 0:01\.0/);
  expect(stdout).toMatch(/! Hearing: /);
  const data = JSON.parse((await run([...loud, '--json'])).stdout);
  const worst = data.account.limits.find(({ name }: { name: string }) => name === 'travel');
  expect(worst.times).toBe(1);
  expect(worst.passages[0].from).toBeCloseTo(1, 9);
  expect(worst.used).toHaveLength(30);
  expect(data.peak.displacement).toHaveLength(30);
  // Played that much quieter, no limit is passed.
  const least = Math.min(
    ...data.account.limits
      .filter(({ name }: { name: string }) => !/quiet|noisy/.test(name))
      .map((one: { louder: number }) => one.louder),
  );
  expect((await run(['play', standing, recording, '--peak', `${60 * least * 0.999} V`])).status).toBe(0);
  expect((await run(['play', standing, recording, '--peak', `${60 * least * 1.001} V`])).status).toBe(1);
});

test('full scale is the peak of the greatest sine of the amplifier, which it just keeps', async () => {
  const full = wav(
    'full.wav',
    seconds(1, (t) => Math.sin(2 * Math.PI * 1000 * t)),
  );
  const { account, fullScaleVoltageRms } = JSON.parse((await run(['play', closed, full, '--json'])).stdout);
  expect(fullScaleVoltageRms).toBe(Number.parseFloat(bench.amplifier.voltage));
  const voltage = account.limits.find(({ name }: { name: string }) => name === 'amplifier voltage');
  expect(voltage.mostUsed).toBeCloseTo(1, 3);
  expect(voltage.times).toBe(0);
});

test('--only plays another design, --svg writes a figure that says the same', async () => {
  const svg = join(folder, 'timeline.svg');
  const { status, stdout } = await run(['play', closed, recording, '--only', 'b', '--svg', svg]);
  expect(stdout).toContain('design B, a closed box');
  const figure = readFileSync(svg, 'utf8');
  expect(figure).toMatch(/^<svg .*<\/svg>\n$/s);
  expect(figure).toContain('design B');
  expect(figure.includes('class="passed"')).toBe(status === 1);
  expect(playedBox(brief, 'A', () => {})).not.toEqual(playedBox(brief, 'B', () => {}));
  expect(await run(['play', closed, recording, '--only', 'Z'])).toEqual({
    status: 2,
    stdout: '',
    lines: ['--only: got "Z"; expected one of A, B. Name a design.'],
  });
  const nowhere = await run(['play', closed, recording, '--svg', join(folder, 'nowhere', 'a.svg')]);
  expect(nowhere.status).toBe(6);
  expect(nowhere.stdout).toContain('The whale bench');
});

test('silence uses no limit', async () => {
  const { status, stdout } = await run(['play', closed, silent]);
  expect(status).toBe(0);
  expect(stdout).toContain('The recording is silent: no limit is used.');
  expect(stdout).not.toMatch(/NaN|Infinity|undefined/);
  expect(unbroken((await run(['play', standing, silent])).stdout)).toContain('The vent is quiet all the time. At most');
});

test('the peak of full scale is written as a brief writes voltages, and is no rms voltage', async () => {
  const played = async (peak: string) =>
    JSON.parse((await run(['play', closed, recording, '--json', '--peak', peak])).stdout);
  expect(await played('20000mV')).toEqual(await played('20 V'));
  for (const peak of ['0 V', '-3 V', '20', '20 mA', '1e9 V', '1e-9 V']) {
    const { status, lines } = await run(['play', closed, recording, `--peak=${peak}`]);
    expect(status).toBe(2);
    expect(lines).toEqual([
      `--peak: got "${peak}"; expected the voltage of a sample of full scale in V or mV, from 0.000001 to 100000 V. Write it like '20 V'.`,
    ]);
  }
});

test('a recording that is too slow for any sound is refused by its own rate', async () => {
  const slow = write('slow.wav', wavBytes({ sampleRate: '479 Hz', channels: [[0.1, 0.2, 0.1]] }));
  const { status, lines } = await run(['play', closed, slow]);
  expect(status).toBe(2);
  expect(lines).toEqual([
    `${slow}: recording.sampleRate: got 479; expected at least 480 Hz. Choose a recording with more samples in each second.`,
  ]);
  const just = write('just.wav', wavBytes({ sampleRate: '480 Hz', channels: [[0.1, 0.2, 0.1]] }));
  expect((await run(['play', closed, just])).status).toBe(0);
});

test('where the package is not installed, one line says how to install it', async () => {
  const load: Transient = async () => {
    const message = "Cannot find package '@airspring/transient' imported from /somewhere/main.js";
    throw Object.assign(new Error(message), { code: 'ERR_MODULE_NOT_FOUND' });
  };
  const { status, lines } = await run(['play', closed, recording], load);
  expect(status).toBe(7);
  expect(lines).toEqual(['a recording is played by another package: npm install @airspring/transient']);
});

test('what is no recording is refused by its path', async () => {
  const [no, text, empty] = ['none.wav', write('text.wav', 'not a sound'), write('empty.wav', '')];
  expect(await run(['play', closed, no])).toMatchObject({ status: 3, lines: ['none.wav: there is no such file'] });
  expect(await run(['play', closed, folder])).toMatchObject({
    status: 3,
    lines: [`${folder}: this is a folder, not a file`],
  });
  for (const path of [text, empty]) {
    const { status, stdout, lines } = await run(['play', closed, path]);
    expect([status, stdout]).toEqual([2, '']);
    expect(lines).toHaveLength(1);
    expect(lines[0]).toContain(`${path}: recording: got `);
  }
  const cut = write('cut.wav', readFileSync(recording).subarray(0, 200_000));
  expect(unbroken((await run(['play', closed, cut])).stdout)).toContain('the end is missing');
});

test('a box that stands is played with a tube of a set, by the mark of the report', async () => {
  const { status, stdout } = await run(['play', standing, recording, '--only', 't8', '--peak', '1 V']);
  expect(status).toBe(0);
  expect(unbroken(stdout)).toContain('the box with the tube T8');
});

test('a box with a line, which has no states, is not played, and says so', async () => {
  const pipe = JSON.parse(readFileSync(join(briefs, 'classroom-organ-pipe.json'), 'utf8'));
  const space = {
    ...pipe.space,
    width: '200 mm',
    height: '700 mm',
    depth: '240 mm',
    exactly: ['width', 'height', 'depth'],
  };
  const wanted = { ...pipe.wanted, lowest: '66 Hz', level: '76 dB', rise: '14 dB', fall: '14 dB' };
  const path = write('pipe.json', JSON.stringify({ ...pipe, space, wanted, line: { ...pipe.line, folds: [1] } }));
  const { status, stdout, lines } = await run(['play', path, recording]);
  expect([status, stdout, lines.length]).toEqual([2, '', 1]);
  expect(lines[0]).toMatch(
    /^design A, a box with a line, cannot be played over time: 'duct 1' is given over frequency/,
  );
});

test('a box with waves in its vents is not played, and says which field of the brief to leave out', async () => {
  const bench = JSON.parse(readFileSync(join(briefs, 'whale-bench.json'), 'utf8'));
  const vent = { ...bench.vent, smallest: '80 mm', largest: '90 mm', waves: true };
  const path = write('waves.json', JSON.stringify({ ...bench, box: { kinds: ['vented'], tuning: '26 Hz' }, vent }));
  const { status, lines } = await run(['play', path, recording]);
  expect([status, lines.length]).toEqual([2, 1]);
  expect(lines[0]).toMatch(
    /^design A, a vented box, cannot be played .* Leave vent\.waves out of the brief to play it\.$/,
  );
});

test('the command line is refused where it cannot be meant', async () => {
  for (const words of [
    ['play'],
    ['play', closed],
    ['play', closed, recording, 'more'],
    ['play', closed, recording, '--scatter'],
    ['play', closed, recording, '--html', 'a.html'],
    ['play', closed, recording, '--svg', ''],
    ['play', closed, recording, '--peak', 'loud'],
    ['play', closed, recording, '--peak', '0 V'],
    ['play', closed, recording, '--peak', '-3 V'],
    ['play', standing, recording, '--only', 'less level'],
    ['play', standing, recording, '--linear', '--nonlinear'],
    ['design', closed, '--nonlinear'],
    ['play', closed, recording, '--nonlinear'],
    ['design', closed, '--peak', '3 V'],
    ['design', closed, '--svg', 'a.svg'],
  ]) {
    const { status, stdout, lines } = await run(words);
    expect([status, stdout, lines.length]).toEqual([2, '', 1]);
    expect(lines[0]).not.toContain('\\n');
  }
});
