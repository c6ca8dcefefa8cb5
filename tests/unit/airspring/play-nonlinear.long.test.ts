/** `airspring play` where level bends what a box does: what the brief tells of it is simulated, and the report says so. */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { float64, pcm16, wavBytes } from '@airspring/transient/recording';
import { expect, test } from 'vitest';
import { playedBox } from '../../../packages/airspring/src/command/played-box.js';
import { run as command } from '../../../packages/airspring/src/command/run.js';
import { faultsOf } from '../../refusal/faults.js';

const briefs = fileURLToPath(new URL('../../../packages/airspring/briefs', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'airspring-'));
const write = (name: string, content: string | Uint8Array): string => {
  writeFileSync(join(folder, name), content);
  return join(folder, name);
};
async function run(...words: readonly string[]) {
  const { status, out, error } = await command(words, folder);
  return { status, out: out.replace(/\s+/g, ' '), lines: error.split('\n').filter((line) => line !== '') };
}
const data = async (...words: readonly string[]) => JSON.parse((await run(...words, '--json')).out);

const standing = join(briefs, 'old-thunder-box.json');
const written = JSON.parse(readFileSync(standing, 'utf8'));
const [driver] = written.drivers;
/** The old thunder box with a driver of which more is told. */
const told = (name: string, largeSignal: object): string =>
  write(name, JSON.stringify({ ...written, drivers: [{ ...driver, largeSignal }] }));

const second = Float64Array.from({ length: 24_000 }, (_, n) => 0.9 * Math.sin((2 * Math.PI * 40 * n) / 32_000));
const recording = write('tone.wav', wavBytes({ sampleRate: '32 kHz', channels: [second], format: pcm16 }));

const bent = {
  forceFactor: { reach: '8 mm', coefficients: [0.02, -0.35] },
  stiffness: { reach: '8 mm', coefficients: [0, 0.9] },
  Xmech: '11 mm',
  heat: { coilToMagnet: '3.5 K/W', magnetToAir: '1.5 K/W', coilTime: '4 s', magnetTime: '900 s' },
};

test('a driver that tells more is simulated as it bends; --linear leaves that out', async () => {
  const path = told('bent.json', bent);
  const loud = ['play', path, recording, '--peak', '90 V'] as const;
  const [curved, straight, plain] = await Promise.all([
    data(...loud),
    data(...loud, '--linear'),
    data('play', standing, recording, '--peak', '90 V'),
  ]);
  expect(straight.account).toEqual(plain.account);
  expect(curved.simulation).toMatchObject({ kind: 'nonlinear', untold: ['the inductance over displacement'] });
  expect(curved.simulation.includes).toContain('a stop of the cone');
  expect(straight.simulation).toMatchObject({ kind: 'linear', includes: [] });
  // The stop holds the cone near it, where a linear one goes on; the warm coil takes less current.
  expect(straight.account.peak.displacement).toBeGreaterThan(0.014);
  expect(curved.account.peak.displacement).toBeGreaterThan(0.008);
  expect(curved.account.peak.displacement).toBeLessThan(0.0125);
  expect(curved.account.peak.coilRise).toBeGreaterThan(5);
  expect(curved.simulation.beyond).toMatchObject({ reach: 0.008 });
  expect(curved.account.unsolved).toBe(0);
  const { out } = await run(...loud);
  expect(out).toMatch(/The simulation is nonlinear\. What changes with level in it: the force factor over/);
  expect(out).toContain('Left out, since the brief does not tell it: the inductance over displacement.');
  expect(out).toMatch(/the curves are known up to 8 mm/);
});

test('the level at which every limit is just kept is one that was played', async () => {
  const path = told('bent.json', bent);
  for (const peak of [90, 5]) {
    const { again } = await data('play', path, recording, '--peak', `${peak} V`);
    expect(Math.abs(again.mostUsed - 1)).toBeLessThan(0.01);
    const played = await data('play', path, recording, '--peak', `${peak * again.louder} V`);
    const used = played.account.limits.find(({ name }: { name: string }) => name === again.limit).mostUsed;
    expect(used).toBeCloseTo(again.mostUsed, 9);
  }
});

test('a recording so faint that no amplifier brings it to a limit is told in proportion', async () => {
  const tone = Float64Array.from({ length: 8000 }, (_, n) => 1e-12 * Math.sin((2 * Math.PI * 40 * n) / 32_000));
  const faint = write('faint.wav', wavBytes({ sampleRate: '32 kHz', channels: [tone], format: float64 }));
  const { status, out } = await run('play', standing, faint, '--nonlinear');
  expect(status).toBe(0);
  expect(out).toMatch(/the recording may be played 2\d\d\.\d dB louder\./);
  expect(out).not.toContain('Played again');
});

test('--nonlinear gives the vent its loss alone, which slows the air', async () => {
  const loud = ['play', standing, recording, '--peak', '60 V'] as const;
  const [straight, lossy] = await Promise.all([data(...loud), data(...loud, '--nonlinear')]);
  expect(straight.simulation.leftOut).toEqual(['the loss of the vent (by data of steady flow)']);
  expect(lossy.simulation.includes).toEqual(straight.simulation.leftOut);
  expect(lossy.account.peak.ventAirSpeed).toBeLessThan(0.95 * straight.account.peak.ventAirSpeed);
  // Softly played, it is as good as linear.
  const soft = ['play', standing, recording, '--peak', '0.05 V'] as const;
  const [a, b] = await Promise.all([data(...soft), data(...soft, '--nonlinear')]);
  expect(b.account.peak.ventAirSpeed / a.account.peak.ventAirSpeed).toBeCloseTo(1, 2);
});

test('what cannot be simulated so is refused at its place', async () => {
  const negative = told('negative.json', { stiffness: { reach: '8 mm', coefficients: [0, -1.2] } });
  const { status, lines } = await run('play', negative, recording);
  expect(status).toBe(2);
  expect(lines).toHaveLength(1);
  expect(lines[0]).toMatch(/^drivers\[0\]\.largeSignal\.stiffness\.coefficients: got "zero at -?7\.30 mm"/);
  expect((await run('play', told('none.json', { heat: { coilTime: '3 s' } }), recording)).status).toBe(2);
});

test('a change to a box that stands is played by its name, its number, or the letter of a combination', () => {
  const boxOf = (only: string) => {
    const box = playedBox(written, only, () => {});
    if (!box.ok) throw new Error(box.lines.join(' '));
    return box;
  };
  const refused = faultsOf(() => boxOf('Z'));
  const [, number] = /(\d+) \(a slot\)/.exec(refused[0]?.expected ?? '')!;
  const [slot, design] = [boxOf(number!), boxOf('a')];
  expect(slot.called).toBe('the box with a slot');
  expect(slot.vents[0]?.vent).toHaveProperty('width');
  expect(JSON.stringify(boxOf('A Slot'))).toBe(JSON.stringify(slot));
  expect(design.called).toMatch(/^design A, the box with /);
  expect(JSON.stringify(design.system.network.values)).not.toBe(JSON.stringify(slot.system.network.values));
});
