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
  const put: (readonly [at: number, text: string])[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isFunctionLike(node)) return;
    if (ts.isCallExpression(node) || ts.isNewExpression(node)) put.push([node.getStart(tree), '/* @__PURE__ */ ']);
    // What cannot be marked itself, a spread or a sum of what others computed, stands in a function whose call can.
    if (
      ts.isBinaryExpression(node) ||
      (ts.isObjectLiteralExpression(node) && node.properties.some(ts.isSpreadAssignment))
    ) {
      put.push([node.getStart(tree), '/* @__PURE__ */ (() => ('], [node.end, '))()']);
      if (ts.isBinaryExpression(node)) return;
    }
    ts.forEachChild(node, visit);
  };
  tree.statements.filter(ts.isVariableStatement).forEach(visit);
  return put.sort(([a], [b]) => b - a).reduce((text, [at, mark]) => text.slice(0, at) + mark + text.slice(at), code);
}
