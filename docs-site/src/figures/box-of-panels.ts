import type { PanelBox } from '@airspring/workshop/panel';
import { html, type Markup } from '../html.js';
import { px, sizeAcross, sizeAlong } from './solid-sections.js';

/** One view; two stand beside each other where there is room. */
const WIDTH = 312;
const [LEFT, TOP, BELOW] = [66, 20, 32];
const RIGHT = 4;

const short = (length: number): string => String(Number((length * 1e3).toFixed(2)));
const mm = (length: number): string => `${short(length)} mm`;

const view = (height: number, label: string, inside: readonly Markup[]): string =>
  html`<svg class="drawing solid" viewBox="0 0 ${WIDTH} ${px(height)}" width="${WIDTH}" height="${px(height)}" role="img" aria-label="${label}">${inside}</svg>`
    .markup;

/** The box without its lid: which panel stands between which, and how the sizes add up to its depth. */
export function drawFromAbove({ pieces, outer }: PanelBox, label: string): string {
  const scale = (WIDTH - LEFT - RIGHT) / outer.width;
  const floor = TOP + outer.depth * scale;
  const x = (at: number) => LEFT + at * scale;
  const y = (at: number) => floor - at * scale;
  const shown = pieces.filter(({ face }) => face !== 'top' && face !== 'bottom');
  const panels = shown.map(({ place: { least, greatest } }) => {
    const [from, to] = [least, greatest];
    return html`<path class="wood" d="M${px(x(from[0]))} ${px(y(from[2]))}H${px(x(to[0]))}V${px(y(to[2]))}H${px(x(from[0]))}Z"/>`;
  });
  const side = shown.find(({ face }) => face === 'left')?.place;
  const [near, far] = [side?.least[2] ?? 0, side?.greatest[2] ?? 0];
  const inside = x(outer.width - (side?.greatest[0] ?? 0)) - 14;
  return view(floor + BELOW, label, [
    html`<text class="view" x="${LEFT}" y="12">from above, without the top</text>`,
    ...panels,
    sizeAcross([y(outer.depth), y(0)], LEFT - 12, mm(outer.depth)),
    sizeAcross([y(far), y(near)], inside, mm(far - near)),
    html`<text x="${px(x(outer.width / 2))}" y="${px(y(0) - (near * scale) / 2 - 10)}" text-anchor="middle">front: ${mm(near)}</text>`,
    html`<text x="${px(x(outer.width / 2))}" y="${px(y(far) + 17)}" text-anchor="middle">back: ${mm(outer.depth - far)}</text>`,
    sizeAlong([x(0), x(outer.width)], floor + 10, mm(outer.width)),
  ]);
}

/** The front with its holes. Their centres are counted from the left and from the bottom. */
export function drawFront({ pieces, outer }: PanelBox, label: string): string {
  const front = pieces.find(({ face }) => face === 'front');
  const scale = (WIDTH - LEFT - RIGHT) / outer.width;
  const floor = TOP + outer.height * scale;
  const holes = (front?.cutouts ?? []).map(({ part, across, up, opening }) => {
    if (!opening) return html``;
    const radius = 'diameter' in opening ? opening.diameter / 2 : opening.width / 2;
    const [x, y] = [LEFT + across * scale, floor - up * scale];
    const room = radius * scale > 40;
    const at = (line: number) => px(room ? y - 12 + 16 * line : y + radius * scale + 14 + 15 * line);
    return html`<circle class="driver" cx="${px(x)}" cy="${px(y)}" r="${px(radius * scale)}"/><path class="edge" d="M${px(x - 4)} ${px(y)}h8m-4 -4v8"/>${[
      `${part} ⌀ ${short(2 * radius)}`,
      `${short(across)} | ${short(up)}`,
    ].map(
      (words, i) => html`<text x="${px(x)}" y="${at(room && i > 0 ? i + 1 : i)}" text-anchor="middle">${words}</text>`,
    )}`;
  });
  return view(floor + BELOW, label, [
    html`<text class="view" x="${LEFT}" y="12">front, centres from the left | bottom</text>`,
    html`<path class="panel" d="M${LEFT} ${TOP}H${WIDTH - RIGHT}V${px(floor)}H${LEFT}Z"/>`,
    ...holes,
    sizeAcross([TOP, floor], LEFT - 12, mm(outer.height)),
    sizeAlong([LEFT, WIDTH - RIGHT], floor + 10, mm(outer.width)),
  ]);
}
