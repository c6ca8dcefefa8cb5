/** Vite plugin of the mutation gate: calls of audited formulas go through a hook, and files of checks hand them over. */
import { join } from 'node:path';
import ts from 'typescript';
import type { Plugin } from 'vite';
import { auditedExports, auditedSources } from './ledger-gate.js';

export function instrument(root: string): Plugin {
  const sources = auditedSources(root);
  const mutation = join(root, 'tests/mutation');
  const formulas = auditedExports(...sources);
  const ofChecks = ['literature', 'circuit'].map((folder) => join(root, 'tests', folder, '/'));
  return {
    name: 'instrument',
    transform(code, id) {
      if (ofChecks.some((folder) => id.startsWith(folder))) {
        return code
          .replace(/from ["']vitest["']/, `from '${mutation}/silent.ts'`)
          .replace(/from ["'][./]*\/ledger\/check\.js["']/, `from '${mutation}/collect.ts'`);
      }
      const source = sources.find((one) => id.startsWith(join(one, '/')));
      if (source === undefined) return undefined;
      const floor = id.slice(source.length + 1).split('/')[0];
      const hooked = throughHook(code, (name) => (formulas.get(`${floor}/${name}`) ? `${floor}/${name}` : undefined));
      return hooked === code ? undefined : `import { call, watch } from '${mutation}/hook.ts';\n${hooked}`;
    },
  };
}

/** The code, plain JavaScript, with its exported formulas called through the hook. */
export function throughHook(code: string, formulaOf: (name: string) => string | undefined): string {
  const tree = ts.createSourceFile('code.js', code, ts.ScriptTarget.Latest);
  const edits: (readonly [from: number, to: number, text: string])[] = [];
  for (const node of tree.statements) {
    const modifiers = ts.canHaveModifiers(node) ? ts.getModifiers(node) : undefined;
    if (!modifiers?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword)) continue;
    // What answers later has no check in the ledger, where a check answers at once.
    if (modifiers.some(({ kind }) => kind === ts.SyntaxKind.AsyncKeyword)) continue;
    if (ts.isFunctionDeclaration(node) && node.name) {
      const name = node.name.text;
      const formula = formulaOf(name);
      if (formula === undefined) continue;
      const text = `export function ${name}(...args) { return call('${formula}', ${name}$0, args); }\nfunction ${name}$0`;
      edits.push([node.getStart(tree), node.name.end, text]);
    } else if (ts.isVariableStatement(node)) {
      for (const { name, initializer } of node.declarationList.declarations) {
        const formula = ts.isIdentifier(name) && initializer ? formulaOf(name.text) : undefined;
        if (formula === undefined || !initializer) continue;
        const from = initializer.getStart(tree);
        edits.push([from, initializer.end, `watch('${formula}', ${code.slice(from, initializer.end)})`]);
      }
    }
  }
  return edits.reduceRight((text, [from, to, put]) => text.slice(0, from) + put + text.slice(to), code);
}
