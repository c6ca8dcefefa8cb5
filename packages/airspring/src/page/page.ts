import type { Design } from '../record/design-record.js';
import { phrasing, type Units } from '../words/phrasing.js';
import { drillingTemplate } from './drilling-template.js';
import { pageOf } from './markup.js';
import { sheetOf } from './sheet.js';

/**
 * A page to print: a sheet for each design with its cut list, its holes and their drawings, and drilling templates at full
 * size. It is one HTML document that needs no script and loads nothing from elsewhere.
 *
 * @example printPage('The whale bench', answer.designs.slice(0, 1), { length: 'mm' })
 */
export function printPage(title: string, designs: readonly Design[], units: Units = {}): string {
  const say = phrasing(units);
  const body = designs.map((design) => sheetOf(design, say) + drillingTemplate(design.box.holes, say)).join('\n');
  return pageOf(title, body);
}
