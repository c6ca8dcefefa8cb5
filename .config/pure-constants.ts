import { readFileSync } from 'node:fs';
import ts from 'typescript';

/**
 * Marks what a module computes for its constants as free of side effects, as all of it is. A bundler of the reader leaves out
 * a whole module that nobody uses, but of a chunk made of many it keeps each constant whose making it cannot judge.
 */
export const pureConstants = {
  name: 'pure-constants',
  setup(build: { onLoad(where: { filter: RegExp }, load: (file: { path: string }) => object): void }) {
    build.onLoad({ filter: /\/src\/.*\.ts$/ }, ({ path }) => ({
      loader: 'ts',
      contents: marked(readFileSync(path, 'utf8')),
    }));
  },
};

function marked(code: string): string {
  const tree = ts.createSourceFile('code.ts', code, ts.ScriptTarget.Latest);
  const calls: number[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isFunctionLike(node)) return;
    if (ts.isCallExpression(node) || ts.isNewExpression(node)) calls.push(node.getStart(tree));
    ts.forEachChild(node, visit);
  };
  tree.statements.filter(ts.isVariableStatement).forEach(visit);
  return calls
    .sort((a, b) => b - a)
    .reduce((text, at) => `${text.slice(0, at)}/* @__PURE__ */ ${text.slice(at)}`, code);
}
