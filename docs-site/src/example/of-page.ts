import { startsOf } from './input.js';
import type { SlowPart, Worked } from './worked.js';

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

const told = new Map<string, SlowPart>();

/** All that a page says and draws at the author's values, once a build. */
export function authorsOf(name: string): SlowPart {
  const known = told.get(name);
  if (known) return known;
  const { inputs, answers, pictures = {}, slow } = modelOf(name);
  const values = startsOf(inputs);
  const more = slow?.(values);
  const drawn = Object.entries(pictures).map(([picture, draw]) => [picture, draw(values)] as const);
  const all = {
    answers: { ...answers(values), ...more?.answers },
    pictures: { ...Object.fromEntries(drawn), ...more?.pictures },
  };
  told.set(name, all);
  return all;
}

/** The files beside each page, as its author's values give them. */
export const filesOfPages = async () =>
  (
    await Promise.all(
      Object.entries(models).map(async ([path, { inputs, files = {} }]) => {
        const page = path.split('/').at(-1)?.replace(/\.ts$/, '') ?? '';
        const made = Object.entries(files).map(async ([file, { type, make }]) => ({
          page,
          file,
          type,
          body: await make(startsOf(inputs)),
        }));
        return Promise.all(made);
      }),
    )
  ).flat();
