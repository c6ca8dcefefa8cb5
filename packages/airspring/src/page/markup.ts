import { visible } from '@airspring/core/fault';

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** A text from outside, safe between tags and in attributes. */
export const escaped = (text: string): string => visible(text).replace(/[&<>"]/g, (sign) => ESCAPES[sign] as string);

/** Millimetres for a drawing in which one unit is one millimetre on paper. */
export const mm = (metres: number): string => (metres * 1e3).toFixed(2).replace(/\.?0+$/, '');

/** Rows of a table; the first row is its head. Cells are texts. */
export function tableOf(rows: readonly (readonly string[])[]): string {
  const [head = [], ...body] = rows;
  const row = (cells: readonly string[], tag: 'th' | 'td') =>
    `<tr>${cells.map((cell) => `<${tag}>${escaped(cell)}</${tag}>`).join('')}</tr>`;
  return `<table><thead>${row(head, 'th')}</thead><tbody>${body.map((cells) => row(cells, 'td')).join('')}</tbody></table>`;
}

const STYLE = `@page{size:auto;margin:14mm}
body{font:11pt/1.45 Georgia,serif;max-width:180mm;margin:10mm auto;padding:0 4mm;color:#1a1a1a;background:#fff}
h1{font-size:20pt;margin:0 0 4mm}h2{font-size:15pt;margin:0 0 3mm}h3{font-size:11pt;margin:5mm 0 2mm}
table{border-collapse:collapse;margin:0 0 3mm}th,td{text-align:left;padding:.6mm 4mm .6mm 0;border-bottom:.2mm solid #bbb}
th{font-weight:normal;color:#555}figure{margin:4mm 0;break-inside:avoid}figcaption{font-size:9pt;color:#444;margin-top:2mm}
/* Curves over a length, in the colours of what they show. */.plot{--ink:#1a1a1a;--soft:#666;--length:#1e6b52;--heat:#b5442d;--travel:#7a4fa3;--speed:#1f6fa8;--level:#1a1a1a;--amplifier:#8a6a12;font:12px Georgia,serif;max-width:100%;height:auto}
.plot .grid{stroke:#ddd}.plot .rule,.plot .event{stroke:#888;stroke-dasharray:3 3}.plot .soft{fill:#666}.plot .words,.plot .panel-title{font-weight:600}.plot rect{stroke:none}.plot svg.field{overflow:hidden}.plot .halo.read{display:none}.plot .halo{paint-order:stroke;stroke:#fff;stroke-width:3px}.plot .pointer{display:none}
/* The drawing stands beside the cut list where the paper is wide enough for both. */.sheet figure{float:right;width:min-content;margin:0 0 4mm 6mm}
svg{display:block;fill:none;stroke:#111;overflow:visible;max-width:none}svg text{fill:#111;stroke:none}svg .axis{stroke:#888;stroke-dasharray:4 1 1 1}
.caution{border-left:1mm solid #a33;padding-left:3mm}.sheet,.templates{break-after:page}.sheet:last-child,.templates:last-child{break-after:auto}`;

/** A whole document around what it shows. */
export const pageOf = (title: string, body: string): string =>
  `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>${escaped(title)}</title><meta name="viewport" content="width=device-width"><style>${STYLE}</style></head><body><h1>${escaped(title)}</h1>
${body}</body></html>
`;
