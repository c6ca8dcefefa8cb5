import type { ChangedBox } from 'airspring';
import type { Figure } from '../figures/figure.js';
import { html, type Markup } from '../html.js';
import { tied } from '../say.js';
import type { Facts } from './facts.js';

type Tube = ChangedBox['tubes'][number];

const WALL = 0.003;
const LEFT = 4;
const ROW = 26;
const px = (value: number): string => value.toFixed(1);

const bores = (tubes: readonly Tube[]): Tube[] =>
  tubes.flatMap((tube) => Array.from({ length: tube.count }, () => ({ ...tube, count: 1 })));
const height = (tubes: readonly Tube[]): number =>
  bores(tubes).reduce((sum, { diameter }) => sum + diameter + 6 * WALL, 0);

/** The vent as it is and as it will be, cut lengthwise, to one scale; left out where there is no tube before or after. */
export function tubesBeside({ answer: { now, panelThickness: t }, first, say }: Facts): Figure | undefined {
  const [before, after] = [now.box.tubes, first?.row.box.tubes ?? []];
  if (before.length === 0 || after.length === 0) return undefined;
  const sizes = (tubes: readonly Tube[]) =>
    tubes
      .map(
        ({ diameter, length, count }) =>
          `${count > 1 ? `${count} × ` : ''}${say.bareLength(diameter)} wide, ${say.length(length)} long`,
      )
      .join('; ');
  const longest = Math.max(...[...before, ...after].map(({ length, diameter }) => length + diameter));

  const draw = (total: number): string => {
    const scale = Math.min((total - 2 * LEFT - 90) / longest, 1700);
    const s = (metres: number) => metres * scale;
    const row = (tubes: readonly Tube[], words: string): Markup => {
      const tall = s(height(tubes));
      let down = 0;
      const drawn = bores(tubes).map(({ diameter, length }) => {
        const [top, bore, wall] = [down + s(3 * WALL), s(diameter), Math.max(1.5, s(WALL))];
        down += s(diameter + 6 * WALL);
        const [inside, end] = [s(t), s(length)];
        return html`<rect class="bore-fill" x="0" y="${px(top)}" width="${px(end)}" height="${px(bore)}"/>
<rect class="tube-wall" x="${px(inside)}" y="${px(top - wall)}" width="${px(end - inside)}" height="${px(wall)}"/><rect class="tube-wall" x="${px(inside)}" y="${px(top + bore)}" width="${px(end - inside)}" height="${px(wall)}"/>
<rect class="free" x="${px(end)}" y="${px(top)}" width="${px(s(diameter))}" height="${px(bore)}"/>
<text class="view" x="${px(end / 2 + inside / 2)}" y="${px(top + bore / 2 + 4)}" text-anchor="middle">${tied(say.length(length))}</text>
<text class="view" x="${px(end + s(diameter) + 6)}" y="${px(top + bore / 2 + 4)}">${tied(`${say.length(diameter)} wide`)}</text>`;
      });
      // The panel stands above, between and below the bores.
      let at = 0;
      const edges = bores(tubes).flatMap(({ diameter }) => {
        const [open, shut] = [at + s(3 * WALL), at + s(diameter + 3 * WALL)];
        at += s(diameter + 6 * WALL);
        return [open, shut];
      });
      const ends = [-10, ...edges, tall + 10];
      const boards = edges
        .filter((_, i) => i % 2 === 0)
        .concat(tall + 10)
        .map((to, i) => {
          const from = ends[2 * i]!;
          return html`<rect class="board" x="0" y="${px(from)}" width="${px(s(t))}" height="${px(to - from)}"/>`;
        });
      return html`<text class="view" y="-16">${words}</text>${drawn}${boards}`;
    };
    const [first_, second] = [s(height(before)), s(height(after))];
    const tall = ROW + first_ + 20 + ROW + second + 14;
    return html`<svg class="drawing" role="img" aria-label="${label}" width="${total}" height="${px(tall)}" viewBox="0 0 ${total} ${px(tall)}" xmlns="http://www.w3.org/2000/svg">
<g transform="translate(${LEFT} ${ROW})">${row(before, 'now')}</g>
<g transform="translate(${LEFT} ${px(ROW + first_ + 20 + ROW)})">${row(after, 'then')}</g></svg>`.markup;
  };
  const label = tied(`Now ${sizes(before)}; then ${sizes(after)}.`);
  return {
    id: 'tubes-beside',
    title: 'The vent now and then',
    label,
    note: `Cut lengthwise, to scale. Lengths count from the outer face of the panel to the inner end; the panel itself is ${say.length(t)} of them. The dashed square is the free air that an inner end needs.`,
    draw,
  };
}
