import { boardOf } from '../kind/build-record.js';
import { cautions } from '../record/cautions.js';
import type { Design } from '../record/design-record.js';
import { bentText, cutsText, driversText, jointsText, outlinesText, surfacesText } from '../words/build-text.js';
import { summary } from '../words/design-text.js';
import { impedanceRows, impedanceText } from '../words/impedance-text.js';
import type { Phrasing } from '../words/phrasing.js';
import { escaped, tableOf } from './markup.js';
import { panelDrawing } from './panel-drawing.js';

/** The sheet of a box to take to the saw: what it is, what to cut, where the holes are, and what to measure at the end. */
export function sheetOf(design: Design, say: Phrasing): string {
  const { name, box, told, drivers, cautions: due } = design;
  const panels = box.panels.map((panel) => [
    `${panel.count} ×`,
    panel.name,
    say.sizes([panel.length, panel.width]),
    say.length(panel.thickness ?? box.panelThickness),
    ...(box.shape ? [cutsText(panel, say)] : []),
  ]);
  const outlines = outlinesText(box, say);
  const holes = box.holes.map((hole) => [
    hole.what,
    boardOf(hole),
    hole.form === 'circle' ? say.length(hole.diameter) : say.sizes(hole.sides),
    `${say.length(hole.across)} from ${hole.from[0]}`,
    `${say.length(hole.up)} from ${hole.from[1]}`,
  ]);
  const boards = [...new Set(box.holes.map(boardOf))];
  const paragraphs = told.building.map((phrase) => `<p>${escaped(say.phrase(phrase))}</p>`);
  const warned = [cautions.dust, cautions.weight, cautions.fumes, cautions.mains].filter((text) => due.includes(text));
  return `<article class="sheet"><h2>Box ${escaped(name)}</h2>
<p>${escaped(summary(design, say))}</p>
${boards.map((board) => panelDrawing(design, board, say)).join('')}
<h3>To cut</h3>${tableOf([['', 'panel', 'size', 'thick', ...(box.shape ? ['cuts'] : [])], ...panels])}
<p>${escaped(`${jointsText(box, say)}${box.shape ? `${bentText(box, say)} ${surfacesText(box)}` : ''}`)}</p>${outlines.length > 0 ? `<p>Corners, across | up: ${escaped(outlines.join(' '))}</p>` : ''}
<h3>Holes</h3>${tableOf([['hole', 'panel', 'size', 'across', 'up'], ...holes])}
<h3>Parts</h3><p>${escaped(`${driversText(drivers)}.`.replace(/^./, (letter) => letter.toUpperCase()))}</p>${paragraphs.join('')}
<h3>To measure on the finished box</h3><p>${escaped(impedanceText(design, say))}</p>${tableOf(impedanceRows(design, say))}
${warned.map((text) => `<p class="caution">${escaped(text)}</p>`).join('')}</article>`;
}
