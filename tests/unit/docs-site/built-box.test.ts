import { si } from '@airspring/core/quantity';
import { tuning } from '@airspring/core/vent';
import { describe, expect, test } from 'vitest';
import { briefFacts } from '../../../docs-site/src/brief-facts.js';
import { builtText, designedOf } from '../../../docs-site/src/built-as-designed.js';
import { measured } from '../../../docs-site/src/sections/measured.js';
import { bestOf, demo, put } from '../../arbitrary/brief.js';

const closed = { ...put(demo, 'box.kinds', ['closed']), wanted: { ...demo.wanted, lowest: '45 Hz' } };

const vented = put(demo, 'box.kinds', ['vented']);
/** In cold air the same length tunes lower. */
const cold = { ...vented, air: { temperature: '-20 °C' } } as typeof demo;

describe.each([
  ['at room temperature', vented],
  ['in the cold', cold],
])('a dip that was measured on the finished box, %s', (_, brief) => {
  const design = bestOf(brief);
  const facts = briefFacts(brief);
  const designed = designedOf(design, facts)!;
  const { diameter, length } = design.vent!;
  const { netVolume } = design.box;
  /** How far the formula of the vent moves the tuning of a changed box, where its ends stay as they are. */
  const moved = (longer: number, air: number) => {
    const tuned = (of: number, long: number) =>
      tuning(
        {
          netVolume: si('volume', of),
          vent: { diameter: si('length', diameter), length: si('length', long) },
        },
        facts.air,
      );
    const [now, then] = [tuned(air, length + longer), tuned(netVolume, length)];
    if (!now.ok || !then.ok) throw new Error('no tuning');
    return designed.dip * (now.fb / then.fb);
  };

  test('tells how much the vent is too short or too long, to a tenth of that', () => {
    const short = builtText(moved(-0.04, netVolume), designed);
    const long = builtText(moved(0.04, netVolume), designed);
    for (const [text, word] of [
      [short, 'short'],
      [long, 'long'],
    ] as const) {
      const millimetres = Number(text.match(new RegExp(`acts ([\\d.]+)\\s*mm too ${word}`))?.[1]);
      expect(Math.abs(millimetres - 40), text).toBeLessThan(4);
    }
  });

  test('tells how much air is missing', () => {
    const text = builtText(moved(0, netVolume * 0.9), designed);
    expect(Number(text.match(/would ([\d.]+)\s*L less air/)?.[1])).toBeCloseTo(netVolume * 100, 0);
  });

  test('is as computed, or no dip of this box', () => {
    expect(builtText(designed.dip * 1.015, designed)).toMatch(/^That is within 2 % of .* you built box A as it was/);
    expect(builtText(designed.dip * 2, designed)).toMatch(/^This is too far from/);
  });

  test('is told in the units of the brief', () => {
    const inches = designedOf(design, { ...facts, length: 'in', volume: 'ft³' })!;
    expect(builtText(moved(-0.04, netVolume), inches)).toMatch(
      /acts 1\.[4-7]\d*\sin too short .* 0\.\d+\sft³ less air/,
    );
  });

  test('is asked for where one vent tunes all of the air, and nowhere else', () => {
    expect(measured([design], facts).markup).toContain('<input type="number"');
    expect(measured([bestOf(closed)], facts).markup).toBe('');
  });
});
