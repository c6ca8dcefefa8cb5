import { format, si } from '@airspring/core/quantity';
import type { VentSegments } from '@airspring/workshop/solid';
import { html, type Markup } from '../html.js';
import { pathOf, px, sectionOf, sizeAcross, sizeAlong } from './solid-sections.js';

/** Room around the drawing for words, px. */
const [LEFT, RIGHT, TOP, BELOW] = [66, 8, 8, 30];
/** Tallest the section may be, px. */
const TALLEST = 190;
/** Between two pieces that are pulled apart, m. */
const APART = 0.022;
/** How much of the joint is seen on both sides of the spigot, m, and px of a metre there. */
const [AROUND, ZOOM] = [0.009, 9000];
/** Where the joint is drawn smaller, px. */
const NARROW = 500;

const mm = (length: number): string => format('length', si('length', length), 'mm');

/** A vent cut along its axis with its pieces pulled apart; under it a joint put together, enlarged. */
export function drawVentPieces({ parts, cuts, drawing }: VentSegments, label: string, width: number): string {
  const ends = [0, ...cuts, drawing.length];
  const radius = drawing.section.form === 'round' ? drawing.section.diameter / 2 : 0;
  const sections = parts.map(({ mesh }, i) => sectionOf(mesh, ends[i]! + i * APART));
  const outermost = Math.max(...sections.flat(2).map(([, across]) => across));
  const long = drawing.length + cuts.length * APART;
  const scale = Math.min(TALLEST / (2 * outermost), (width - LEFT - RIGHT) / long);
  const middle = TOP + outermost * scale;
  const at = { x: (along: number) => LEFT + along * scale, y: (across: number) => middle - across * scale };
  const floor = middle + outermost * scale + 12;
  const pieces = sections.map((section, i) => {
    const [from, to] = [ends[i]! + i * APART, ends[i + 1]! + i * APART];
    return html`<path class="wood" d="${pathOf(section, at)}"/>${sizeAlong([at.x(from), at.x(to)], floor, mm(to - from))}`;
  });
  const below = floor + BELOW;
  const joint =
    cuts.length > 0 ? jointOf(parts, ends, radius, drawing.wall, below, width < NARROW ? ZOOM / 1.5 : ZOOM) : undefined;
  const height = below + (joint?.height ?? 0);
  const inside = sizeAcross([at.y(radius), at.y(-radius)], at.x(ends[1]! * 0.6), mm(2 * radius), 'right');
  const flange = sizeAcross([at.y(outermost), at.y(-outermost)], LEFT - 12, mm(2 * outermost));
  return html`<svg class="drawing solid" viewBox="0 0 ${width} ${px(height)}" width="${width}" height="${px(height)}" role="img" aria-label="${label}"><path class="axis" d="M${LEFT - 6} ${px(middle)}H${px(at.x(long) + 6)}"/>${pieces}${inside}${flange}${joint?.markup}</svg>`
    .markup;
}

/** The first joint, closed: both walls around it, and where the spigot ends. */
function jointOf(
  parts: VentSegments['parts'],
  ends: readonly number[],
  radius: number,
  wall: number,
  top: number,
  zoom: number,
): { readonly markup: Markup; readonly height: number } {
  const cut = ends[1]!;
  // The spigot is what of the first piece reaches beyond the place of the joint.
  const first = sectionOf(parts[0]!.mesh);
  const reach = Math.max(...first.flat().map(([along]) => along)) - cut;
  const [wide, high] = [(reach + 2 * AROUND) * zoom, (wall + 0.003) * zoom];
  const from = top + 22;
  const at = {
    x: (along: number) => LEFT + (along - cut + AROUND) * zoom,
    y: (across: number) => from + (radius + wall + 0.0015 - across) * zoom,
  };
  const walls = [first, sectionOf(parts[1]!.mesh, cut)].map(
    (section, i) => html`<path class="wood${i > 0 && ' second'}" d="${pathOf(section, at)}"/>`,
  );
  const markup = html`<text class="view" x="${LEFT}" y="${px(top + 14)}">the joint, glued</text><clipPath id="joint-${zoom}"><rect x="${LEFT}" y="${px(from)}" width="${px(wide)}" height="${px(high)}"/></clipPath><g clip-path="url(#joint-${zoom})">${walls}</g>${sizeAlong([at.x(cut), at.x(cut + reach)], from + high + 8, `spigot ${mm(reach)}`)}${sizeAcross([at.y(radius + wall), at.y(radius)], LEFT + wide + 12, `wall ${mm(wall)}`, 'right')}`;
  return { markup, height: high + 66 };
}
