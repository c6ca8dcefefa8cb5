import { expect, test } from 'vitest';
import { codeInks } from '../../../docs-site/src/code-inks.js';
import { usedRules } from '../../../docs-site/src/equation-styles.js';

const face = (name: string) =>
  `@font-face{font-family:${name};src:url(/a/${name}.woff2) format("woff2"),url(/a/${name}.woff) format("woff"),url(/a/${name}.ttf) format("truetype")}`;

test('of the styles of the equations stay those whose classes stand on a page, and the faces that they name', () => {
  const sheet = `${face('Main')}${face('Fraktur')}.k{font:1em Main,serif}.k .frak,.k .fraktur{font-family:Fraktur}.k .a,.k .b{color:red}.k>span{top:0}`;
  expect(usedRules(sheet, new Set(['k', 'b']))).toBe(
    '@font-face{font-family:Main;src:url(/a/Main.woff2) format("woff2")}.k{font:1em Main,serif}.k .b{color:red}.k>span{top:0}',
  );
});

test('words of code in plain ink are text; the others have a class, and no style', () => {
  const word = (value: string, token?: string) => ({
    type: 'element',
    properties: { style: token ? `color:var(--astro-code-token-${token})` : 'color:var(--astro-code-foreground)' },
    children: [{ type: 'text', value }],
  });
  const line = { children: [word('f', 'function'), word('('), word('"x"', 'string'), word(')')] };
  codeInks.line(line);
  expect(line.children).toEqual([
    { type: 'text', value: 'f(' },
    { ...word('"x"'), properties: { className: ['quoted'] } },
    { type: 'text', value: ')' },
  ]);
});
