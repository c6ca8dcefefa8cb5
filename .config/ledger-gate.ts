/** Which exported formulas have no check against something outside the project. */
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import ts from 'typescript';
import { readInPrint, tooFewInPrint } from '../tests/ledger/counts.js';
import { isOutside, type LedgerRow } from '../tests/ledger/row.js';
import { parsed } from './parsed.js';

/** The floors where every exported function is a formula that the outside world can contradict. */
export const auditedFloors: readonly string[] = [
  'air',
  'driver',
  'duct',
  'vent',
  'space',
  'enclosure',
  'filter',
  'response',
  'alignment',
  'limit',
  'room',
  'signal',
  'recording',
  'simulation',
  'timeline',
  'outline',
  'mesh',
  'shape',
  'panel',
  'solid',
  'burst',
];

/** The folders of floors that are audited, from the top of the work tree. */
export const auditedSources = (top: string): readonly string[] =>
  ['core', 'transient', 'workshop'].map((name) => join(top, 'packages', name, 'src'));

/** What the audited floors export: 'floor/name' → whether it is a function. */
export function auditedExports(...sources: readonly string[]): ReadonlyMap<string, boolean> {
  const floors = sources.flatMap((source) =>
    auditedFloors.map((floor) => [floor, join(source, floor, 'index.ts')] as const),
  );
  return new Map(
    floors
      .filter(([, index]) => existsSync(index))
      .flatMap(([floor, index]) =>
        [...exportsOf(index)].map(([name, isFunction]) => [`${floor}/${name}`, isFunction] as const),
      ),
  );
}

/** What the gate asks of an entry of the bibliography. */
interface Publication {
  readonly id: string;
  readonly type: string;
  readonly URL?: string;
}

/** Addresses that universities, governments, international bodies and bodies of standards alone are given. */
const publicBody = /(\.edu|\.gov|\.int|\.europa\.eu|\.(ac|edu|gov)\.[a-z]{2}|\.iso\.org|\.iec\.ch)$/;

/** Whether a reference is a web page of no public body, as of a shop, a forum or a person. What a publisher prints is no web page, but an article or a book. */
export const isPrivatePage = ({ type, URL: address = 'http://unknown' }: Publication): boolean =>
  type === 'webpage' && !publicBody.test(`.${new URL(address).hostname}`);

/** One clear line for each thing wrong; none when the ledger is whole. */
export function ledgerFaults(
  rows: readonly Pick<LedgerRow, 'id' | 'formula' | 'status' | 'kind' | 'source'>[],
  exported: ReadonlyMap<string, boolean>,
  exceptions: Readonly<Record<string, string>>,
  references: readonly Publication[],
): readonly string[] {
  const outside = rows.filter(isOutside);
  const checked = new Set(outside.map((row) => row.formula));
  const weak = new Set(references.filter(isPrivatePage).map(({ id }) => id));
  const firm = new Set(outside.filter(({ source }) => !weak.has(source.key)).map((row) => row.formula));
  const seen = new Set<string>();
  const faults: string[] = [];
  for (const [name, isFunction] of exported) {
    if (isFunction && !checked.has(name) && !(name in exceptions)) faults.push(`${name} has no outside check`);
  }
  for (const name of checked) {
    if (!firm.has(name)) faults.push(`${name} is checked by a private web page alone; add a check by a firmer source`);
  }
  for (const [name, reason] of Object.entries(exceptions)) {
    if (!exported.get(name)) faults.push(`exceptions.json: ${name} is not an exported function`);
    else if (checked.has(name)) faults.push(`exceptions.json: ${name} has an outside check and needs no exception`);
    if (reason.trim() === '') faults.push(`exceptions.json: ${name} needs a reason`);
  }
  for (const { id, formula } of rows) {
    if (seen.has(id)) faults.push(`${id} is the id of two rows`);
    seen.add(id);
    const audited = auditedFloors.includes(formula.split('/')[0] ?? '');
    if (audited && !exported.has(formula)) faults.push(`${id} checks ${formula}, which is not exported`);
  }
  return [...faults, ...tooFewInPrint(readInPrint(rows, formulasToCheck(exported, exceptions)))];
}

/** The exported functions that must have a check. */
export const formulasToCheck = (
  exported: ReadonlyMap<string, boolean>,
  exceptions: Readonly<Record<string, string>>,
): readonly string[] =>
  [...exported].filter(([name, isFunction]) => isFunction && !(name in exceptions)).map(([name]) => name);

/** The exported values of a module, re-exports followed; types are left out. */
function exportsOf(file: string): Map<string, boolean> {
  const found = new Map<string, boolean>();
  const isExported = (node: ts.Node) =>
    ts.canHaveModifiers(node) && ts.getModifiers(node)?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword);
  for (const node of parsed(file).statements) {
    if (ts.isExportDeclaration(node)) {
      if (node.isTypeOnly || !node.moduleSpecifier || !ts.isStringLiteral(node.moduleSpecifier)) continue;
      if (!node.moduleSpecifier.text.startsWith('.')) continue;
      const theirs = exportsOf(join(dirname(file), node.moduleSpecifier.text.replace(/\.js$/, '.ts')));
      if (!node.exportClause) for (const [name, isFunction] of theirs) found.set(name, isFunction);
      else if (ts.isNamedExports(node.exportClause)) {
        for (const { name, propertyName } of node.exportClause.elements) {
          const isFunction = theirs.get((propertyName ?? name).text);
          if (isFunction !== undefined) found.set(name.text, isFunction);
        }
      }
    } else if (!isExported(node)) continue;
    else if (ts.isFunctionDeclaration(node) && node.name) found.set(node.name.text, true);
    else if (ts.isClassDeclaration(node) && node.name) found.set(node.name.text, false);
    else if (ts.isVariableStatement(node)) {
      for (const { name, initializer } of node.declarationList.declarations) {
        if (ts.isIdentifier(name)) found.set(name.text, initializer !== undefined && isFunctionValue(initializer));
      }
    }
  }
  return found;
}

/** An arrow or function, also behind `as`, `satisfies`, brackets, or as an argument: `Object.assign((…) => …, { sources })`. */
function isFunctionValue(node: ts.Expression): boolean {
  if (ts.isArrowFunction(node) || ts.isFunctionExpression(node)) return true;
  if (ts.isParenthesizedExpression(node) || ts.isAsExpression(node) || ts.isSatisfiesExpression(node)) {
    return isFunctionValue(node.expression);
  }
  return ts.isCallExpression(node) && node.arguments.some(isFunctionValue);
}
