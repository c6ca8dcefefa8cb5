import { si } from '@airspring/core/quantity';
import { tuning } from '@airspring/core/vent';
import { describe, expect, test } from 'vitest';
import { builtText, designedOf } from '../../../docs-site/src/built-as-designed.js';
import { measured } from '../../../docs-site/src/sections/measured.js';
import { bestOf, demo, put } from '../../arbitrary/brief.js';

const closed = { ...put(demo, 'box.kinds', ['closed']), wanted: { ...demo.wanted, lowest: '45 Hz' } };

describe('a dip that was measured on the finished box', () => {
  const design = bestOf(put(demo, 'box.kinds', ['vented']));
  const designed = designedOf(design)!;
  const { diameter, length } = design.vent!;
  const { netVolume } = design.box;
  /** How far the formula of the vent moves the tuning of a changed box, where its ends stay as they are. */
  const moved = (longer: number, air: number) => {
    const tuned = (of: number, long: number) =>
      tuning({
        netVolume: si('volume', of),
        vent: { diameter: si('length', diameter), length: si('length', long) },
      });
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

  test('is asked for where one vent tunes all of the air, and nowhere else', () => {
    expect(measured([design]).markup).toContain('<input type="number"');
    expect(measured([bestOf(closed)]).markup).toBe('');
  });
});
