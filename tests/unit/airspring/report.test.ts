import { readFileSync } from 'node:fs';
import type { Answer, Design, Met, NotMet } from 'airspring';
import { describe, expect, test } from 'vitest';
import { reportText } from '../../../packages/airspring/src/words/report-text.js';
import { sketchText } from '../../../packages/airspring/src/words/sketch.js';
import { answerTo } from '../../arbitrary/brief.js';

const briefOf = (name: string) =>
  JSON.parse(readFileSync(new URL(`../../../packages/airspring/briefs/${name}.json`, import.meta.url), 'utf8'));
const bench = answerTo(briefOf('whale-bench')) as Met;
const impossible = answerTo(briefOf('impossible-bench')) as NotMet;
const first = bench.designs[0] as Design;
const flat = (text: string) => text.replace(/\s+/g, ' ');
/** The report of the bench with its first design changed, and no other design beside it. */
const changed = (change: Partial<Design>): string =>
  flat(reportText({ ...bench, designs: [{ ...first, words: [], ...change }] }));
const mm = (metres: number) => String(Number((metres * 1000).toFixed(1)));

describe('a brief that is met', () => {
  const report = reportText(bench);
  const text = flat(report);

  test('the first paragraph answers: which box and vent, how loud, what gives out first and where', () => {
    const answer = flat(report.split('\n\n')[1] as string);
    const vent = first.vent as NonNullable<Design['vent']>;
    expect(answer).toContain(`${first.box.outer.map(mm).join(' × ')} mm outside`);
    expect(answer).toContain(`tuned to ${vent.fb.toFixed(1)} Hz by one vent of ${mm(vent.diameter)} mm`);
    expect(answer).toContain(`inner diameter and ${mm(vent.length)} mm length`);
    expect(answer).toContain(`${first.loudness.level.toFixed(1)} dB at any frequency from 30 Hz to 120 Hz`);
    expect(answer).toContain(
      `the first limit it reaches is the air speed in the vent, at ${first.loudness.frequency.toFixed(1)} Hz`,
    );
  });

  test('every panel and hole of every design is there with its place', () => {
    for (const { box } of bench.designs) {
      for (const { name, length, width } of box.panels) {
        expect(text).toContain(`${name} ${mm(length)} × ${mm(width)} mm`);
      }
      for (const hole of box.holes) {
        if (hole.form !== 'circle') throw new Error('every hole of this brief is round');
        const { what, face, diameter, across, up, from } = hole;
        const place = `${mm(across)} mm from ${from[0]}, ${mm(up)} mm from ${from[1]}`;
        expect(text).toContain(`${what} ${face} ${mm(diameter)} mm ${place}`);
      }
    }
  });

  test('every margin, every word against the first design, every printed piece', () => {
    for (const { what, value, sense, limit } of first.margins) {
      expect(text).toContain(`${what} ${value} ${sense} ${limit}`);
    }
    for (const { words } of bench.designs) for (const word of words) expect(text).toContain(word);
    const pieces = first.vent?.pieces ?? [];
    expect(text).toContain(`from the flange inwards: ${pieces.map((piece) => `${mm(piece)} mm`).join(', ')}`);
  });

  test('each caution stands once, and where its step is', () => {
    const lines = report.split('\n').filter((line) => line.startsWith('! '));
    const cautions = flat(lines.map((line) => line.slice(2)).join(' '));
    for (const caution of first.cautions) expect(cautions.split(caution)).toHaveLength(2);
    const at = (words: string) => {
      expect(report).toContain(words);
      return report.indexOf(words);
    };
    expect(at('! Dust')).toBeGreaterThan(at('Cut these holes'));
    expect(at('! Dust')).toBeLessThan(at('Make one tube'));
    expect(at('! Fumes')).toBeGreaterThan(at('Print the tube'));
    expect(at('! Hearing')).toBeGreaterThan(at('HOW LOUD'));
    expect(at('! Hearing')).toBeLessThan(at('BELOW THE BAND'));
    expect(at('! Driver')).toBeGreaterThan(at('BELOW THE BAND'));
    expect(at('! Mains')).toBeGreaterThan(at('IMPEDANCE'));
  });

  test('the air speed is a stated one, and quiet is what lies below every published onset', () => {
    const { noise, compression } = first.opening!;
    expect(text).toContain('The limit on the air speed in a vent is common practice.');
    expect(text).toContain(
      `Up to ${noise.quiet.level.toFixed(1)} dB the vent is quiet: it stays below every one of them. The first is "${noise.quiet.onset}", at ${noise.quiet.frequency.toFixed(1)} Hz.`,
    );
    expect(text).toContain(`Above ${noise.noisy.level.toFixed(1)} dB it has passed them all and is noisy.`);
    expect(text).toContain(
      `by about ${compression!.nominal.toFixed(1)} dB at ${compression!.frequency.toFixed(1)} Hz.`,
    );
    // The head of the report says it too, since the wanted level is louder.
    expect(text).toContain(`may be heard: it is quiet up to ${noise.quiet.level.toFixed(1)} dB only.`);
    expect(text.match(/quiet|whistl|silen/gi)).toEqual(['quiet', 'quiet']);
  });

  test('lengths and volumes in the units asked for, and no others', () => {
    const inches = reportText(bench, { length: 'in', volume: 'ft³' });
    expect(flat(inches)).toContain(
      `${first.box.outer.map((edge) => Number((edge / 0.0254).toFixed(3))).join(' × ')} in outside`,
    );
    expect(flat(inches)).toContain(`${(first.box.netVolume / 0.3048 ** 3).toPrecision(3)} ft³ of air`);
    const cuts = inches.slice(inches.indexOf('TO CUT'), inches.indexOf('! Dust'));
    expect(cuts).not.toMatch(/\d mm/);
  });
});

