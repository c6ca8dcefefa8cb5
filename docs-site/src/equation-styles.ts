/** The style sheet of the equations, cut down to what the pages use of it: of its 24 kB that is a fifth. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** Rules whose classes stand on a page, and the faces that they name, in the one format that every browser reads. */
export function usedRules(sheet: string, classes: ReadonlySet<string>): string {
  const rules = sheet.replace(/@font-face\{[^}]*\}/g, '').replace(/([^{}]+)\{([^{}]*)\}/g, (_, names: string, body) => {
    const kept = names
      .split(',')
      .filter((name) => [...name.matchAll(/\.([\w-]+)/g)].every(([, is = '']) => classes.has(is)));
    return kept.length > 0 ? `${kept.join(',')}{${body}}` : '';
  });
  const faces = [...sheet.matchAll(/@font-face\{[^}]*font-family:(\w+)[^}]*\}/g)].flatMap(([face, name = '']) =>
    new RegExp(`\\b${name}\\b`).test(rules) ? [face.replace(/,url\([^)]*\.(?:woff|ttf)\) format\("\w+"\)/g, '')] : [],
  );
  return faces.join('') + rules;
}

const classesOf = (page: string): readonly string[] =>
  [...page.matchAll(/\sclass="([^"]*)"/g)].flatMap(([, names = '']) => names.split(' '));

/** Puts the cut sheet in the place of the whole one, under the name of what it holds. */
export function cutEquationStyles(folder: string): void {
  const paths = readdirSync(folder, { recursive: true, encoding: 'utf8' });
  const name = paths.find((path) => /^_astro.katex\.min\.[\w-]+\.css$/.test(path));
  if (name === undefined) throw new Error('The style sheet of the equations is not where the build puts it.');
  const pages = paths.filter((path) => path.endsWith('.html')).map((path) => join(folder, path));
  const texts = new Map(pages.map((path) => [path, readFileSync(path, 'utf8')]));
  const cut = usedRules(readFileSync(join(folder, name), 'utf8'), new Set([...texts.values()].flatMap(classesOf)));
  const named = `_astro/equations.${createHash('sha256').update(cut).digest('base64url').slice(0, 8)}.css`;
  writeFileSync(join(folder, named), cut);
  rmSync(join(folder, name));
  for (const [path, text] of texts) if (text.includes(name)) writeFileSync(path, text.replaceAll(name, named));
}
