import type { At, Corner, Purpose, Shape } from './drawing.js';
import { n, type Paper } from './svg-paper.js';

/** How lines are drawn, by what they are for. */
const strokes: Readonly<Record<Purpose, string>> = {
  cut: 'stroke-width="0.45"',
  pocket: 'stroke-width="0.3"',
  inside: 'stroke-width="0.25" stroke-dasharray="2.4 1.2"',
  drill: 'stroke-width="0.3"',
  centre: 'stroke-width="0.15" stroke-dasharray="4 1 0.8 1"',
  note: 'stroke-width="0.2"',
};

/** The path of a shape. Bends are arcs of circles. */
function pathOf(corners: readonly Corner[], closed: boolean, paper: Paper): string {
  const at = ([x, y]: At) => `${n(paper.x(x))} ${n(paper.y(y))}`;
  const last = closed ? corners.length : corners.length - 1;
  let d = `M${at(corners[0]!.at)}`;
  for (let i = 0; i < last; i++) {
    const { at: from, bulge = 0 } = corners[i]!;
    const to = corners[(i + 1) % corners.length]!.at;
    if (bulge === 0) {
      if (!closed || i < last - 1) d += `L${at(to)}`;
      continue;
    }
    const chord = Math.hypot(to[0] - from[0], to[1] - from[1]) * paper.scale;
    const radius = (chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
    d += `A${n(radius)} ${n(radius)} 0 ${Math.abs(bulge) > 1 ? 1 : 0} ${bulge > 0 ? 0 : 1} ${at(to)}`;
  }
  return closed ? `${d}Z` : d;
}

export function drawShape(paper: Paper, one: Shape): void {
  const fill =
    one.filled === 'solid'
      ? ' fill="var(--paper, Canvas)"'
      : one.filled === 'tint'
        ? ' fill="currentColor" fill-opacity="0.09"'
        : '';
  const style = `${strokes[one.purpose]}${fill}`;
  if (one.form === 'circle') {
    const [x, y, r] = [paper.x(one.centre[0]), paper.y(one.centre[1]), one.radius * paper.scale];
    paper.put(`<circle cx="${n(x)}" cy="${n(y)}" r="${n(r)}" ${style}/>`, [x - r, y - r], [x + r, y + r]);
    return;
  }
  const d = pathOf(one.corners, one.closed, paper);
  paper.put(`<path d="${d}" ${style}/>`, ...one.corners.map(({ at }) => [paper.x(at[0]), paper.y(at[1])] as const));
}
