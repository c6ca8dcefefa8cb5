import { caution, figure, list, section, table } from './markup.js';
import { onBed } from './printing.js';
import type { Says } from './says.js';
import type { SmallPart } from './small-parts.js';
import type { Work } from './work.js';

/** The small parts to print: what they look like, how large they are, and how they are fitted. */
export const smallPartsSection = (work: Work, parts: readonly SmallPart[], says: Says): string =>
  section(
    'Small parts',
    [
      caution(work.cautions.fumes),
      ...parts.map(({ name, count, picture, sizes, mesh }) => {
        const bed = mesh ? [['in the printer: width × depth × height', onBed(mesh, says)]] : [];
        const how = mesh === undefined ? ', to cut' : '';
        return `<div class="pair">${figure(picture, `${count} × ${name.replace('-', ' ')}${how}.`)}<div>${table([], [...sizes, ...bed])}</div></div>`;
      }),
      '<h3>How to print and fit them (common practice)</h3>',
      list(parts.flatMap(({ advice }) => advice)),
    ].join('\n'),
  );
