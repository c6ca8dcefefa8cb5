import { readFileSync } from 'node:fs';
import ts from 'typescript';

const trees = new Map<string, ts.SourceFile>();

/** The tree of a source file; parsed anew only if its text has changed. */
export function parsed(file: string): ts.SourceFile {
  const text = readFileSync(file, 'utf8');
  const known = trees.get(file);
  if (known?.text === text) return known;
  const tree = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  trees.set(file, tree);
  return tree;
}
