import { html } from '../html.js';
import { type BoxAccount, verdicts } from './account.js';
import { clock } from './clock.js';
import type { Heard } from './heard.js';
import { noteName, semitoneOf } from './notes.js';
import { panelsOf } from './panels-in-time.js';
import { drawPanel, drawStrip } from './timeline-panel.js';
import { STRIP } from './verdict-looks.js';

const edge = { left: 8, right: 40, bottom: 40, top: 26 };
const GAP = 30;
const px = (value: number): string => value.toFixed(1);

/** Marks of the time: at most seven, or four on a telephone. */
function timesOf(duration: number, most: number): readonly number[] {
  const step =
    [0.1, 0.2, 0.5, 1, 2, 5, 10, 15, 20, 30, 60, 120, 300, 600].find((each) => duration / each <= most) ??
    600 * Math.ceil(duration / 600 / most);
  return Array.from({ length: Math.floor(duration / step + 1e-9) + 1 }, (_, i) => i * step);
}

/** The picture as SVG, `total` pixels wide. */
export function drawTimeline(
  heard: Heard,
  accounts: readonly BoxAccount[],
  drive: number,
  total: number,
  label: string,
): string {
  const { duration } = heard;
  const width = total - edge.left - edge.right;
  const height = total < 500 ? 96 : 112;
  const panels = panelsOf(heard, accounts, drive);
  const noise = accounts[0]?.noise;
  const marked =
    noise && noise.worst > 0 && noise.quiet.mostUsed > 1 ? noise.noisy.mostAt + heard.slice / 2 : undefined;
  const stripTop = (i: number) => edge.top + (marked === undefined ? 0 : 12) + i * (STRIP + 26);
  const top = stripTop(accounts.length) + 10;
  const panelTop = (i: number) => top + i * (height + GAP);
  const bottom = panelTop(panels.length) - GAP;
  const tall = bottom + edge.bottom;
  const x = (seconds: number) => (width * seconds) / duration;
  const times = timesOf(duration, total < 500 ? 4 : 7);
  const fine = times.every((time) => Number.isInteger(time)) ? 0 : 1;
  const event =
    marked !== undefined && noise
      ? {
          at: x(marked),
          words: `${noise.noisy.times > 0 ? 'A is noisiest' : 'A is nearest to noise'}: ${noteName(semitoneOf(noise.worst))}, ${noise.worst.toFixed(1)} Hz`,
        }
      : undefined;
  const left = event !== undefined && event.at > 0.6 * width;
  return html`<svg class="plot sweep" role="img" aria-label="${label}" width="${total}" height="${tall}" viewBox="0 0 ${total} ${tall}" data-first="0" data-last="${duration}" data-left="${edge.left}" data-width="${width}" data-unit="s"${total < 500 && html` data-short="true"`} xmlns="http://www.w3.org/2000/svg"><g transform="translate(${edge.left} 0)">
${times.map((time) => html`<path class="grid" d="M${px(x(time))} ${top}V${bottom}"/><text class="soft" x="${px(x(time))}" y="${bottom + 17}" text-anchor="middle">${clock(time, fine)}</text>`)}
<text class="soft axis-words" x="${px(width + edge.right - 2)}" y="${bottom + 35}" text-anchor="end">time, min:s</text>
${accounts.map((account, i) => html`<g transform="translate(0 ${stripTop(i)})">${drawStrip('AB'[i]!, account, heard.boxes[i] && verdicts(heard.boxes[i], drive), width)}</g>`)}
${panels.map((panel, i) => html`<g transform="translate(0 ${panelTop(i)})">${drawPanel(panel, width, height)}</g>`)}
${event && html`<path class="event" d="M${px(event.at)} 4V${bottom}"/><text class="halo words" x="${px(event.at + (left ? -5 : 5))}" y="12" text-anchor="${left ? 'end' : 'start'}" fill="var(--ink)">${event.words}</text>`}
<g class="pointer"><path d="M0 ${edge.top}V${bottom}"/><text class="halo" data-tone y="${bottom + 35}" text-anchor="middle" fill="var(--ink)"></text></g></g></svg>`
    .markup;
}
