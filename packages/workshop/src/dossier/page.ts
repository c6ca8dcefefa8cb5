import { escaped } from './markup.js';

const STYLE = `@page{size:A4;margin:16mm 15mm 18mm;@bottom-right{content:"page " counter(page) " of " counter(pages);font:9pt Georgia,serif;color:#555}@bottom-left{content:string(title);font:9pt Georgia,serif;color:#555}}
:root{color-scheme:light}
body{font:10pt/1.4 Georgia,serif;max-width:180mm;margin:10mm auto;padding:0 4mm;color:#1a1a1a;background:#fff}
h1{font-size:22pt;line-height:1.15;margin:0 0 2mm;string-set:title content()}h2{font-size:15pt;margin:0 0 3mm}h3{font-size:11pt;margin:5mm 0 1.5mm}
p,ul,ol,table,figure{margin:0 0 3mm}h2,h3{break-after:avoid}
section+section,.cover+section{break-before:page}
table{border-collapse:collapse;width:100%}thead{display:table-header-group}tr{break-inside:avoid}
th,td{text-align:left;padding:.7mm 4mm .7mm 0;border-bottom:.2mm solid #bbb;vertical-align:top}th{font-weight:normal;color:#555}
figure{break-inside:avoid}figcaption{font-size:9pt;color:#444;margin-top:1.5mm}
.pair{display:flex;flex-wrap:wrap;gap:6mm;align-items:flex-start}.pair>*{flex:1 1 70mm}.on,.flows{break-before:auto!important}.on{break-inside:avoid}section.on,section.flows{margin-top:8mm}
svg{display:block;max-width:100%;height:auto}figure>svg[stroke-linejoin]{margin:auto}figure>svg[stroke-linejoin]:not([width]){max-height:80mm}
.wiring,.chart{fill:none;stroke:#1a1a1a;stroke-width:1.2}.wiring text,.chart text{fill:#1a1a1a;stroke:none;font:11px Georgia,serif}
.wiring text{text-anchor:middle}.wiring .end{fill:#1a1a1a}
.chart .grid{stroke:#ccc;stroke-width:.7}.chart .curve{stroke-width:1.8}.chart .dot{fill:#1a1a1a;stroke:none}.chart .told{font-size:10px}
.caution{border-left:1mm solid #a33;padding-left:3mm;break-inside:avoid;break-after:avoid}
.steps{padding-left:7mm}.steps li{margin:0 0 1.8mm;break-inside:avoid}.steps .box{display:inline-block;width:3mm;height:3mm;border:.3mm solid #1a1a1a;margin-right:2mm}
.columns{font-size:9pt;columns:3;padding-left:6mm}.columns li{break-inside:avoid}
.files{font:9pt/1.5 ui-monospace,monospace;columns:2}
@media(max-width:600px){body{margin:4mm auto}th,td{padding-right:2mm}.files,.columns{columns:1}}
@media print{body{margin:0;padding:0}}
@media screen{section+section,.cover+section{border-top:.3mm solid #999;padding-top:5mm;margin-top:8mm}}`;

/** The whole document. It needs no script and loads nothing from elsewhere. */
export const documentOf = (title: string, body: string): string =>
  `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>${escaped(title)}</title><meta name="viewport" content="width=device-width"><style>${STYLE}</style></head><body>
${body}
</body></html>
`;
