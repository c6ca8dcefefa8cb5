import { type Brief, design, reportText, retrofit, retrofitPage, retrofitText } from 'airspring';
import { describe, expect, test } from 'vitest';
import { changes } from '../../../docs-site/src/retrofit/changes.js';
import { factsOf } from '../../../docs-site/src/retrofit/facts.js';
import { tubesOfOneFlange } from '../../../docs-site/src/retrofit/tubes.js';
import { demo } from '../../arbitrary/brief.js';
import { demoStanding } from '../../arbitrary/standing.js';

const flat = (text: string) => text.replaceAll(/\s+/g, ' ');
/** So much may the response have fallen that it does so below the lowest tone that is searched. */
const fall = '120 dB';
const SIGN = '≤: no lower tone was searched.';

describe('a box that stands', () => {
  const brief = {
    ...demoStanding,
    wanted: { ...demoStanding.wanted, fall },
    amplifier: { ...demoStanding.amplifier, filter: { order: 1, corner: '12 Hz' } },
  } as Parameters<typeof retrofit>[0];
  const answer = retrofit(brief);
  const text = flat(retrofitText(answer));

  test('has no end of its response', () => {
    expect(answer.now.account).toMatchObject({ reach: 5, endOfSearch: true, unfilteredEndOfSearch: true });
    expect(answer.designs.length).toBeGreaterThan(0);
    expect(answer.tubeSets.length).toBeGreaterThan(0);
  });

  test('its report says so of every reach: now, of each change, each design, each tube, and without the filter', () => {
    expect(text).toContain('Without it the response would reach at least down to 5.0 Hz');
    expect(text).toContain(SIGN);
    // Only what the level would ask there is said of the very tone.
    const told = [...text.matchAll(/(.{0,20}) 5\.0(?!\d)/g)].map(([, before]) => before!);
    expect(told.length).toBeGreaterThan(20);
    expect(told.filter((before) => !/(≤|at least down to|that level at)$/.test(before))).toEqual([]);
  });

  test('and so do its pages', () => {
    expect(flat(retrofitPage(answer))).toContain(SIGN);
    const facts = factsOf(brief as never, answer as never);
    for (const part of [changes(facts), tubesOfOneFlange(facts)]) {
      if (!part) throw new Error('it is told');
      expect(part.markup).toContain('≤ 5.0');
      expect(part.markup).not.toMatch(/>5\.0</);
      expect(part.markup).toContain(SIGN);
    }
  });
});

test('the table of the drivers of a brief says so too, and so does the sentence about a filter', {
  timeout: 60_000,
}, () => {
  const ten = demo.drivers[0]!;
  const other = { ...ten, name: 'another ten-inch driver, invented', Xmax: '30 mm' };
  const brief = {
    ...demo,
    drivers: [{ ...ten, Xmax: '40 mm' }, other],
    box: { kinds: ['closed'] },
    amplifier: { ...demo.amplifier, filter: { order: 1, corner: '12 Hz' } },
    wanted: { ...demo.wanted, lowest: '40 Hz', level: '60 dB', fall },
  } as unknown as Brief;
  const answer = design(brief);
  const text = flat(reportText(answer));
  const at = String.raw`the response has fallen by 3 dB [^.]*\.\d Hz and reaches at least down to`;
  expect(text).toMatch(new RegExp(`With it ${at} 10\\.0 Hz\\. Without it ${at} 5\\.0 Hz\\.`));
  const [, drivers = ''] = text.split('The best box of each driver');
  expect(drivers).toMatch(/#1 ≤ [\d.]+ Hz/);
  expect(drivers).toMatch(/#2 ≤ [\d.]+ Hz/);
});
