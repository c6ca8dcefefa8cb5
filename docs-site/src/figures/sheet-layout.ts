import type { NestedSheet } from '@airspring/workshop/nesting';
import { html, trusted } from '../html.js';
import { px } from './solid-sections.js';

/** Room for the sizes of the sheet, px. */
const [LEFT, TOP, BELOW] = [58, 6, 30];
/** A piece that is narrower has its sizes in small letters, px. */
const SMALL = 100;
/** Offcuts below this are not named, px. */
const NAMED = 96;

const short = (length: number): string => String(Number((length * 1e3).toFixed(1)));

/** A sheet with the pieces that are sawn from it, and the cuts. */
export function sheetLayout({ length, width, parts, cuts, offcuts }: NestedSheet, label: string, wide: number): string {
  const scale = (wide - LEFT - 2) / length;
  const height = TOP + width * scale + BELOW;
  const x = (at: number) => px(LEFT + at * scale);
  const y = (at: number) => px(TOP + (width - at) * scale);
  const rectangle = (one: { x: number; y: number; length: number; width: number }, name: string) =>
    html`<rect class="${name}" x="${x(one.x)}" y="${y(one.y + one.width)}" width="${px(one.length * scale)}" height="${px(one.width * scale)}"/>`;
  const named = parts.map((part) => {
    const [middle, high] = [x(part.x + part.length / 2), TOP + (width - part.y - part.width / 2) * scale];
    return html`${rectangle(part, 'piece')}<text x="${middle}" y="${px(high - 3)}" text-anchor="middle">${part.name}</text><text class="view"${part.length * scale < SMALL && trusted(' style="font-size:11px"')} x="${middle}" y="${px(high + 13)}" text-anchor="middle">${short(part.length)} × ${short(part.width)}</text>`;
  });
  const left = offcuts
    .filter((one) => one.length * scale > NAMED && one.width * scale > 20)
    .map(
      (one) =>
        html`<text class="view" x="${x(one.x + one.length / 2)}" y="${px(TOP + (width - one.y - one.width / 2) * scale + 4)}" text-anchor="middle">left over</text>`,
    );
  const lines = cuts.map(({ across, at, from, to }) =>
    across === 'x'
      ? html`<path class="cut" d="M${x(at)} ${y(from)}V${y(to)}"/>`
      : html`<path class="cut" d="M${x(from)} ${y(at)}H${x(to)}"/>`,
  );
  const floor = TOP + width * scale + 10;
  return html`<svg class="drawing sheet-layout" viewBox="0 0 ${wide} ${px(height)}" width="${wide}" height="${px(height)}" role="img" aria-label="${label}">${rectangle({ x: 0, y: 0, length, width }, 'whole')}${lines}${named}${left}<path class="dimension" d="M${x(0)} ${px(floor - 4)}v8m0 -4H${x(length)}m0 -4v8"/><text x="${x(length / 2)}" y="${px(floor + 17)}" text-anchor="middle">${short(length)} mm</text><path class="dimension" d="M${LEFT - 14} ${y(width)}h8m-4 0V${y(0)}m-4 0h8"/><text x="${LEFT - 18}" y="${px(TOP + (width * scale) / 2)}" text-anchor="end">${short(width)}</text><text x="${LEFT - 18}" y="${px(TOP + (width * scale) / 2 + 16)}" text-anchor="end">mm</text></svg>`
    .markup;
}