describe('words flip with their numbers', () => {
  test('what gives out first', () => {
    const { loudness } = first;
    expect(changed({ loudness: { ...loudness, binding: 'heat', frequency: 77 } })).toContain(
      'the first limit it reaches is the heat of the voice coil (Pe), at 77.0 Hz',
    );
    expect(changed({ loudness: { ...loudness, binding: 'the neighbours' } })).toContain(
      'limit it reaches is the neighbours',
    );
  });

  test('a kind of box says its own sentences, in the units of the reader', () => {
    const told = {
      summary: ['A slit of ', [0.0254, 'length'], ' damps it.'],
      brief: [[0.0254, 'bareLength'], ' wide'],
      building: [['Cut a slit of ', [0.0254, 'length'], '.'], ['Fill it with felt.']],
      playing: [['The felt warms up.']],
    } as const satisfies Design['told'];
    const changes = { called: 'a box with a slit', told };
    const text = changed(changes);
    for (const sentence of [
      'is a box with a slit for one "ten-inch driver, invented"',
      'A slit of 25.4 mm damps it.',
      '25.4 wide',
      'Cut a slit of 25.4 mm. Fill it with felt.',
      'The felt warms up.',
    ]) {
      expect(text).toContain(sentence);
    }
    const inches = reportText({ ...bench, designs: [{ ...first, words: [], ...changes }] }, { length: 'in' });
    expect(flat(inches)).toContain('A slit of 1 in damps it.');
    expect(text).not.toContain('close to the tuning');
  });

  test('depth: where a limit ends it before the response does, the report says what, and how far it would be passed', () => {
    const { below: _, ...response } = first.response;
    expect(changed({ response })).not.toContain('When it plays more softly');
    const below = { binding: 'vent', frequency: 21.4, times: 2.6 };
    const at = (change: object) => changed({ response: { ...response, depth: 30, below: { ...below, ...change } } });
    expect(at({ load: { value: 31.2, meaning: 'airSpeed', subject: 'the air in the vent' } })).toContain(
      'When it plays more softly, it reaches down to 21.4 Hz. At the wanted level it stops at 30.0 Hz, where it reaches the limit on the air speed in the vent. If it played that level at 21.4 Hz, the air in the vent would reach 31.2 m/s (peak).',
    );
    expect(at({ binding: 'travel' })).toContain(
      'it stops at 30.0 Hz, where it reaches the limit on the travel of the cone (Xmax). If it played that level at 21.4 Hz, it would need 2.6 times what that limit allows.',
    );
  });

  test('a ripple that is only rounding is none', () => {
    const deviation = { rms: 0.2, from: 20, to: 120 };
    const box = { ok: false as const, because: 'None.' };
    const near = (ripple: number) => [{ name: 'BP4', parameters: { S: 0.7071, ripple }, deviation, box }];
    expect(changed({ alignments: near(1.72e-9) as never })).toContain('BP4 (S 0.707, ripple 0)');
    expect(changed({ alignments: near(0.0123) as never })).toContain('BP4 (S 0.707, ripple 0.0123)');
  });

  test('what was assumed is told with its amount, and nothing is said where nothing was', () => {
    expect(changed({ assumed: [['The driver is taken to fill ', [0.0024, 'volume'], '.']] })).toContain(
      'Assumed, because the brief does not say: The driver is taken to fill 2.4 L.',
    );
    expect(changed({ assumed: [] })).not.toContain('Assumed');
  });

  test('protection: none needed, a high-pass, or none that helps', () => {
    const atFullVoltage = { driveVoltageRms: 25 };
    const safe = { driveVoltageRms: 10, atFullVoltage };
    expect(changed({ protection: safe })).toContain(
      'At 25 V rms, the most that the amplifier gives, no tone drives the cone beyond its safe travel.',
    );
    expect(changed({ protection: safe })).toContain('At 10 V rms, which gives the wanted level');
    const unsafe = { ...safe, atFullVoltage: { ...atFullVoltage, lowestSafeFrequency: 22.04 } };
    expect(changed({ protection: unsafe })).toContain('the lowest safe frequency is 22.0 Hz');
    expect(changed({ protection: unsafe })).toContain('keep such tones out');
    const highPass = { order: 2, corner: 21.5, costAtLowest: 0.84, delayAtLowest: 0.0083, riseOfF3: 1.23 };
    const filtered = changed({ protection: { ...unsafe, atFullVoltage: { ...unsafe.atFullVoltage, highPass } } });
    expect(filtered).toContain(
      'The gentlest high-pass filter that prevents that is a Butterworth of order 2 at 21.5 Hz. It lowers the level at 30 Hz by 0.8 dB, delays it by 8.3 ms, and raises f3 by 1.2 Hz.',
    );
    expect(filtered).not.toContain('coefficients');
    const sections = [{ b0: 0.9, b1: -1.8, b2: 0.9, a1: -1.7, a2: 0.8 }];
    const digital = { ...highPass, sampleRate: 48_000, sections };
    expect(
      changed({ protection: { ...unsafe, atFullVoltage: { ...unsafe.atFullVoltage, highPass: digital } } }),
    ).toContain(
      'coefficients at 48000 Hz, for y[n] = b0 x[n] + b1 x[n−1] + b2 x[n−2] − a1 y[n−1] − a2 y[n−2]: b0 0.9, b1 -1.8',
    );
    expect(filtered).not.toContain('keep such tones out');
    expect(filtered).not.toContain('than the brief allows');
    const deep = {
      ...unsafe,
      atFullVoltage: { ...unsafe.atFullVoltage, highPass: { ...highPass, fallenUpTo: 31.24 } },
    };
    expect(changed({ protection: deep })).toContain(
      'raises f3 by 1.2 Hz. With it the response falls by more than the brief allows up to 31.2 Hz.',
    );
  });

  test('protection: where wanted tones are too much, no high-pass and no other programme is offered', () => {
    const at = (guard: Partial<Design['protection']['atFullVoltage']>) =>
      changed({ protection: { driveVoltageRms: 10, atFullVoltage: { driveVoltageRms: 25, ...guard } } });
    const within = at({ lowestSafeFrequency: 41.7 });
    expect(within).toContain('the lowest safe frequency is 41.7 Hz');
    expect(within).toContain(
      'Some of these are tones that the brief asks for, so a high-pass filter below the band does not help. Turn it down.',
    );
    expect(within).not.toContain('keep such tones out');
    const never = at({ neverSafe: true });
    expect(never).toContain(
      'At 25 V rms, the most that the amplifier gives, every tone drives the cone beyond its safe travel.',
    );
    expect(never).not.toContain('the lowest safe frequency is');
  });

  test('a limit binds, or has room', () => {
    const margin = { path: 'space.width', what: 'outer width', value: 'x', limit: '480 mm', sense: 'at most' as const };
    expect(changed({ margins: [{ ...margin, relative: -0.001 }] })).toContain('480 mm at its limit');
    expect(changed({ margins: [{ ...margin, relative: -0.25 }] })).toContain('480 mm 25 % left');
    const level = { ...margin, path: 'wanted.level', limit: '92 dB', relative: 10 ** (-6 / 20) - 1 };
    expect(changed({ margins: [level] })).toContain('92 dB 6.0 dB left');
  });

  test('warnings and cautions that a design carries are printed, those of a stranger too', () => {
    const warnings: Design['warnings'] = [
      { code: 'outside-validity', path: 'ka', got: 0.61234, expected: '0 to 0.5' },
      { code: 'neglected', text: 'The grille.' },
    ];
    const text = changed({ warnings, cautions: ['Cat: keep it off the cone.'] });
    expect(text).toContain('ka is 0.6123. The formula is made for 0 to 0.5');
    expect(text).toContain('Neglected: The grille.');
    expect(text).toContain('! Cat: keep it off the cone.');
    expect(text).not.toContain('! Hearing');
  });

  test('a driver whose data disagree', () => {
    const [account] = bench.drivers;
    const deviations = [{ field: 'Bl', given: 10, implied: 11, relative: -0.0909 }];
    const drivers = [{ ...account, deviations, blocked: ['Le: no data'] }] as Answer['drivers'];
    expect(flat(reportText({ ...bench, drivers }))).toContain(
      'Bl is given as 10 T·m, but the other values give 11 T·m. The two differ by 9.1 %. Le: no data',
    );
  });
});

