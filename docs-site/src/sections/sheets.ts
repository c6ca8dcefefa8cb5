import { type Brief, type Met, printPage, unitsOf } from 'airspring';
import { drillingTemplate } from '../../../packages/airspring/src/page/drilling-template.js';
import { sheetOf } from '../../../packages/airspring/src/page/sheet.js';
import { phrasing } from '../../../packages/airspring/src/words/phrasing.js';
import { html, type Markup, trusted } from '../html.js';

/** A sheet for each box, to take to the saw, with templates of its holes at full size; seen on paper only. */
export function sheets({ designs }: Met, brief: Brief): Markup {
  const say = phrasing(unitsOf(brief));
  return html`${designs.map((design) => trusted(sheetOf(design, say) + drillingTemplate(design.box.holes, say)))}`;
}

/** The same as a page of its own, to save. */
export const sheetsPage = ({ designs }: Met, brief: Brief): string => printPage(brief.title, designs, unitsOf(brief));
