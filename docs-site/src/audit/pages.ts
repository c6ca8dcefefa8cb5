/** The pages of the audit, by their file under the folder of pages. */
import type { Audit } from './audit.js';
import { bibliographyPage } from './bibliography-page.js';
import { disagreementsPage } from './disagreements-page.js';
import { familyPage } from './family-page.js';
import type { Formula } from './formula.js';
import { loosePage } from './loose-page.js';
import { overviewPage } from './overview-page.js';
import { speedPage } from './speed-page.js';

export function pages(audit: Audit): ReadonlyMap<string, string> {
  const fileOf = ({ floor, family }: Formula) => `formulas/${floor}/${family}.md`;
  const families = new Set(audit.formulas.map(fileOf));
  return new Map([
    ['formulas/index.md', overviewPage(audit)],
    ...[...families].map(
      (file) =>
        [
          file,
          familyPage(
            audit.formulas.filter((one) => fileOf(one) === file),
            audit,
          ),
        ] as const,
    ),
    ['formulas/disagreements.md', disagreementsPage(audit)],
    ['formulas/loose.md', loosePage(audit)],
    ['formulas/speed.md', speedPage(audit.bench)],
    ['bibliography.md', bibliographyPage(audit)],
  ]);
}
