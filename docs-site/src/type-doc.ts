import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Application, Converter, PageEvent, type ParameterReflection, ReflectionKind } from 'typedoc';
import { addressOf, formulas, keyOf } from './audit/formula.js';

const top = fileURLToPath(new URL('../..', import.meta.url));
const formulaAddresses = new Map(formulas(top, new Set()).map((one) => [keyOf(one), addressOf(one)]));
/** What each subpath answers, as the README of its package says. */
const questions = new Map(
  ['core', 'transient', 'workshop'].flatMap((name) =>
    [...readFileSync(`${top}/packages/${name}/README.md`, 'utf8').matchAll(/^\| `(\w+)` +\| (.*?) +\|$/gm)].map(
      ([, subpath, question]) => [subpath as string, question as string] as const,
    ),
  ),
);
questions.set('airspring', 'Which box fits, plays deep and loud enough, and can be built?');

/** Subpaths as people import them, and equations on lines of their own, as the reader of Markdown wants them. */
function asOurs(app: Application): void {
  app.converter.on(Converter.EVENT_RESOLVE_END, ({ project }) => {
    project.name = 'API';
    for (const module of project.getReflectionsByKind(ReflectionKind.Module)) {
      module.name = module.name.replace(/^(core|transient|workshop)\/src\//, '').replace(/\/src$/, '');
    }
    // A parameter that is taken apart at once has no name of its own: its type names it.
    for (const parameter of project.getReflectionsByKind(ReflectionKind.Parameter)) {
      if (!parameter.name.startsWith('__namedParameters')) continue;
      const type = (parameter as ParameterReflection).type;
      const name = type?.type === 'reference' ? type.name : 'input';
      parameter.name = name.charAt(0).toLowerCase() + name.slice(1);
    }
  });
  app.renderer.on(PageEvent.END, (page) => {
    if (page.contents === undefined) return;
    page.contents = page.contents
      .replace(/^[ \t]*\$\$([^$]+)\$\$/gm, (_, tex: string) => `$$\n${tex.trim()}\n$$`)
      // A function leads to its formula and checks; the list of modules says what each answers.
      .replace(/^## (\w+)\(\)$/gm, (heading, name: string) => {
        const address = formulaAddresses.get(`${page.url.replace(/\.md$/, '')}/${name}`);
        return address ? `${heading}\n\n[Formula, sources and checks](${address})` : heading;
      })
      .replace(/^- \[(\w+)\]\(\/api\/\1\/\)$/gm, (line, name: string) =>
        questions.has(name) ? `${line}: ${questions.get(name)}` : line,
      )
      // A table that only repeats the names of the type parameters tells nothing that the signature does not.
      .replace(/^#+ Type Parameters\n\n\| Type Parameter \|\n(?:\|.*\n)+\n/gm, '')
      // A type and a function of one name share an anchor: the reader of Markdown numbers them in another way.
      .replace(/(\]\([^)\s]*#\w+)-\d+\)/g, '$1)');
  });
}

/** One page for each subpath of a package; the tags of our docstrings are known. */
export const typeDocOptions = {
  plugin: [asOurs],
  readme: 'none',
  entryFileName: 'overview',
  outputFileStrategy: 'modules' as const,
  useCodeBlocks: true,
  tableColumnSettings: { hideModifiers: true, hideInherited: true, hideOverrides: true, hideSources: true },
  interfacePropertiesFormat: 'table' as const,
  parametersFormat: 'table' as const,
  typeDeclarationFormat: 'table' as const,
  hideGroupHeadings: true,
  sort: ['source-order'] as 'source-order'[],
  disableSources: true,
  blockTags: [
    ...['@param', '@returns', '@throws', '@example', '@see', '@remarks', '@typeParam', '@template', '@defaultValue'],
    ...['@validity', '@neglects', '@source'],
  ] as `@${string}`[],
  // Types are checked by `npm run types`, and here they would be once more.
  skipErrorChecking: true,
  validation: { invalidLink: false, notExported: false },
};
