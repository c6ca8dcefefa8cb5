/** What the page of a box that stands says, against the answer that it must say. */
import { readFileSync } from 'node:fs';
import { type Brief, type Retrofit, type RowDone, rankedVents } from 'airspring';
import { describe, expect, test } from 'vitest';
import { html } from '../../../docs-site/src/html.js';
import { jobOf } from '../../../docs-site/src/job/job.js';
import { changesCsv, tubesCsv } from '../../../docs-site/src/retrofit/csv.js';
import { retrofitAnswer } from '../../../docs-site/src/retrofit/page.js';
import { retrofitted } from '../../arbitrary/standing.js';
import { documentOf } from './document.js';

const read = (name: string) =>
  readFileSync(new URL(`../../../packages/airspring/briefs/${name}.json`, import.meta.url), 'utf8');
const text = read('old-thunder-box');
type Written = Brief & { standing: Record<string, unknown> };
const thunderBox = JSON.parse(text) as Written;
const words = (element: Element | null | undefined) => (element?.textContent ?? '').replace(/\u00a0/g, ' ');

function pageOf(brief: Written) {
  const answer = retrofitted(brief);
  const said = retrofitAnswer(brief, answer);
  const document = documentOf(html`<html lang="en"><body><main>${said.answer}${said.rest}</main></body></html>`.markup);
  return { answer, said, document, all: words(document.querySelector('main')) };
}
const { answer, said, document, all } = pageOf(thunderBox);
const first = answer.rows[answer.first ?? -1] as RowDone;
const one = (value: number | undefined) => (value ?? Number.NaN).toFixed(1);

