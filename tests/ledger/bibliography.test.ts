import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import references from './references.json';

const top = fileURLToPath(new URL('../..', import.meta.url));
/** File → text, of the files of a folder; what is installed or built is left out. */
const texts = (folder: string, names: RegExp) =>
  readdirSync(join(top, folder), { recursive: true, encoding: 'utf8' })
    .filter((file) => names.test(file) && !/(^|[/\\])(node_modules|dist)[/\\]/.test(file))
    .filter((file) => statSync(join(top, folder, file)).isFile())
    .map((file) => [join(folder, file), readFileSync(join(top, folder, file), 'utf8')] as const);
const code = texts('packages', /^[^/\\]+[/\\]src[/\\].*\.ts$/);
const pages = texts('docs-site', /\.(ts|mdx|astro)$/);
const ids = references.map((reference) => reference.id);

/** The kinds of publication, by their names in CSL; a document is what nobody in particular has published. */
const kinds = [
  ...[
    'article-journal',
    'article-magazine',
    'paper-conference',
    'book',
    'standard',
    'legislation',
    'report',
    'thesis',
    'software',
  ],
  ...['webpage', 'document'],
];

test('each reference has an id of its own, a kind of publication and a title; a web page has its address', () => {
  expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([]);
  expect(references.filter(({ id, title }) => !/^[\w-]+$/.test(id) || !title)).toEqual([]);
  expect(references.filter(({ type }) => !kinds.includes(type)).map(({ id }) => id)).toEqual([]);
  expect(references.filter(({ type, URL }) => type === 'webpage' && !URL).map(({ id }) => id)).toEqual([]);
});

test('each reference is cited by the code, a check or a page', () => {
  const checks = [...texts('tests/literature', /(\.ts|printed(-\w+)?\.json)$/), ...texts('tests/circuit', /\.ts$/)];
  const words = new Set([...code, ...checks, ...pages].flatMap(([, text]) => text.match(/[\w-]+/g) ?? []));
  expect(ids.filter((id) => !words.has(id))).toEqual([]);
});

test('programs of general purpose are named in the bibliography alone', () => {
  const program = /\b(coolprop|mpmath|ngspice|numpy|pyfar|scipy|sympy)\b/i;
  const guides = ['README.md', 'DEVELOPERS.md'].map((file) => [file, readFileSync(join(top, file), 'utf8')] as const);
  const prose = [...code, ...pages, ...guides, ...texts('packages', /\.md$/)];
  expect(prose.filter(([, text]) => program.test(text)).map(([file]) => file)).toEqual([]);
});

test('each @source of the code starts with a key of the bibliography, or says that it is own or common practice', () => {
  const known = new Set([...ids, 'own', 'common-practice', 'common practice']);
  const unknown = code.flatMap(([file, text]) =>
    [...text.matchAll(/@source\s+(common practice|[\w-]+)/g)]
      .filter(([, key]) => !known.has(key ?? ''))
      .map(([, key]) => `${file}: ${key}`),
  );
  expect(unknown).toEqual([]);
});
