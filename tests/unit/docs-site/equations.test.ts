/** An equation that cannot be set ends the build; every equation of a docstring can be. */
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';
import { equations } from '../../../docs-site/src/equations.js';

const site = createRequire(new URL('../../../docs-site/package.json', import.meta.url));
const katex = site('katex') as { renderToString: (tex: string, options: object) => string };
const text = (value: string) => ({ type: 'text', value });
const element = (tagName: string, className: readonly string[], ...children: object[]) => ({
  type: 'element',
  tagName,
  properties: { className, title: 'why' },
  children,
});

describe('the build', () => {
  test('ends at an equation that cannot be set', () => {
    expect(() => equations()(element('span', ['katex-error'], text('\\frac')))).toThrow('cannot be set. why');
  });

  test('ends at an equation that was left as text, and lets code be', () => {
    expect(() => equations()(element('p', [], text('$$ a = b $$ and so on')))).toThrow('left as text');
    expect(() => equations()(element('p', [], element('code', [], text('$$'))))).not.toThrow();
  });

  test('ends at an equation into which markup came', () => {
    const tex = (value: string) => equations()(element('span', [], element('annotation', [], text(value))));
    expect(() => tex('<div class="table"> |G|^2')).toThrow('holds markup');
    expect(() => tex('a < b > c')).not.toThrow();
  });
});

const sources = ['core', 'transient', 'workshop', 'airspring'].flatMap((name) => {
  const folder = new URL(`../../../packages/${name}/src/`, import.meta.url);
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .map((file) => [`${name}/${file}`, readFileSync(new URL(file, folder), 'utf8')] as const);
});

test('every equation of a docstring stands on lines of its own and can be set', () => {
  const faults: string[] = [];
  for (const [file, code] of sources)
    for (const [comment] of code.matchAll(/\/\*\*[\s\S]*?\*\//g)) {
      const plain = comment.replaceAll(/^\s*\* ?/gm, '');
      for (const [whole, tex, after] of plain.matchAll(/\$\$([^$]+)\$\$([^\n]*)/g)) {
        if (after?.trim()) faults.push(`${file}: words follow ${whole}`);
        // The comment parser takes these signs for its own.
        if (/\\[{}]/.test(tex as string)) faults.push(`${file}: write \\lbrace and \\rbrace in ${whole}`);
      }
      for (const [, display, inline] of plain.matchAll(/\$\$([^$]+)\$\$|(?<![`$])\$([^$\n]+)\$/g))
        try {
          katex.renderToString(display ?? inline ?? '', {
            strict: 'error',
            throwOnError: true,
            displayMode: !!display,
          });
        } catch (error) {
          faults.push(`${file}: ${(error as Error).message}`);
        }
    }
  expect(faults).toEqual([]);
});

test('a docstring has no tag that its page does not show', () => {
  const shown = /@(?:param|returns|throws|example|validity|neglects|source)$/;
  const others = sources.flatMap(([file, code]) =>
    [...code.matchAll(/^\s*(?:\/\*\*|\*) (@\w+)/gm)].flatMap(([, tag]) =>
      shown.test(tag as string) ? [] : [`${file} ${tag}`],
    ),
  );
  expect(others).toEqual([]);
});
