import { toSvg } from '@airspring/workshop/drawing';

type Drawing = Parameters<typeof toSvg>[0];

/** Paper on which letters are read on the screen: for the measure of the text and for a telephone. */
const papers = {
  wide: { width: '140 mm', height: '120 mm' },
  narrow: { width: '80 mm', height: '90 mm' },
} as const;

/** A drawing of the workshop, once for each width; the style sheet shows one of them. */
export const forBothWidths = (drawing: Drawing): string =>
  Object.entries(papers)
    .map(([name, paper]) => `<div class="${name} workshop">${toSvg(drawing, paper)}</div>`)
    .join('');
