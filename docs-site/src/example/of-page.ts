import type { Worked } from './worked.js';

const models = import.meta.glob<Worked>('../worked/*.ts', { eager: true, import: 'default' });
const codes = import.meta.glob<string>('../../examples/*.ts', { eager: true, query: '?raw', import: 'default' });
const prints = import.meta.glob<string>('../../examples/printed/*.txt', {
  eager: true,
  query: '?raw',
  import: 'default',
});

function found<T>(what: string, path: string, all: Readonly<Record<string, T>>): T {
  const one = all[path];
  if (one === undefined) throw new Error(`${what}: there is no ${path}; there are ${Object.keys(all).join(', ')}`);
  return one;
}

/** What a page with `example: name` in its head is about. */
export const modelOf = (name: string): Worked => found('model', `../worked/${name}.ts`, models);
export const codeOf = (name: string): string => found('example', `../../examples/${name}.ts`, codes);
/** What the example prints, as the tests pinned it. */
export const printedBy = (name: string): string => found('printed', `../../examples/printed/${name}.txt`, prints);
