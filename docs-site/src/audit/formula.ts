/** What the docstrings of the library say of its formulas, read by the parser of the language. */
import { existsSync, readdirSync } from 'node:fs';
import { join, relative } from 'node:path';
import ts from 'typescript';
import { auditedExports, auditedSources } from '../../../.config/ledger-gate.js';
import { parsed } from '../../../.config/parsed.js';

const tagNames = ['validity', 'neglects', 'returns', 'throws', 'source', 'check', 'example'] as const;
export type TagName = (typeof tagNames)[number];

export interface Formula {
  readonly floor: string;
  /** Base name of its file: the family. */
  readonly family: string;
  readonly name: string;
  /** From the top of the work tree, with the line. */
  readonly path: string;
  /** The question that the index of the floor puts to it. */
  readonly question: string;
  /** Equation, symbol table and prose, in Markdown. */
  readonly text: string;
  readonly tags: Readonly<Partial<Record<TagName, string>>>;
  readonly code: string;
}

export const keyOf = ({ floor, name }: Pick<Formula, 'floor' | 'name'>): string => `${floor}/${name}`;
export const addressOf = ({ floor, family, name }: Pick<Formula, 'floor' | 'family' | 'name'>): string =>
  `/formulas/${floor}/${family}/#${name.toLowerCase()}`;

/** What a formula is, in plain words: the first sentence of its docstring. */
export function titleOf({ text }: Pick<Formula, 'text'>): string {
  const [first = ''] = text.split(/\n\s*\n|\$\$/);
  const [sentence = ''] = first.replace(/\s+/g, ' ').split(/(?<=\?)\s|[.:](?:\s|$)/);
  return sentence
    .replace(/\{@link (\w+)\}/g, '$1')
    .replaceAll('`', '')
    .trim();
}

/** Every function that an audited floor exports, and what else a row of the ledger names. `top`: folder of the work tree. */
export function formulas(top: string, checked: ReadonlySet<string>): readonly Formula[] {
  const audited = auditedExports(...auditedSources(top));
  return auditedSources(top)
    .flatMap((source) => readdirSync(source).map((floor) => ({ source, floor })))
    .filter(({ source, floor }) => existsSync(join(source, floor, 'index.ts')))
    .flatMap(({ source, floor }) => exportsOf(top, source, floor))
    .filter((one) => audited.get(keyOf(one)) || checked.has(keyOf(one)));
}

function exportsOf(top: string, source: string, floor: string): readonly Formula[] {
  const index = parsed(join(source, floor, 'index.ts'));
  let question = '';
  return index.statements.flatMap((node) => {
    if (!ts.isExportDeclaration(node) || !node.moduleSpecifier || !ts.isStringLiteral(node.moduleSpecifier)) return [];
    // An export line without a question of its own belongs to the one before.
    question = docOf(node).text || question;
    if (!node.exportClause || !ts.isNamedExports(node.exportClause)) return [];
    const family = node.moduleSpecifier.text.replace(/^\.\/|\.js$/g, '');
    const path = join(source, floor, `${family}.ts`);
    const file = parsed(path);
    return node.exportClause.elements.flatMap(({ name, propertyName }) => {
      const found = file.statements.find((each) => namesOf(each).includes((propertyName ?? name).text));
      if (!found) return [];
      const line = file.getLineAndCharacterOfPosition(found.getStart()).line + 1;
      const place = `${relative(top, path)}:${line}`;
      return [{ floor, family, name: name.text, path: place, question, ...docOf(found), code: found.getText() }];
    });
  });
}

function namesOf(node: ts.Statement): readonly string[] {
  if (ts.isFunctionDeclaration(node)) return node.name ? [node.name.text] : [];
  if (!ts.isVariableStatement(node)) return [];
  return node.declarationList.declarations.flatMap(({ name }) => (ts.isIdentifier(name) ? [name.text] : []));
}

function docOf(node: ts.Node): Pick<Formula, 'text' | 'tags'> {
  const doc = ts.getJSDocCommentsAndTags(node).findLast(ts.isJSDoc);
  const tags = Object.fromEntries(
    tagNames.flatMap((name) => {
      const said = (doc?.tags ?? [])
        .filter(({ tagName }) => tagName.text === name)
        .map(({ comment }) => plain(comment));
      return said.length > 0 ? [[name, said.join('\n')]] : [];
    }),
  );
  return { text: plain(doc?.comment), tags };
}

const plain = (comment: Parameters<typeof ts.getTextOfJSDocComment>[0]) =>
  ts.getTextOfJSDocComment(comment)?.trim() ?? '';