describe('the page of a box that stands', () => {
  test('begins with what to print, and what that changes', () => {
    const [top, changes, quiet] = [...document.querySelectorAll('.answer')].map(words);
    const [tube] = first.box.tubes;
    expect(top).toMatch(/^Print this first: a tube of 50 mm inner and 56 mm outer diameter, /);
    expect(tube?.diameter).toBeCloseTo(0.05, 6);
    expect(changes).toContain(
      `rises from ${one(answer.now.account.loudest.level)} dB to ${one(first.account.loudest.level)} dB`,
    );
    expect(changes).toContain('slows from');
    expect(changes).toContain('within your limit of 17 m/s');
    const [before, after] = [answer.now.account, first.account].map(({ noise }) => noise!.quiet.level) as [
      number,
      number,
    ];
    expect(quiet).toContain(`plays ${one(after - before)} dB louder before it may be heard: up to ${one(after)} dB`);
    expect(quiet).toContain(`Above ${one(first.account.noise!.noisy.level)} dB it has passed them all`);
  });

  test('tells what the loss of the vent makes of the tuning at the wanted level', () => {
    const { drive, small, large } = answer.now.tuning!;
    expect(small.fb).toBeCloseTo(answer.now.account.fb!, 9);
    expect(large.Q!).toBeLessThan(small.Q!);
    expect(drive).toBeLessThanOrEqual(answer.now.account.wanted.drive.value);
    expect(words(document.querySelector('[aria-labelledby=now]'))).toContain(
      `has a quality factor of ${one(large.Q)} instead of ${one(small.Q)} and is at ${one(large.fb)} Hz instead of ${one(small.fb)} Hz`,
    );
  });

  test('ranks what keeps the vent quieter than it is, as the ranking does', () => {
    const ranked = rankedVents(answer).filter(({ louder }) => louder >= 0.1);
    const rows = [...document.querySelectorAll('table.quietest tbody tr')];
    expect(rows.length).toBe(ranked.length);
    rows.forEach((row, i) => {
      const { name, quiet, louder, account } = ranked[i]!;
      const [choice, ...cells] = [...row.children].map(words);
      expect(choice).toContain(name);
      expect(cells.map((cell) => Number(cell.replace('+', '').replace('−', '-').split(' ')[0]))).toEqual(
        [quiet, louder, account.compression!.nominal, account.compression!.low].map((value) => Number(one(value))),
      );
      const target = row.querySelector('a')?.getAttribute('href')?.slice(1) ?? '';
      expect(document.getElementById(target)).not.toBeNull();
    });
    const quiet = { ...answer, asked: { ...answer.asked, level: 60 } };
    expect(retrofitAnswer(thunderBox, quiet).rest.markup).not.toContain('id="quietest"');
  });

  test('every adjective turns with its number', () => {
    const changed = (account: Partial<RowDone['account']>, which = 1): string => {
      const row = { ...first, account: { ...first.account, ...account } };
      const turned: Retrofit = { ...answer, rows: answer.rows.map((each) => (each === first ? row : each)) };
      const page = retrofitAnswer(thunderBox, turned);
      return words(
        documentOf(`<html lang="en"><body>${page.answer.markup}</body></html>`).querySelectorAll('.answer')[which],
      );
    };
    const { loudest, wanted, reach = 0 } = first.account;
    expect(changed({ loudest: { ...loudest, level: 97 } })).toContain('still 1.0 dB short');
    expect(changed({ loudest: { ...loudest, level: 95 } })).toContain('falls from');
    expect(changed({ loudest: { ...loudest, level: answer.now.account.loudest.level } })).toContain('stays at');
    const airSpeed = (value: number) => ({ wanted: { ...wanted, airSpeed: { frequency: 40, value } } });
    expect(changed(airSpeed(30))).toContain('speeds up from');
    expect(changed(airSpeed(19))).toContain('still above your limit');
    const { noise } = first.account;
    const heard = (quiet: number, noisy: number) =>
      changed({ noise: { quiet: { ...noise!.quiet, level: quiet }, noisy: { ...noise!.noisy, level: noisy } } }, 2);
    const now = answer.now.account.noise!.quiet.level;
    expect(heard(99, 110)).toContain('At the 98.0 dB that you want it is quiet.');
    expect(heard(now + 4, 97)).toContain('that you want it is still noisy.');
    expect(heard(now + 4, 97)).toContain('plays 4.0 dB louder before');
    expect(heard(now - 2, 100)).toContain('plays 2.0 dB less loud before');
    expect(heard(now, 100)).toContain('may be heard or not');
    expect(heard(now, 100)).toContain('from the same level on as now');
    expect(changed({ reach: reach * 1.1 })).toContain('reaches less deep');
    expect(changed({ reach: reach * 0.9 })).toContain('reaches deeper');
  });

  test('a row for each change that can be made opens its steps; what cannot be done says why', () => {
    const done = answer.rows.filter((row): row is RowDone => row.ok);
    const groups = [...document.querySelectorAll('table.changes tbody:not(.now)')];
    expect(groups.length).toBe(done.length);
    groups.forEach((group, i) => {
      const row = done[i] as RowDone;
      const cells = [...group.querySelectorAll('tr:first-child td')].map(words);
      expect(cells[2]).toBe(one(row.account.loudest.level));
      expect(cells[4]).toBe(row.account.noise === undefined ? '–' : one(row.account.noise.quiet.level));
      expect(group.querySelectorAll('details li').length).toBe(row.steps.length + (row.measure ? 1 : 0));
    });
    // Rows that are called the same still differ in their words.
    const summaries = groups.map((group) => words(group.querySelector('summary')));
    expect(new Set(summaries).size).toBe(summaries.length);
    for (const row of answer.rows.filter(({ ok }) => !ok)) expect(all).toContain(row.change);
  });

  test('each whole design opens its steps, with its cautions before them', () => {
    const designs = [...document.querySelectorAll('[aria-labelledby=designs] details')];
    expect(designs.length).toBe(answer.designs.length);
    designs.forEach((design, i) => {
      expect(design.querySelectorAll('ol > li').length).toBe(answer.designs[i]?.steps.length);
      expect(words(design)).toContain(answer.designs[i]?.account.loudest.level.toFixed(1));
    });
  });

  test('the figure of the tubes has one axis, a line for each proposed length, and its numbers below', () => {
    const figure = document.querySelector('#tube-lengths') as Element;
    const { options = [], proposed = [] } = answer.tubeSets[0] ?? {};
    const [wide, narrow] = [...figure.querySelectorAll('svg[role=img]')];
    for (const svg of [wide, narrow]) {
      expect(svg?.querySelectorAll('.event').length).toBe(proposed.length + 1);
      expect(svg?.getAttribute('aria-label')?.length).toBeGreaterThan(100);
    }
    const quiet = options.map(({ account }) => account.noise!.quiet.level);
    expect(words(figure.querySelector('figcaption'))).toContain(
      `quiet up to ${one(quiet[0])} dB at the shortest to ${one(quiet.at(-1))} dB`,
    );
    expect(wide?.querySelectorAll('[data-line="quiet up to"]').length).toBe(1);
    const letters = [...(wide?.querySelectorAll('.letter') ?? [])].map(words);
    const lengths = proposed.map(({ option }) => options[option]?.length ?? 0).sort((a, b) => a - b);
    expect(letters).toEqual(lengths.map((length, i) => `T${i + 1}, ${Number((length * 1e3).toFixed(1))} mm`));
    expect(figure.querySelectorAll('tbody tr').length).toBe(options.length);
  });

  test('in the figures of the tubes no name stands in a title, and no line of a length goes through a name', () => {
    const figures = [...document.querySelectorAll('svg.tubes')];
    expect(figures.length).toBeGreaterThan(2);
    const number = (element: Element | undefined | null, name: string) => Number(element?.getAttribute(name));
    for (const figure of figures) {
      for (const name of figure.querySelectorAll('[data-panel] > text.words'))
        expect(number(name, 'y')).toBeGreaterThan(12);
      const names = [...figure.querySelectorAll('path.event + text')].map((text) => {
        const [x, y, long] = [number(text, 'x'), number(text, 'y'), 6.4 * words(text).length];
        const isLeft = text.getAttribute('text-anchor') === 'end';
        return { from: isLeft ? x - long : x, to: isLeft ? x : x + long, y };
      });
      for (const line of figure.querySelectorAll('path.event')) {
        const [across = 0, top = 0] = [...(line.getAttribute('d') ?? '').matchAll(/[\d.]+/g)].map(Number);
        for (const { from, to, y } of names) expect(across > from && across < to && top < y - 10).toBe(false);
      }
    }
  });

  test('every hole, saw and pipe has its own set of tubes, and each of its tubes a name of its own', () => {
    const pipes = [{ inner: '46 mm', outer: '50 mm' }];
    const { answer, said, document } = pageOf({
      ...thunderBox,
      workshop: { holeSaws: ['57 mm', '76 mm'], pipes },
    } as never);
    const sets = answer.tubeSets.filter(({ proposed }) => proposed.length > 0);
    expect(sets.length).toBe(4);
    const section = document.querySelector('[aria-labelledby=tubes]');
    expect(section?.querySelectorAll('.figure').length).toBe(sets.length);
    // The command takes a set by its number.
    const numbered = sets.map((_, i) => expect.stringMatching(`^Set ${i + 1}, the hole`));
    expect([...(section?.querySelectorAll('h3') ?? [])].map(words)).toEqual(numbered);
    // On paper each set is drawn as well, with a line for each of its tubes.
    const drawn = [...documentOf(said.sheets.markup).querySelectorAll('.sheet .plot-on-paper svg[role=img]')];
    expect(drawn.length).toBe(sets.length);
    expect(new Set(drawn.map((svg) => svg.getAttribute('aria-label'))).size).toBe(sets.length);
    drawn.forEach((svg, i) => {
      const letters = [...svg.querySelectorAll('.letter')];
      expect(letters.length).toBe(sets[i]?.proposed.length);
    });
    const names = [...(section?.querySelectorAll('table.tubes tbody th') ?? [])].map(
      (head) => words(head).split(',')[0],
    );
    expect(names.length).toBe(sets.reduce((sum, { proposed }) => sum + proposed.length, 0));
    expect(new Set(names).size).toBe(names.length);
    for (const { flangeDiameter } of sets)
      expect(words(section)).toContain(`${Number((flangeDiameter * 1e3).toFixed(1))} mm onto the panel`);
    for (const name of names)
      expect(words(document.querySelector('[aria-labelledby=measure]'))).toContain(`tube ${name} needs`);
  });

  test('tells how to measure first and how to find the tuning by eye, with its caution before the steps', () => {
    const section = document.querySelector('[aria-labelledby=by-eye]') as Element;
    expect(words(section)).toContain(`${one(answer.now.account.fb)} Hz`);
    const [caution, steps] = [section.querySelector('.caution'), section.querySelector('ol')];
    expect(words(caution)).toMatch(/Low level, ears, fingers/);
    const order = [...section.children];
    expect(order.indexOf(caution as Element)).toBeLessThan(order.indexOf(steps as Element));
    expect(words(document.querySelector('[aria-labelledby=measure]'))).toContain('236 mm');
  });

  test('holds no broken number, in any of its parts', () => {
    for (const part of Object.values(said)) expect(part.markup).not.toMatch(/NaN|Infinity|undefined|\[object/);
    const ids = [...document.querySelectorAll('[id]')].map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const table of document.querySelectorAll('table')) expect(table.querySelector('caption')).not.toBeNull();
  });

  test('its tables as values have as many columns in every row', () => {
    for (const csv of [changesCsv(answer), tubesCsv(answer)]) {
      const rows = csv.trimEnd().split('\n');
      const columns = (row: string) => row.match(/("[^"]*"|[^,]*)(,|$)/g)?.length;
      for (const row of rows.filter((each) => !each.includes('"no"')))
        expect(columns(row)).toBe(columns(rows[0] ?? ''));
      expect(csv).not.toMatch(/NaN|undefined/);
    }
  });
});

describe('other boxes that stand', () => {
  const cases: readonly (readonly [string, Written])[] = [
    ['closed', { ...thunderBox, standing: { air: '22 L', panelThickness: '15 mm' } }],
    ['tuning kept', { ...thunderBox, standing: { ...thunderBox.standing, keep: ['box', 'tuning'] } }],
    ['nothing to wish for', { ...thunderBox, wanted: { ...thunderBox.wanted, level: '80 dB' } }],
    [
      'inches, sizes known, measured far off',
      {
        ...thunderBox,
        units: { length: 'in', volume: 'ft³' },
        standing: {
          ...thunderBox.standing,
          measured: { tuning: '40 Hz' },
          air: undefined,
          inner: { width: '300 mm', height: '300 mm', depth: '270 mm' },
        },
      },
    ],
  ];
  test.each(cases)('%s: the page stands, with no broken number', (_, brief) => {
    const given = JSON.parse(JSON.stringify(brief)) as Written;
    const { said: parts, all: text_ } = pageOf(given);
    for (const part of Object.values(parts)) expect(part.markup).not.toMatch(/NaN|Infinity|undefined|\[object/);
    expect(text_).toContain('What it does now');
  });

  test('drivers without a sheet: their data with ranges first and in full, ranges of the box, and the check by eye', () => {
    const { answer, document, all } = pageOf(JSON.parse(read('unknown-drivers')) as Written);
    const { values } = answer.measuredDrivers!;
    const rows = [...document.querySelectorAll('table.measured tbody tr')].map((row) =>
      [...row.children].map((cell) => words(cell)),
    );
    expect(rows.map(([name]) => name)).toEqual(values.map(({ field }) => field));
    for (const [i, { value, from, to }] of values.slice(0, 4).entries()) {
      const printed = rows[i]?.slice(1).map((text) => Number.parseFloat(text));
      for (const [k, exact] of [value, from, to].entries())
        expect((printed?.[k] ?? Number.NaN) / exact).toBeCloseTo(1, 2);
    }
    const [head] = [...document.querySelectorAll('.answer')].map(words);
    expect(head).toContain(`fs ${rows[0]?.[2]?.replace(' Hz', '')} to ${rows[0]?.[3]}`);
    // Each range opens a proof, which pages with such a brief hold.
    const opened = [...document.querySelectorAll('.answer button.proof')].slice(0, 3);
    expect(opened.map(words).map((text) => text.split(' ')[0])).toEqual(['fs', 'Qts', 'Vas']);
    expect(opened.map((button) => button.getAttribute('popovertarget'))).toEqual([
      'proof-lossyVentedImpedance',
      'proof-lossyVentedImpedance',
      'proof-lossyVentedImpedance',
    ]);
    // So does each range of the box: how its ends were found, the readings at both, and the formula.
    const ranges = [...document.querySelectorAll('button.proof[popovertarget^="proof-now-"]')];
    expect(ranges.map((button) => button.getAttribute('popovertarget'))).toEqual([
      'proof-now-reach',
      'proof-now-level',
      'proof-now-airSpeed',
    ]);
    const ids = [...document.querySelectorAll('[id]')].map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const { bands } = answer.now;
    for (const [of, formula] of [
      ['reach', 'cutoff'],
      ['level', 'greatestLevel'],
      ['airSpeed', 'respond'],
    ] as const) {
      const proof = document.querySelector(`#proof-now-${of}`)!;
      for (const corner of [bands![of]!.corners.from, bands![of]!.corners.to])
        expect(words(proof)).toContain(
          `peaks at ${corner.lowerPeak.toFixed(2)} and ${corner.upperPeak.toFixed(2)} Hz, the dip at ${corner.dip.toFixed(2)} Hz`,
        );
      expect(words(proof)).toContain('that is no proof');
      expect(proof.querySelector('button')!.getAttribute('popovertarget')).toBe(`proof-${formula}`);
      const component = readFileSync(
        new URL('../../../docs-site/src/components/RangesProof.astro', import.meta.url),
        'utf8',
      );
      expect(component).toContain(`/${formula}'`);
    }
    // The change that helps most has ranges of its own.
    expect(document.querySelectorAll('button.proof[popovertarget^="proof-first-"]')).toHaveLength(3);
    const { reach, level } = answer.now.bands!;
    expect(all).toContain(
      `it reaches ${one(reach.from)} to ${one(reach.to)} Hz, plays ${one(level.from)} to ${one(level.to)} dB`,
    );
    expect(all).toContain('This stays open: the travel of the cone (Xmax)');
    expect(document.querySelector('[aria-labelledby=by-eye] .caution')).not.toBeNull();
  });

  test('a desk takes either sort of brief, and escapes what people write', () => {
    const whale = JSON.parse(read('whale-bench')) as Brief;
    const closed = {
      ...whale,
      wanted: { ...whale.wanted, lowest: '60 Hz', level: '85 dB' },
      box: { kinds: ['closed'] },
    };
    expect(Object.keys(jobOf(closed, JSON.stringify(closed)).files)).toEqual(['report', 'curves', 'sheets']);
    const evil = '<script>alert("1")</script>';
    const told = jobOf({ ...thunderBox, title: evil }, text);
    expect(Object.keys(told.files)).toEqual(['report', 'changes', 'tubes', 'page']);
    for (const part of [...Object.values(told.parts), told.line, told.drawing, told.files.page?.text ?? ''])
      expect(part).not.toContain('<script');
  });
});

test('the page without a sheet says how to take each reading before its brief asks for it', () => {
  const page = readFileSync(
    new URL('../../../docs-site/src/content/docs/worked-examples/no-sheet.mdx', import.meta.url),
    'utf8',
  );
  const before = /<Fragment slot="before">(.*?)<\/Fragment>/s.exec(page)?.[1] ?? '';
  const { drivers, standing } = JSON.parse(read('unknown-drivers'));
  const { within: _, ...readings } = standing.measured;
  const { name: __, ...driver } = drivers[0];
  for (const field of ['air', ...Object.keys(readings), ...Object.keys(driver)])
    expect(before).toContain(`\`${field}\``);
  expect(before).toMatch(/resistor.*Z = R/s);
});
