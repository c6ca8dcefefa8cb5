import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import references from './references.json';

const packages = fileURLToPath(new URL('../../packages', import.meta.url));
const sources = readdirSync(packages, { recursive: true, encoding: 'utf8' }).filter((file) =>
  /^[^/\\]+[/\\]src[/\\].*\.ts$/.test(file),
);
const ids = references.map((reference) => reference.id);

test('each reference has an id of its own, a type and a title', () => {
  expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([]);
  expect(references.filter(({ id, type, title }) => !/^[\w-]+$/.test(id) || !type || !title)).toEqual([]);
});

test('each @source of the code starts with a key of the bibliography, or says that it is own or common practice', () => {
  const known = new Set([...ids, 'own', 'common-practice', 'common practice']);
  const unknown = sources.flatMap((file) =>
    [...readFileSync(join(packages, file), 'utf8').matchAll(/@source\s+(common practice|[\w-]+)/g)]
      .filter(([, key]) => !known.has(key ?? ''))
      .map(([, key]) => `${file}: ${key}`),
  );
  expect(unknown).toEqual([]);
});
