import type { Audit } from './audit.js';
import { bibliographyPage } from './bibliography-page.js';
import { disagreementsPage } from './disagreements-page.js';
import { familyPage } from './family-page.js';
import type { Formula } from './formula.js';
import { loosePage } from './loose-page.js';
import { overviewPage } from './overview-page.js';
import { speedPage } from './speed-page.js';

/** What makes each page of the audit, by its file under the folder of pages. */
export function pageMakers(audit: Audit): ReadonlyMap<string, () => string> {
  const fileOf = ({ floor, family }: Formula) => `formulas/${floor}/${family}.md`;
  const family = (file: string) =>
    familyPage(
      audit.formulas.filter((one) => fileOf(one) === file),
      audit,
    );
  return new Map([
    ['formulas/index.md', () => overviewPage(audit)],
    ...[...new Set(audit.formulas.map(fileOf))].map((file) => [file, () => family(file)] as const),
    ['formulas/disagreements.md', () => disagreementsPage(audit)],
    ['formulas/loose.md', () => loosePage(audit)],
    ['formulas/speed.md', () => speedPage(audit.bench)],
    ['bibliography.md', () => bibliographyPage(audit)],
  ]);
}

/** The pages of the audit. */
export const pages = (audit: Audit): ReadonlyMap<string, string> =>
  new Map([...pageMakers(audit)].map(([file, make]) => [file, make()]));
