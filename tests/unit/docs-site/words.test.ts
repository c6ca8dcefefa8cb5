/** Words that mean one thing on every page, and marks that stand where their lines are. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { startsOf } from '../../../docs-site/src/example/input.js';
import { heightAt } from '../../../docs-site/src/figures/beside.js';
import type { Chart } from '../../../docs-site/src/figures/chart.js';
import howSmall from '../../../docs-site/src/worked/how-small.js';
import noBass from '../../../docs-site/src/worked/no-bass-below-the-tuning.js';
import widerVent from '../../../docs-site/src/worked/wider-vent.js';
import { pageOf, whaleBench } from './brief.js';
import { documentOf } from './document.js';

const folder = new URL('../../../docs-site/src/content/docs/worked-examples/', import.meta.url);
const pages = readdirSync(folder).map((name) => [name, readFileSync(new URL(name, folder), 'utf8')] as const);

test('a page that says how deep a box reaches says at how many decibels', () => {
  for (const [name, text] of pages)
    for (const [paragraph] of text.matchAll(/<p class="answer">.*<\/p>/g))
      if (/\breach(es)?\b.*<(Answer|Scrub)/.test(paragraph) && !/deeper from less air/.test(paragraph))
        expect(paragraph, name).toMatch(/decibels down|−\d dB/);
});

test('what a limit does and what a vent does have different words', () => {
  for (const [name, text] of pages) expect(text, name).not.toMatch(/vent gives out/);
});

const at = (chart: Chart, name: string) => {
  const mark = chart.marks?.find((each) => each.name === name);
  const trace = chart.traces.find((each) => each.name === name);
  return { mark, trace };
};

test('the smallest box stands where its curve crosses the rule that decides', () => {
  const { inputs, figures } = howSmall;
  const starts = startsOf(inputs) as Record<string, number>;
  for (const wish of [starts, { ...starts, rise: 6 }, { ...starts, reach: 80 }]) {
    const chart = figures.reach?.chart(wish) as Chart;
    const { mark: now } = at(chart, 'now');
    if (!now?.dot) continue;
    const { trace: wanted } = at(chart, 'wanted');
    const { trace: even } = at(chart, 'even');
    const onWanted = Math.abs(now.y - wanted!.y[0]!) < 0.05;
    const onEven = Math.abs(now.x - even!.x[0]!) < 0.01 * now.x;
    expect(onWanted || onEven, JSON.stringify(wish)).toBe(true);
    const { trace: reach } = at(chart, 'reach');
    expect(Math.abs(heightAt(reach!, now.x) - now.y)).toBeLessThan(0.1);
  }
});

test('the vent of twice the section is marked on its curve, and the axis ends near the data', () => {
  const chart = widerVent.figures.length?.chart(startsOf(widerVent.inputs)) as Chart;
  const { mark: wide } = at(chart, 'wide');
  expect(wide?.words).toContain('twice the section');
  expect(wide?.x).toBeCloseTo(75 * Math.SQRT2, 6);
  expect(Math.abs(heightAt(at(chart, 'length').trace!, wide!.x) - wide!.y)).toBeLessThan(2);
  const highest = Math.max(...Array.from(chart.traces[0]!.y));
  expect(chart.y.domain[1] / highest).toBeLessThan(1.25);
});

test('cone, vent and both have lines that differ, and names that lie on them', () => {
  const chart = noBass.figures.level?.chart(startsOf(noBass.inputs)) as Chart;
  expect(new Set(chart.traces.map(({ colour }) => colour)).size).toBe(4);
  for (const trace of chart.traces) {
    const mark = chart.marks?.find(({ words }) => words === trace.name);
    expect(Math.abs(heightAt(trace, mark!.x) - mark!.y), trace.name).toBeLessThan(0.01);
  }
});

test('each runner-up says against which box it gains and loses what, and for whom it is', () => {
  const { markup } = pageOf(whaleBench);
  const { body } = documentOf(markup);
  const [first, ...others] = [...body.querySelectorAll('#choice ~ ul li')].map(({ textContent }) => textContent ?? '');
  expect(first).not.toContain('Compared with');
  expect(others.length).toBeGreaterThan(0);
  for (const told of others) expect(told).toMatch(/Compared with A, it is .* and .*\. Take it if/);
});
