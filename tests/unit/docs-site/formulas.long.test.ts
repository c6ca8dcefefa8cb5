import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { auditedExports, auditedSources } from '../../../.config/ledger-gate.js';
import type { Audit } from '../../../docs-site/src/audit/audit.js';
import { disagreeing } from '../../../docs-site/src/audit/disagreements-page.js';
import { formulas, keyOf } from '../../../docs-site/src/audit/formula.js';
import { prose } from '../../../docs-site/src/audit/markdown.js';
import { numberText } from '../../../docs-site/src/audit/numbers.js';
import { pageMakers, pages as pagesAnew } from '../../../docs-site/src/audit/pages.js';
import { readAudit } from '../../../docs-site/src/audit/write.js';
import { evaluate } from '../../ledger/check.js';
import type { LedgerRow } from '../../ledger/row.js';
import { documentOf } from './document.js';

const top = fileURLToPath(new URL('../../..', import.meta.url));
/** Whatever the last runs left behind; the pages must hold with and without. */
const found = asOfNow(readAudit(top));

/** Without the rows that an earlier run left of a source that is gone by now, or in a form that is: those of a whole run are judged by its gate. */
function asOfNow(audit: Audit): Audit {
  const sources = new Set(audit.references.map(({ id }) => id));
  if (audit.ledger === undefined) return audit;
  const rows = audit.ledger.rows.filter(
    ({ source, status }) => sources.has(source.key) && (status !== 'seen' || source.readIn !== undefined),
  );
  const gone = audit.ledger.rows.length - rows.length;
  if (gone > 0)
    console.warn(
      `left out: ${gone} rows of the ledger are of sources or of a form that is gone; a whole npm test writes it anew`,
    );
  return { ...audit, ledger: { ...audit.ledger, rows } };
}
/** The pages of an audit, made once: those of the whole ledger take a second. */
const made = new WeakMap<Audit, ReadonlyMap<string, string>>();
function pages(audit: Audit): ReadonlyMap<string, string> {
  const known = made.get(audit) ?? pagesAnew(audit);
  made.set(audit, known);
  return known;
}
/** One of them, made alone. */
const page = (audit: Audit, file: string) => pageMakers(audit).get(file)!().replaceAll('\u00a0', ' ');

const row = (change: Partial<LedgerRow> = {}): LedgerRow => ({
  ...evaluate('air.viscosity.shown', {
    formula: 'air/viscosity',
    source: { key: 'ussa1976', locator: 'table <5> & "more"', readIn: 'itself' },
    status: 'seen',
    kind: 'table',
    given: { temperature: { value: [10, 20], unit: '°C' }, gas: { value: 'dry', unit: '' } },
    got: ({ temperature }) => 1.7e-5 + temperature * 1e-9,
    printed: ['1.701e-5', '1.7345e-5'],
    unit: 'Pa·s',
    tolerance: { relative: 0.1, why: 'made up. ' },
  }),
  ...change,
});
const bare: Audit = { ...found, ledger: undefined, bench: undefined, citing: new Map(), using: new Map() };
const withRows = (...rows: LedgerRow[]): Audit => ({ ...bare, ledger: { rows, date: '2024-01-01' } });

