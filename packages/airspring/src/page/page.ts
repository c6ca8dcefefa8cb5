import type { Design } from '../record/answer.js';
import { phrasing, type Units } from '../words/phrasing.js';
import { drillingTemplate } from './drilling-template.js';
import { escaped } from './markup.js';
import { sheetOf } from './sheet.js';

const STYLE = `@page{size:auto;margin:14mm}
body{font:11pt/1.45 Georgia,serif;max-width:180mm;margin:10mm auto;padding:0 4mm;color:#1a1a1a;background:#fff}
h1{font-size:20pt;margin:0 0 4mm}h2{font-size:15pt;margin:0 0 3mm}h3{font-size:11pt;margin:5mm 0 2mm}
table{border-collapse:collapse;margin:0 0 3mm}th,td{text-align:left;padding:.6mm 4mm .6mm 0;border-bottom:.2mm solid #bbb}
th{font-weight:normal;color:#555}figure{margin:4mm 0;break-inside:avoid}figcaption{font-size:9pt;color:#444;margin-top:2mm}
/* The drawing stands beside the cut list where the paper is wide enough for both. */.sheet figure{float:right;width:min-content;margin:0 0 4mm 6mm}
svg{display:block;fill:none;stroke:#111;overflow:visible;max-width:none}svg text{fill:#111;stroke:none}svg .axis{stroke:#888;stroke-dasharray:4 1 1 1}
.caution{border-left:1mm solid #a33;padding-left:3mm}.sheet,.templates{break-after:page}.sheet:last-child,.templates:last-child{break-after:auto}`;

/**
 * A page to print: a sheet for each design with its cut list, its holes and their drawings, and drilling templates at full
 * size. It is one HTML document without scripts and without anything from elsewhere.
 *
 * @example printPage('The whale bench', answer.designs.slice(0, 1), { length: 'mm' })
 */
export function printPage(title: string, designs: readonly Design[], units: Units = {}): string {
  const say = phrasing(units);
  const body = designs.map((design) => sheetOf(design, say) + drillingTemplate(design, say)).join('\n');
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>${escaped(title)}</title><meta name="viewport" content="width=device-width"><style>${STYLE}</style></head><body><h1>${escaped(title)}</h1>
${body}</body></html>
`;
}
