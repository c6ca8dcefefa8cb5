/** What stands behind a number of a page: its formula, and what the checks of that found. */
import katex from 'katex';
import { rowsOf } from './audit.js';
import { addressOf, keyOf, titleOf } from './formula.js';
import { audit } from './stands-on.js';
import { countText, worstText } from './worst.js';

/** An equation as the browser sets it: its picture for every browser would be a tenth of the first page. */
function mathOf(tex: string): string {
  const short = tex.replace(/^\\Rightarrow\\quad/, '\\Rightarrow\\;');
  const markup = katex.renderToString(short, { displayMode: true, throwOnError: true, output: 'mathml' });
  return (/<math.*<\/math>/s.exec(markup)?.[0] ?? '').replace(/<annotation.*?<\/annotation>/s, '');
}

export function proofOf(key: string) {
  const formula = audit.formulas.find((one) => keyOf(one) === key);
  if (!formula) throw new Error(`There is no formula ${key}`);
  const tex = [...formula.text.matchAll(/\$\$([^$]+)\$\$/g)].map(([, one = '']) => one.trim());
  const rows = rowsOf(audit, formula);
  return {
    address: addressOf(formula),
    name: formula.name,
    title: titleOf(formula),
    // What stands beside each other on a page stands below each other in the narrow box of a proof.
    equations: tex.flatMap((one) => one.split(/,?\s*\\qquad\s*|,\s*\\quad\s*|\s*\\quad(?=\\Rightarrow)/)).map(mathOf),
    checks: audit.ledger
      ? `${countText(rows)}. Worst deviation on ${audit.ledger.date}: ${worstText(rows)}.`
      : 'The checks are running now.',
  };
}
