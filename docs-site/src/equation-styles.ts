/// <reference path="./subset-font.d.ts" />
/** The style sheet of the equations and its fonts, cut down to what the pages use of them: a fifth, and two thirds. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import subsetFont from 'subset-font';

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

const hashOf = (content: string | Buffer): string =>
  createHash('sha256').update(content).digest('base64url').slice(0, 8);

/** The fonts of equations that a sheet names, with the characters of a text alone, each under the name of what it holds; and the sheet that names these. */
async function withCutFonts(sheet: string, assets: string, characters: string): Promise<string> {
  let cut = sheet;
  for (const [, name = ''] of sheet.matchAll(/url\([^)]*?(KaTeX_[\w.-]+\.woff2)\)/g)) {
    const font = await subsetFont(readFileSync(join(assets, name)), characters, { targetFormat: 'woff2' });
    const named = name.replace(/[^.]+(?=\.woff2$)/, hashOf(font));
    writeFileSync(join(assets, named), font);
    cut = cut.replaceAll(name, named);
  }
  return cut;
}

/** Puts the cut sheet, and every sheet that names a font of equations, with their fonts in the place of the whole ones. */
export async function cutEquationStyles(folder: string): Promise<void> {
  const assets = join(folder, '_astro');
  const names = readdirSync(assets);
  const whole = names.find((name) => /^katex\.min\.[\w-]+\.css$/.test(name));
  if (whole === undefined) throw new Error('The style sheet of the equations is not where the build puts it.');
  const pages = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.html'))
    .map((path) => join(folder, path));
  const texts = new Map(pages.map((path) => [path, readFileSync(path, 'utf8')]));
  const characters = [...new Set([...texts.values()].join(''))].join('');
  const classes = new Set([...texts.values()].flatMap(classesOf));
  const renamed = new Map<string, string>();
  for (const name of names.filter((each) => each.endsWith('.css'))) {
    const sheet = readFileSync(join(assets, name), 'utf8');
    if (!sheet.includes('KaTeX_')) continue;
    const cut = await withCutFonts(name === whole ? usedRules(sheet, classes) : sheet, assets, characters);
    const named = `${name === whole ? 'equations' : name.split('.')[0]}.${hashOf(cut)}.css`;
    writeFileSync(join(assets, named), cut);
    renamed.set(name, named);
  }
  for (const name of names) if (renamed.has(name) || name.startsWith('KaTeX_')) rmSync(join(assets, name));
  for (const [path, text] of texts) {
    const led = [...renamed].reduce((page, [name, named]) => page.replaceAll(name, named), text);
    if (led !== text) writeFileSync(path, led);
  }
}
