/** The short program of each page prints the numbers of its first paragraph, no more and no other, in that order. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { startsOf, textOf } from '../../../docs-site/src/example/input.js';
import type { Worked } from '../../../docs-site/src/example/worked.js';

const pages = new URL('../../../docs-site/src/content/docs/', import.meta.url);
const models = new URL('../../../docs-site/src/worked/', import.meta.url);
const prints = new URL('../../../docs-site/examples/printed/', import.meta.url);
const NUMBER = /(?:\d+ × )*\d+(?:\.\d+)?(?: ?(?:dB|Hz|mm|L|Ω|m\/s|°|times))/g;
const numbersIn = (text: string): readonly string[] => text.replaceAll('\u00a0', ' ').match(NUMBER) ?? [];

test.each([
  'start',
  'worked-examples/a-box-that-is-no-box',
  'worked-examples/band-pass',
  'worked-examples/cut-the-box',
  'worked-examples/deeper-or-louder',
  'worked-examples/how-long-a-pipe',
  'worked-examples/how-loud',
  'worked-examples/how-small',
  'worked-examples/how-wide-a-baffle',
  'worked-examples/no-bass-below-the-tuning',
  'worked-examples/one-or-two',
  'worked-examples/print-the-vent',
  'worked-examples/second-driver-behind',
  'worked-examples/stuffed-vent',
  'worked-examples/two-vents',
  'worked-examples/what-a-capacitor-buys',
  'worked-examples/what-impedance-tells',
  'worked-examples/what-my-coil-changes',
  'worked-examples/what-the-corner-adds',
  'worked-examples/which-boxes-suit',
  'worked-examples/where-a-quiet-vent-fits',
  'worked-examples/which-vent-is-quiet',
  'worked-examples/wider-vent',
  'worked-examples/will-a-long-vent-ring',
  'worked-examples/will-two-builds-differ',
])('%s', async (page) => {
  const text = readFileSync(new URL(`${page}.mdx`, pages), 'utf8');
  const name = /^example: (.*)$/m.exec(text)?.[1] as string;
  const { default: model }: { default: Worked } = await import(new URL(`${name}.ts`, models).href);
  const values = startsOf(model.inputs);
  const answers = { ...model.answers(values), ...model.slow?.(values).answers };
  const paragraph = /<p class="answer">(.*?)<\/p>/s.exec(text)?.[1] as string;
  const told = [...paragraph.matchAll(/<(?:Answer|Proof) name="(\w+)"/g)].flatMap(([, answer]) =>
    numbersIn(answers[answer as string] as string),
  );
  const given = Object.entries(model.inputs).flatMap(([input, { value }]) =>
    numbersIn(value).concat(textOf(model.inputs[input]!, startsOf(model.inputs)[input]!).replace('\u00a0', ' ')),
  );

  // Pinned by the tests of the examples, which run it.
  const printed = numbersIn(readFileSync(new URL(`${name}-in-short.txt`, prints), 'utf8'));
  expect(told.length).toBeGreaterThan(0);
  expect(printed.filter((number) => !given.includes(number) || told.includes(number))).toEqual(told);
});