describe('a brief that cannot be met', () => {
  const text = flat(reportText(impossible));

  test('says the conflict, the changes and what they would give', () => {
    expect(impossible.ok).toBe(false);
    for (const { path, wish } of impossible.conflict) expect(text).toContain(`${path} ${wish}`);
    const { changes, answer } = impossible.nearest as NonNullable<NotMet['nearest']>;
    for (const { path, from, to } of changes) expect(text).toContain(`${path} ${from} ${to}`);
    const near = answer.designs[0] as Design;
    expect(text).toContain(
      `With these changes you can build this box. Box A, the ${near.leaning} one, is ${near.called}`,
    );
    expect(text).toContain(`${near.loudness.level.toFixed(1)} dB`);
    const further = 'Some of them are to wishes that are not in the list above.';
    expect(text).toContain(further);
    const asked = changes.map(({ path }) => ({ path, wish: path }));
    expect(flat(reportText({ ...impossible, conflict: asked }))).not.toContain(further);
  });

  test('says so where no nearest brief is known', () => {
    const { nearest: _, ...alone } = impossible;
    expect(flat(reportText(alone))).toContain('The search found no similar brief that can be met.');
  });
});

describe('the page', () => {
  test.each([
    ['bench', bench],
    ['impossible', impossible],
    ['a long name', { ...bench, title: `${'ÅΩ'.repeat(70)} and more words ${'so '.repeat(60)}` }],
  ])('%s: at most 80 columns, no blank at an end, nothing undefined', (_, answer) => {
    for (const units of [{}, { length: 'in', volume: 'in³' }] as const) {
      for (const line of reportText(answer, units).split('\n')) {
        expect([...line].length).toBeLessThanOrEqual(80);
        expect(line).toBe(line.trimEnd());
        expect(line).not.toMatch(/undefined|NaN|Infinity|\[object/);
      }
    }
  });
});

describe('sketches', () => {
  /** One design whose every curve is the given one. */
  const drawn = (name: string, frequencies: number[], values: number[]): Design => ({
    ...first,
    name,
    curves: { ...first.curves, frequencies, levelHalfSpace: values, displacementPeak: values, impedance: values },
  });
  const block = (text: string, title: string) => {
    const lines = text.split('\n');
    return lines.slice(lines.findIndex((line) => line.startsWith(title)) + 1).slice(0, 12);
  };

  test('a curve stands where its frequency and value are', () => {
    // 0 to 9 over an axis of ten rows, and 10 to 100 Hz over sixty columns: value n at column 59 n / 9.
    const rise = Array.from({ length: 10 }, (_, i) => i);
    const text = sketchText([
      drawn(
        'A',
        rise.map((i) => 10 * 10 ** (i / 9)),
        rise,
      ),
    ]);
    const rows = block(text, 'Input impedance');
    for (const i of rise) {
      expect((rows[9 - i] as string)[10 + Math.round((59 * i) / 9)], `value ${i}`).toBe('A');
    }
    expect(rows[0]?.trimStart()).toMatch(/^9 \+/);
    expect(rows[11]?.trim()).toMatch(/^10 +20 +50 +100 Hz$/);
  });

  test('designs are overlaid by their letters, the first on top', () => {
    const text = sketchText([drawn('A', [10, 100], [5, 5]), drawn('B', [10, 100], [5, 9])]);
    const rows = block(text, 'Input impedance');
    expect(rows[4]).toMatch(/^ +\|A{60}$/);
    expect(rows[0]).toMatch(/B$/);
  });

  test('a box without a vent has no air speed', () => {
    const { airSpeedPeak: _, ...curves } = first.curves;
    expect(sketchText([{ ...first, curves }])).not.toContain('Air speed in the vent');
    expect(sketchText([first])).toContain('Air speed in the vent, peak, m/s');
  });
});