describe('the pages of the formulas', () => {
  test('show every exported function of the audited floors, with where it holds and its code', () => {
    const made = pages(bare);
    const functions = [...auditedExports(...auditedSources(top))].filter(([, isFunction]) => isFunction);
    const lacking = functions.filter(([key]) => {
      const formula = bare.formulas.find((one) => keyOf(one) === key);
      const text = formula && made.get(`formulas/${formula.floor}/${formula.family}.md`);
      const part = text?.split(/^## /m).find((each) => each.startsWith(`${formula?.name}\n`)) ?? '';
      return ![`**Holds for:**`, '**Source:**', formula?.path ?? '?', formula?.code ?? '?'].every((words) =>
        part.includes(words),
      );
    });
    expect(functions.length).toBeGreaterThan(90);
    expect(lacking).toEqual([]);
  });

  test.each([
    ['with what the last runs left', found],
    ['without any run', bare],
  ])('%s lead nowhere that is not there', (_, audit) => {
    const made = pages(audit);
    const anchors = new Set<string>();
    const links: string[] = [];
    for (const [file, text] of made) {
      const address = `/${file.replace(/(index)?\.md$/, '')}/`.replace(/\/{2,}/g, '/');
      anchors.add(address);
      for (const [, id] of text.matchAll(/ id="([^"]+)"/g)) anchors.add(`${address}#${id}`);
      for (const [, name] of text.matchAll(/^## (\w+)$/gm)) anchors.add(`${address}#${name?.toLowerCase()}`);
      for (const [, , here, there] of text.matchAll(/(href="|\]\()(?:(#[^")]*)|(\/[^")]*))/g))
        links.push(there ?? `${address}${here}`);
    }
    const byHand = new Set([...audit.citing.values(), ...audit.using.values()].flat().map(({ address }) => address));
    // The reference is made by another generator; the build itself checks the links into it.
    const known = (link: string) => anchors.has(link) || byHand.has(link) || link.startsWith('/api/');
    expect(links.filter((link) => !known(link))).toEqual([]);
    expect(links).toContain('/api/vent/#airspeedpeak');
    expect(links.length).toBeGreaterThan(100);
  });

  test('show every row of the ledger once, where its formula stands', () => {
    const times = new Map<string, number>();
    for (const [file, text] of pages(found)) {
      if (!file.startsWith('formulas/')) continue;
      const ids = [...text.matchAll(/<div class="check" id="([^"]+)">/g)].map(([, id]) => id as string);
      for (const id of new Set(ids)) times.set(id, (times.get(id) ?? 0) + 1);
    }
    const rows = found.ledger?.rows.filter(({ formula }) => found.formulas.some((one) => keyOf(one) === formula)) ?? [];
    expect(rows.map(({ id }) => [id, times.get(id)]).filter(([, count]) => count !== 1)).toEqual([]);
    const values = formulas(top, new Set(['vent/airSpeedCustoms'])).map(keyOf);
    expect(values).toContain('vent/airSpeedCustoms');
  });

  test('lead to the worked examples that compute with them', () => {
    const made = pages(found);
    for (const [family, page] of [
      ['enclosure/open-baffle', 'how-wide-a-baffle'],
      ['enclosure/aperiodic-box', 'stuffed-vent'],
      ['driver/group', 'second-driver-behind'],
      ['driver/group', 'one-or-two'],
    ])
      expect(made.get(`formulas/${family}.md`)).toContain(`](/worked-examples/${page}/)`);
  });

  test('name no source that the bibliography lacks', () => {
    const known = new Set(found.references.map(({ id }) => id));
    const keys = found.formulas.flatMap(({ tags }) => tags.source?.match(/\b[a-z]+(18|19|20)\d\d[a-z]?\d?\b/g) ?? []);
    expect(keys.length).toBeGreaterThan(50);
    expect([...keys, ...found.citing.keys()].filter((key) => !known.has(key))).toEqual([]);
  });

  test('hold no number that is none, and no word of a machine', () => {
    for (const [file, text] of pages(found)) {
      const words = text.replace(/```[^`]*```/g, '').replace(/`[^`]*`|<code>[^<]*<\/code>/g, '');
      expect([file, words.match(/\bNaN\b|Infinity|undefined|\[object/)]).toEqual([file, null]);
    }
  });

  test('have a title, one line of front matter each, and ids used once', () => {
    for (const [file, text] of pages(found)) {
      expect(text).toMatch(/^---\ntitle: ".+"\n/);
      const ids = [...text.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
      const met = new Set<string | undefined>();
      expect([file, ids.filter((id) => met.size === met.add(id).size)]).toEqual([file, []]);
    }
  });
});

describe('a row of the ledger', () => {
  const text = page(withRows(row()), 'formulas/air/viscosity.md');
  const document = documentOf(text.slice(text.indexOf('<div class="check"')));

  test('shows source, standing, tolerance and reason, unharmed by signs that mean something elsewhere', () => {
    const words = document.querySelector('[id="air.viscosity.shown"]')?.textContent;
    expect(words).toContain('[ussa1976] table <5> & "more". Table, read in print.');
    expect(words).toContain('Misses the print.');
    expect(words).toContain('Worst deviation 1.9 % of the expected value, allowed 10 %: made up. Given gas dry.');
  });

  test('shows each number, given, expected, got, and how far off', () => {
    const cells = [...document.querySelectorAll('tbody tr')].map((line) =>
      [...line.querySelectorAll('th, td')].map((cell) => cell.textContent),
    );
    const heads = [...document.querySelectorAll('thead th')].map((head) => head.textContent);
    expect(heads).toEqual(['temperature, °C', 'expected, Pa·s', 'got, Pa·s', 'deviation, %']);
    expect(cells).toEqual([
      ['10', '1.701 × 10−5', '1.701 × 10−5', expect.stringMatching(/^0$|10−16$/)],
      ['20', '1.7345 × 10−5', '1.702 × 10−5', '1.9'],
    ]);
  });

  test.each([
    [9, 'All 9 values', 9],
    [181, '60 of 181 values, evenly taken', 60],
  ])('of %i values shows the worst first, then %s', (length, title, lines) => {
    const expected = Array.from({ length }, (_, i) => i + 1);
    const got = expected.map((value) => (value === 5 ? 5.5 : value));
    const long = page(withRows(row({ given: {}, expected, got })), 'formulas/air/viscosity.md');
    const check = documentOf(long.slice(long.indexOf('<div class="check"')));
    const numbers = [...check.querySelectorAll('tbody th')].map((cell) => Number(cell.textContent));
    expect(check.querySelector('summary')?.textContent).toContain(title);
    expect(numbers).toHaveLength(lines);
    expect([numbers[0], numbers.at(-1)]).toEqual([1, length]);
    expect(new Set(numbers).size).toBe(lines);
    const before = [...check.querySelectorAll('.check > p')].map(({ textContent }) => textContent).at(-1);
    expect(before).toContain(`The worst of ${length} values: No. 5, expected 5 Pa·s, got 5.5 Pa·s, deviation 10 %.`);
  });

  test('tells the air in which it was computed, where that is not the standard one', () => {
    const thin = page(withRows(row({ air: { density: 1.18, speedOfSound: 345 } })), 'formulas/air/viscosity.md');
    expect(thin).toContain('Given gas dry. Air of 1.18 kg/m³, sound at 345 m/s.');
    expect(text).not.toContain('Air of');
  });

  test('that a formula cannot have is explained, and counted', () => {
    const { exceptions, formulas } = bare;
    const unchecked = Object.keys(exceptions).length;
    expect(page(bare, 'formulas/index.md')).toContain(`Of ${formulas.length} formulas, ${unchecked} have no check`);
    expect(page(bare, 'formulas/air/read-air.md')).toContain(
      `**No check from outside:** ${exceptions['air/readAir']}.`,
    );
  });

  test('counts in the overview and is worst there', () => {
    const overview = page(withRows(row(), row({ id: 'b', deviation: 0.5, passed: false })), 'formulas/index.md');
    expect(overview).toContain(
      '<code>viscosity</code></a><br>Dynamic viscosity of air by Sutherland&#39;s law, with the constants of the standard atmosphere</th><td>2 checks: 2 read in print; 1 failed</td><td>50 %</td>',
    );
  });

  test('is flagged when it allows too much, or is not from outside', () => {
    const loose = withRows(row({ deviation: 1e-9, kind: 'own' }));
    expect(page(loose, 'formulas/air/viscosity.md')).toContain('Does not count as outside. Loose.');
    expect(page(loose, 'formulas/index.md')).toContain('1 of our own; 1 loose. The checks ran on');
    expect(page(loose, 'formulas/index.md')).toMatch(
      /<code>viscosity<\/code><\/a><br>[^<]*<\/th><td>[^<]*<\/td><td>none</,
    );
  });

  test('is linked from its source', () => {
    expect(page(withRows(row()), 'bibliography.md')).toMatch(
      /id="ussa1976".*<a href="\/formulas\/air\/viscosity\/#air\.viscosity\.shown">.*?<\/li>/,
    );
  });

  test('makes it said that what was seen of its source is not noted; of a source without checks nothing is said', () => {
    const references = found.references.map(({ note, ...rest }) => rest);
    const item = (audit: Audit) => /<li id="ussa1976">.*?<\/li>/.exec(page(audit, 'bibliography.md'))?.[0];
    const bereft = { ...withRows(row()), formulas: [], references };
    expect(item(bereft)).toContain('<em>How much of it we have read is not noted.</em>');
    expect(item({ ...bereft, ledger: undefined })).not.toContain('<em>');
    expect(item(withRows(row()))).not.toContain('is not noted');
    expect(item(bereft)).toContain('NOAA-S/T 76-1562, 1976. No address verified.');
    const linked = references.map((one) => ({ ...one, URL: 'https://example.org' }));
    expect(item({ ...bereft, references: linked })).not.toContain('No address');
  });

  test('with a number that is none is refused', () => {
    expect(() => pages(withRows(row({ got: [1.7e-5, Number.NaN] })))).toThrow('NaN');
  });
});

test('says when what is not there yet will be', () => {
  expect(page(bare, 'formulas/index.md')).toContain('Load this page again in a minute');
  expect(page(bare, 'formulas/air/density.md')).toContain('Load this page again in a minute');
  expect(page(bare, 'formulas/speed.md')).toContain('`npm run bench -- --keep` makes one');
});

test('the speed page shows the committed run with its machine and date', () => {
  const { bench } = found;
  expect(bench).toBeDefined();
  const text = page(found, 'formulas/speed.md');
  for (const words of [bench?.date.slice(0, 10), bench?.machine.processor, `${bench?.machine.cores} cores`])
    expect(text).toContain(words);
});

describe('where print disagrees', () => {
  test('half of the last digit decides', () => {
    const printed = (got: number[], change: Partial<LedgerRow> = {}) =>
      disagreeing(row({ printed: ['0.82', '355'], expected: [0.82, 355], got, ...change }));
    expect(printed([0.8249, 355.49])).toEqual([]);
    expect(printed([0.8251, 355.51])).toEqual([0, 1]);
    expect(printed([0.9, 355], { status: 'derived' })).toEqual([]);
    expect(printed([0.9, 355], { kind: 'program' })).toEqual([]);
    expect(printed([0.8251, 355.51], { status: 'practice' })).toEqual([0, 1]);
  });

  test('zeros count after the point, and not where they may hold the place', () => {
    const printed = (text: string, got: number) => disagreeing(row({ printed: text, expected: Number(text), got }));
    expect([printed('820', 824), printed('820', 826)]).toEqual([[], [0]]);
    expect([printed('1.30', 1.304), printed('1.30', 1.306)]).toEqual([[], [0]]);
  });

  test('the value, what the formula says, and the reason stand there', () => {
    const text = page(
      withRows(row({ printed: ['0.82', '355'], expected: [0.82, 355], got: [0.9, 355] })),
      'formulas/disagreements.md',
    );
    expect(text).toContain('<th scope="row">0.82 Pa·s</th><td>0.9 Pa·s</td><td>9.8</td>');
    expect(text).toContain('Why: made up.</p>');
  });
});

test('of each floor it is told which formulas have a value read in print, and which have none', () => {
  const text = page(
    withRows(
      row(),
      row({ id: 'b', formula: 'duct/flanged', status: 'derived' }),
      row({ id: 'c', formula: 'duct/unflanged', source: { key: 'ussa1976', locator: 'table', readIn: 'a note' } }),
    ),
    'formulas/index.md',
  );
  const document = documentOf(text.slice(text.indexOf('## What was read in print')));
  const lines = [...document.querySelectorAll('tbody tr')].map((line) =>
    [...line.querySelectorAll('th, td')].map((cell) => cell.textContent),
  );
  expect(lines.slice(0, 2)).toEqual([
    ['Air', '1 of 1', '0', 'none'],
    ['Duct', '1 of 2', '1', 'flanged'],
  ]);
});

test('every row of the benchmarks stands on the page of speed, also those that miss or are not there', () => {
  const machine = { processor: 'a processor', cores: 2, memoryGB: 4, system: 'a system' };
  const rows = [
    { id: 'a', what: 'first', unit: 'µs', median: 12.34, best: 11, cpu: 10, rounds: 3, goal: '≤ 10 µs', met: false },
    { id: 'b', what: 'second', unit: 'µs', median: 24, best: 23, rounds: 3, against: 'a', ratio: 2, ratioByClock: 2 },
    { id: 'c', what: 'third', unit: 'µs', goal: '≥ 3 ×', missing: 'no compiler' },
  ];
  const agreement = [{ peer: 'c', set: 'A', worst: 2e-13, tolerance: 1e-9 }];
  const head = { date: '2024-01-01T00:00:00Z', quick: false, passes: 1, load: 1, machine, versions: { node: 'v20' } };
  const text = page({ ...bare, bench: { ...head, agreement, groups: [{ title: 'Some', rows }] } }, 'formulas/speed.md');
  expect(text).toContain('0 of 1 goals met, 1 missed; 1 of 3 rows without a number');
  const plain = text.replace(/<td[^>]*>/g, '<td>');
  expect(plain).toContain('first</th><td>12.3; 11; 10 µs</td><td>–</td><td>≤ 10 µs: <strong>missed');
  expect(plain).toContain('second</th><td>24; 23 µs</td><td>2 × first</td><td>–</td>');
  expect(plain).toContain('third</th><td>not there: no compiler</td>');
  expect(text).toContain('2 × 10<sup>−13</sup>');
});

describe('docstrings as Markdown', () => {
  const links = { formulas: new Map([['level', '/formulas/x/#level']]), references: new Set<string>() };

  test('equations stand on lines of their own, links lead on, and < opens no tag', () => {
    expect(prose('a <b> of {@link level}, {@link Other}: $a<b$ $$ x_1 $$ `<i>`', links)).toBe(
      'a &lt;b> of [`level`](/formulas/x/#level), `Other`: $a<b$ \n\n$$\nx_1\n$$\n\n `<i>`',
    );
  });

  test('a table is framed', () => {
    expect(prose('so:\n\n| a | b |\n| --- | --- |\n| 1 | 2 |', links)).toBe(
      'so:\n\n<div class="table">\n\n| a | b |\n| --- | --- |\n| 1 | 2 |\n\n</div>',
    );
  });
});

test('numbers keep their digits, a true minus, and powers of ten', () => {
  expect([0, -12.5, 1234567, 1.5e-7, -2e10, 0.1 + 0.2].map((value) => numberText(value))).toEqual([
    '0',
    '−12.5',
    '1234567',
    '1.5\u00a0×\u00a010⁻⁷',
    '−2\u00a0×\u00a010¹⁰',
    '0.3',
  ]);
});

describe('a value in print', () => {
  const quoted = { key: 'ussa1976', locator: 'table 5', readIn: 'the tests of a library' };

  test('that another text quotes is counted and told so, by itself and beside others', () => {
    const others = (...rows: LedgerRow[]) => page(withRows(...rows), 'formulas/index.md');
    expect(others(row({ source: quoted }))).toContain('1 check: 1 read in print (as another text quotes it)');
    expect(others(row(), row({ id: 'b', source: quoted }))).toContain(
      '2 read in print (1 of them as another text quotes it)',
    );
    const family = page(withRows(row({ source: quoted })), 'formulas/air/viscosity.md');
    expect(family).toContain('Table, read in print, quoted in the tests of a library.');
  });

  test('is shown by its digits, and each is held to its own', () => {
    const read = evaluate('air.viscosity.read', {
      ...{ formula: 'air/viscosity', source: quoted, status: 'seen', kind: 'table', unit: 'Pa·s' },
      given: {},
      got: () => [1.2, 3.14, 8.001],
      printed: ['1.20', '3.1', '8.0'],
    });
    const text = page(withRows(read), 'formulas/air/viscosity.md');
    const check = documentOf(text.slice(text.indexOf('<div class="check"')));
    const cells = [...check.querySelectorAll('tbody tr')].map((line) =>
      [...line.querySelectorAll('th, td')].map((cell) => cell.textContent),
    );
    expect(cells).toEqual([
      ['1', '1.20', '1.2', '0', '0.005'],
      ['2', '3.1', '3.14', '0.04', '0.05'],
      ['3', '8.0', '8.001', '0.001', '0.05'],
    ]);
    expect(check.querySelector('.check')?.textContent).toContain('Worst deviation 0.04 Pa·s, allowed 0.05 Pa·s');
  });
});

describe('what the checks rest on', () => {
  const words = ['read in print', 'recomputed independently'];

  test('is said in the same words everywhere, and no page promises more', () => {
    const file = (path: string) => readFileSync(`${top}/${path}`, 'utf8').replace(/\s+/g, ' ');
    const texts = [file('README.md'), file('packages/core/README.md'), page(found, 'formulas/index.md')];
    for (const text of texts) for (const word of [...words, /rules? of thumb/]) expect(text).toMatch(word);
    for (const text of [...texts, file('docs-site/src/content/docs/index.mdx')])
      expect(text).not.toMatch(/each formula (is checked )?against a published source/);
  });

  test('is counted from the ledger', () => {
    const rows = [
      row(),
      row({ id: 'b', status: 'derived', kind: 'program' }),
      row({ id: 'c', status: 'practice', kind: 'example' }),
      row({ id: 'd', status: 'derived', kind: 'identity' }),
    ];
    expect(page(withRows(...rows), 'formulas/index.md')).toContain(
      '4 checks: 1 read in print, 1 recomputed independently, 1 rule of thumb, 1 of our own',
    );
  });
});

test('a word of a sentence is no symbol, and every coefficient of an equation is defined', () => {
  expect(page(bare, 'formulas/vent/air-speed.md')).not.toContain('suspension resistance');
  const text = page(bare, 'formulas/enclosure/vented-box.md');
  for (const coefficient of ['a_1 =', 'a_2 =', 'a_3 =']) expect(text).toContain(coefficient);
});
