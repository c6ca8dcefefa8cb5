/** What the docstrings of the audited floors leave out of their formulas. */
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { auditedExports, auditedFloors } from './ledger-gate.js';
import { parsed } from './parsed.js';

/** Tags without which a formula cannot be judged. */
const needed = ['validity', 'source', 'example'];

/** 'floor/function lacks @tag', one line for each formula that lacks some. */
export function docstringFaults(source: string): readonly string[] {
  const formulas = auditedExports(source);
  const lacking: string[] = [];
  for (const floor of auditedFloors.filter((one) => existsSync(join(source, one)))) {
    for (const file of readdirSync(join(source, floor)).filter((one) => one.endsWith('.ts'))) {
      for (const node of parsed(join(source, floor, file)).statements) {
        const tags = ts.getJSDocTags(node);
        const has = new Set(tags.map(({ tagName }) => tagName.text));
        for (const name of exportedNames(node).filter((one) => formulas.get(`${floor}/${one}`))) {
          const without = needed.filter((tag) => !has.has(tag)).map((tag) => `@${tag}`);
          if (without.length > 0) lacking.push(`${floor}/${name} lacks ${without.join(', ')}`);
        }
      }
    }
  }
  return lacking;
}

function exportedNames(node: ts.Statement): string[] {
  const modifiers = ts.canHaveModifiers(node) ? ts.getModifiers(node) : undefined;
  if (!modifiers?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword)) return [];
  if (ts.isFunctionDeclaration(node)) return node.name ? [node.name.text] : [];
  if (!ts.isVariableStatement(node)) return [];
  return node.declarationList.declarations.flatMap(({ name }) => (ts.isIdentifier(name) ? [name.text] : []));
}
