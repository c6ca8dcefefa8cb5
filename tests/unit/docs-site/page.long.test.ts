import { readFileSync } from 'node:fs';
import type { Design, Met, NotMet } from 'airspring';
import { describe, expect, test } from 'vitest';
import { briefFacts } from '../../../docs-site/src/brief-facts.js';
import { briefAnswer } from '../../../docs-site/src/page.js';
import { verdict } from '../../../docs-site/src/verdict.js';
import { pageOf, whaleBench } from './brief.js';
import { documentOf } from './document.js';

const { answer, markup } = pageOf(whaleBench);
const { designs } = answer as Met;
const first = designs[0] as Met['designs'][number];
const document = documentOf(markup);
const words = (element: Element | null) => (element?.textContent ?? '').replace(/\u00a0/g, ' ');
const text = words(document.querySelector('main'));
const mm = (metres: number) => `${Number((metres * 1e3).toFixed(1))} mm`;

describe('the page of a brief that can be met', () => {
  test('says the numbers of the design', () => {
    expect(answer.ok).toBe(true);
    expect(text).toContain(first.box.outer.map((edge) => (edge * 1e3).toFixed(0)).join(' × '));
    expect(text).toContain(`${mm(first.vent?.length ?? 0)} long`);
    expect(text).toContain(`6 dB down at ${first.response.cutoff.toFixed(1)} Hz`);
    for (const { name, vent, loudness } of designs) {
      const row = [...document.querySelectorAll('#choice ~ .table tbody tr')].find(
        (each) => words(each.querySelector('th')) === name,
      );
      expect(words(row ?? null)).toContain(`${mm(vent?.diameter ?? 0)} × ${mm(vent?.length ?? 0)}`);
      // A column has its unit in the head.
      expect(words(row ?? null)).toContain(String(Number(loudness.level.toFixed(1))));
    }
  });

  test('lists every panel, hole, piece and limit', () => {
    for (const { name, length, width } of first.box.panels) {
      const row = [...document.querySelectorAll('tbody tr')].find((each) => words(each.querySelector('th')) === name);
      expect(words(row ?? null)).toContain(`${mm(length)}${mm(width)}`.replaceAll(' mm', ''));
      expect(words(row?.closest('table')?.querySelector('thead') ?? null)).toContain('length, mmwidth, mm');
    }
    const { pieces = [], bend } = first.vent ?? {};
    const said = pieces.map((piece) => `${mm(piece)} ${piece === bend?.arc ? 'bent' : 'straight'}`);
    expect(text).toContain(said.join(', '));
    for (const { what, value, limit } of first.margins) {
      const row = [...document.querySelectorAll('tbody tr')].find((each) => words(each.querySelector('th')) === what);
      expect(words(row ?? null)).toContain(`${limit}${value}`);
    }
  });

  test('carries each caution once, whole', () => {
    for (const caution of first.cautions) expect(text.split(caution)).toHaveLength(2);
  });

  test('labels every picture, gives its numbers, and holds no number that is none', () => {
    const pictures = [...document.querySelectorAll('figure svg[role=img]')];
    expect(pictures.length).toBe(2 * 3);
    for (const picture of pictures) {
      expect(picture.getAttribute('role')).toBe('img');
      expect(picture.getAttribute('aria-label')?.length).toBeGreaterThan(40);
      expect(picture.querySelectorAll('[aria-label]')).toHaveLength(0);
    }
    expect(document.querySelectorAll('figure + details table').length).toBe(5);
    expect(document.querySelectorAll('figure details').length).toBe(0);
    expect(markup).not.toMatch(/NaN|Infinity|undefined|\[object/);
  });

  test('stands by itself: headings in order, no script, no other host, every anchor there', () => {
    const levels = [...document.querySelectorAll('h1, h2, h3')].map(({ tagName }) => Number(tagName[1]));
    expect(levels[0]).toBe(1);
    expect(levels.filter((level) => level === 1)).toHaveLength(1);
    levels.slice(1).forEach((level, i) => expect(level - levels[i]!).toBeLessThanOrEqual(1));
    expect(document.querySelectorAll('script, iframe, img, link:not([rel=icon])')).toHaveLength(0);
    for (const link of document.querySelectorAll('[href], [src]')) {
      const target = link.getAttribute('href') ?? link.getAttribute('src') ?? '';
      // Besides its own anchors the page leads to the bibliography of the site only, and to the sources themselves.
      if (target.startsWith('/bibliography/#')) continue;
      if (link.closest('#sources, [aria-labelledby=sources]') && target.startsWith('https://')) continue;
      expect(target).toMatch(/^(#|data:)/);
      if (target.startsWith('#')) expect(document.getElementById(target.slice(1)), target).not.toBeNull();
    }
    const ids = [...document.querySelectorAll('[id]')].map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  test('says what keeps the cone safe: nothing needed, a high-pass, another programme, or less drive only', () => {
    const said = (guard: Partial<Design['protection']['atFullVoltage']>) => {
      const atFullVoltage = { driveVoltageRms: 25, ...guard };
      const changed = { ...first, protection: { driveVoltageRms: 10, atFullVoltage } };
      const { rest } = briefAnswer(whaleBench, { ...(answer as Met), designs: [changed] });
      const all = words(documentOf(`<html lang="en"><body><main>${rest.markup}</main></body></html>`).body);
      const [, after = ''] = all.split('At 25 V, all that the amplifier gives, ');
      return after;
    };
    const highPass = { order: 2, corner: 21.5, costAtLowest: 0.84, delayAtLowest: 0.0083, riseOfF3: 1.23 };
    expect(said({})).toMatch(/^the cone stays within its 9 mm at every tone\./);
    expect(said({ lowestSafeFrequency: 22, highPass })).toMatch(/high-pass of order 2 at 21\.5 Hz prevents that/);
    expect(said({ lowestSafeFrequency: 22 })).toMatch(/^tones below 22 Hz are too much .*or keep such tones out/);
    expect(said({ lowestSafeFrequency: 41.7 })).toMatch(
      /^tones below 41\.7 Hz are too much for its 9 mm\. Some of these tones belong to the band, so no high-pass below the band helps: turn it down\./,
    );
    expect(said({ lowestSafeFrequency: 41.7 })).not.toContain('keep such tones out');
    expect(said({ neverSafe: true })).toMatch(/^every tone is too much for its 9 mm: turn it down\./);
  });

  test('escapes what people write', () => {
    const evil = '<script>alert("1")</script> & co';
    const [driver] = whaleBench.drivers;
    // A closed box that need not reach deep is soon found.
    const { markup: escaped } = pageOf({
      ...whaleBench,
      title: evil,
      wanted: { ...whaleBench.wanted, lowest: '45 Hz' },
      box: { kinds: ['closed'] },
      drivers: [{ ...driver, name: evil } as typeof driver & object],
    });
    expect(escaped).not.toContain('<script');
    expect(escaped).toContain('&lt;script&gt;alert(&quot;1&quot;)&lt;/script&gt; &amp; co');
  });
});

// The search for the nearest brief runs the whole job several times.
test('a brief that cannot be met: why, the nearest brief, and the boxes for that', { timeout: 60_000 }, () => {
  const { wanted } = whaleBench;
  const { answer: no, markup: page } = pageOf({ ...whaleBench, wanted: { ...wanted, level: '112 dB' } });
  const { because, conflict, nearest } = no as NotMet;
  expect(no.ok).toBe(false);
  const body = words(documentOf(page).querySelector('main'));
  expect(body).toContain('No box meets this brief.');
  for (const reason of because) expect(body).toContain(reason);
  for (const { path, wish } of conflict) expect(body).toContain(`${wish} ${path}`);
  expect(nearest).toBeDefined();
  for (const { path, from, to } of nearest?.changes ?? []) expect(body).toContain(`${path}${from}${to}`);
  expect(body).toContain('With that brief: ');
  expect(body).not.toContain('Yes, as far as');
  expect(page).not.toMatch(/NaN|Infinity|undefined|\[object/);
});

describe('colours', () => {
  const style = readFileSync(new URL('../../../docs-site/src/styles/site.css', import.meta.url), 'utf8');
  const [light, dark] = [...style.matchAll(/:root \{([^}]*)\}/g)].map(([, body = '']) => {
    return new Map(
      [...body.matchAll(/--([a-z-]+): (#[0-9a-f]{6});/g)].map(([, name = '', colour = '']) => [name, colour]),
    );
  });
  /** Relative luminance and contrast of WCAG 2.2. */
  const luminance = (colour: string) =>
    [1, 3, 5]
      .map((at) => Number.parseInt(colour.slice(at, at + 2), 16) / 255)
      .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4))
      .reduce((sum, part, i) => sum + part * [0.2126, 0.7152, 0.0722][i]!, 0);
  const contrast = (a: string, b: string) => {
    const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y) as [number, number];
    return (high + 0.05) / (low + 0.05);
  };
  test.each([
    ['light', light],
    ['dark', dark],
  ])('%s: text and lines stand out from paper and band by 4.5 to 1', (_, palette) => {
    for (const name of [
      'ink',
      'soft',
      'link',
      'level',
      'travel',
      'speed',
      'impedance',
      'heat',
      'amplifier',
      'length',
    ]) {
      for (const ground of ['paper', 'band']) {
        const ratio = contrast(palette?.get(name) ?? '', palette?.get(ground) ?? '');
        expect(ratio, `${name} on ${ground}`).toBeGreaterThanOrEqual(4.5);
      }
    }
  });
});

test('the verdict turns with the levels at which the vent is quiet and noisy', () => {
  const { answer } = pageOf(whaleBench);
  if (!answer.ok) throw new Error('the brief of the page can be met');
  const [design] = answer.designs;
  const facts = briefFacts(whaleBench);
  const said = (quiet: number, noisy: number) => {
    const { noise, ...opening } = design!.opening!;
    const onset = (of: typeof noise.quiet, level: number) => ({ ...of, level });
    const told = { ...opening, noise: { quiet: onset(noise.quiet, quiet), noisy: onset(noise.noisy, noisy) } };
    return verdict({ ...design!, opening: told }, facts)[0];
  };
  expect(said(92, 104)).toMatch(/^Yes: a vent/);
  expect(said(91, 104)).toMatch(/^It fits, but may be heard: a vent/);
  expect(said(80, 91)).toMatch(/^It fits, but is noisy: a vent/);
  expect(said(80, 91).replaceAll('\u00a0', ' ')).toContain('Up to 80 dB the vent is quiet');
  // A box of two chambers has no vent of its own to draw, and is no closed one.
  const { vent: _, ...without } = design!;
  const { quiet, noisy } = design!.opening!.noise;
  const noise = {
    quiet: { ...quiet, where: 'the vent of the rear chamber' },
    noisy: { ...noisy, where: 'the vent of the front chamber' },
  };
  const chambers = {
    ...without,
    kind: 'parallel-band-pass',
    called: 'a parallel band-pass box',
    opening: { ...design!.opening!, noise },
  };
  const [first] = verdict(chambers, facts);
  expect(first).toContain(': a parallel band-pass box, ');
  expect(first).toContain('every vent is quiet');
  expect(first).toContain('the vent of the front chamber has passed them all');
});

test('a brief that wants its level at the listener: the page says so, and draws the level there', () => {
  const room = { distance: '2 m', walls: ['0 mm', '0 mm'] };
  const wanted = { ...whaleBench.wanted, at: 'listener' } as const;
  const page = pageOf({ ...whaleBench, box: { kinds: ['vented'] }, wanted, room });
  const said = words(documentOf(page.markup).querySelector('main'));
  expect(page.answer.ok).toBe(true);
  for (const place of ['anywhere in the band at the listener', 'Level at the listener', 'Steady sine, at the listener'])
    expect(said).toContain(place);
  expect(said).not.toMatch(/at one metre/i);
});
