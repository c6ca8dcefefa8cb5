/** Every model of a page, at the author's values and at every corner of what its reader may set. */
import { readdirSync, readFileSync } from 'node:fs';
import { read } from '@airspring/core/quantity';
import { describe, expect, test } from 'vitest';
import { type AnyValues, attributesOf, type Input, startsOf, textOf } from '../../../docs-site/src/example/input.js';
import type { Worked } from '../../../docs-site/src/example/worked.js';
import { drawChart } from '../../../docs-site/src/figures/chart.js';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';

const folder = new URL('../../../docs-site/src/worked/', import.meta.url);
const names = readdirSync(folder).filter((name) => name.endsWith('.ts'));
const bad = /NaN|Infinity|undefined|\[object/;

/** The corners of what a reader may set; where many cases are drawn, with the author's value of each number between its ends. */
const corners = (inputs: Worked['inputs']): AnyValues[] =>
  Object.entries(inputs).reduce<AnyValues[]>(
    (all, [name, { kind, least, value, greatest }]) =>
      all.flatMap((values) =>
        (fuzzRuns < 300 ? [least, greatest] : [least, value, greatest]).map((text) => ({
          ...values,
          [name]: read(kind, text),
        })),
      ),
    [{}],
  );

describe.each(names)('%s', async (file) => {
  const model = ((await import(new URL(file, folder).pathname)) as { default: Worked }).default;
  const all = [startsOf(model.inputs), ...corners(model.inputs)];
  const [least, greatest] = [all[1]!, all.at(-1)!];

  test('asks for three numbers at most, each within its range', () => {
    const inputs = Object.entries(model.inputs);
    expect(inputs.length).toBeLessThanOrEqual(3);
    for (const [name, input] of inputs) {
      const { least = 0, value = 0, greatest = 0 } = attributesOf(name, input);
      expect(Number(least)).toBeLessThan(Number(value));
      expect(Number(value)).toBeLessThan(Number(greatest));
      expect(textOf(input as Input, startsOf(model.inputs)[name]!).replace('\u00a0', ' ')).toBe(
        input.value.replace(/ 1$/, ''),
      );
    }
  });

  test('has the same answers everywhere, none of them broken', () => {
    const told = Object.keys(model.answers(startsOf(model.inputs))).sort();
    for (const values of all) {
      const answers = model.answers(values);
      expect(Object.keys(answers).sort()).toEqual(told);
      for (const [name, text] of Object.entries(answers)) {
        expect(text, `${name} at ${JSON.stringify(values)}`).not.toMatch(bad);
        expect(text.trim()).not.toBe('');
      }
    }
  });

  test('draws every picture', () => {
    for (const [name, draw] of Object.entries(model.pictures ?? {})) {
      for (const values of all) {
        const markup = draw(values);
        expect(markup, `${name} at ${JSON.stringify(values)}`).not.toMatch(bad);
        expect(markup).toMatch(/role="img" aria-label="[^"]{40,}"/);
      }
    }
  });

  test.skipIf(!model.slow && !model.files)('is known to the worker', () => {
    expect(readFileSync(new URL('../elements/page-worker.ts', folder), 'utf8')).toMatch(
      new RegExp(`worked/\\{.*\\b${file.replace('.ts', '')}\\b.*\\}`),
    );
  });

  test.skipIf(!model.slow)('says and draws the same in the worker', () => {
    const told = Object.keys(model.slow!(startsOf(model.inputs)).answers).sort();
    // A solid takes a while: the ends of the ranges stand for all.
    for (const values of [least, greatest]) {
      const { answers, pictures } = model.slow!(values);
      expect(Object.keys(answers).sort()).toEqual(told);
      for (const text of Object.values(answers)) expect(text).toMatch(/^(?!.*(?:NaN|undefined|Infinity)).*\S/);
      for (const markup of Object.values(pictures)) {
        expect(markup).not.toMatch(bad);
        expect(markup).toMatch(/role="img"(?: aria-label="[^"]{40,}"|[^>]*>\s*<title>[^<]{20,})/);
      }
    }
  });

  test('draws every figure, with the same lines', () => {
    for (const [name, figure] of Object.entries(model.figures)) {
      const lines = figure.chart(startsOf(model.inputs)).traces.map((trace) => trace.name);
      expect(new Set(lines).size).toBe(lines.length);
      for (const values of all) {
        const chart = figure.chart(values);
        expect(chart.traces.map((trace) => trace.name)).toEqual(lines);
        expect(drawChart(chart, 648), `${name} at ${JSON.stringify(values)}`).not.toMatch(bad);
        const { heads, rows } = figure.data(values);
        for (const row of rows) expect(row.length).toBe(heads.length);
      }
    }
  });
});
