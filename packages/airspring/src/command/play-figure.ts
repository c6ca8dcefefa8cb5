import type { Played } from './play.js';
import { clock, nounOf } from './play-text.js';

const WIDTH = 800;
const LEFT = 20;
const ROW = 84;
const HEIGHT = 52;
const TOP = 48;
/** Columns of a row at most. */
const COLUMNS = 760;

const escaped = (text: string) =>
  text.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`).replace(/[\p{Cc}\p{Cs}]/gu, '');
const at = (value: number) => value.toFixed(1);

/** Seconds between marks of the time: at most ten of them. */
const spacingOf = (duration: number) =>
  [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 30, 60, 120, 300, 600].find((step) => duration / step <= 10) ??
  600 * Math.ceil(duration / 6000);

/** How much of a limit is used over time, the greatest of each column. */
function columnsOf({ slices }: Played, limit: number): readonly number[] {
  const count = Math.min(COLUMNS, slices.length);
  const out = new Array<number>(count).fill(0);
  slices.forEach(({ used }, i) => {
    const column = Math.floor((i * count) / slices.length);
    out[column] = Math.max(out[column]!, used[limit]!);
  });
  return out;
}

/** The timeline as a figure: a row for each limit, with how much of it is used, and red where it is passed. */
export function playFigure(played: Played): string {
  const { title, called, recording, account } = played;
  const { limits, duration } = account;
  const bottom = TOP + ROW * limits.length;
  const x = (share: number) => LEFT + share * COLUMNS;
  const row = ({ name, mostUsed }: (typeof limits)[number], i: number): string => {
    const foot = TOP + ROW * i + ROW - 14;
    const top = Math.max(1.25, mostUsed);
    const y = (used: number) => foot - (HEIGHT * used) / top;
    const columns = columnsOf(played, i);
    const edge = (column: number) => at(x(column / columns.length));
    const outline = columns.map((used, k) => `V${at(y(used))}H${edge(k + 1)}`).join('');
    const passed = columns.flatMap((used, k) =>
      used > 1 + 1e-9
        ? `<rect class="passed" x="${edge(k)}" y="${at(y(used))}" width="${at(COLUMNS / columns.length)}" height="${at(y(1) - y(used))}"/>`
        : [],
    );
    return [
      `<text x="${LEFT}" y="${at(foot - HEIGHT - 6)}">${escaped(nounOf(name, played))}: at most ${(100 * mostUsed).toFixed(0)} % used</text>`,
      `<path class="used" d="M${LEFT},${at(foot)}${outline}V${at(foot)}Z"/>`,
      ...passed,
      `<line class="limit" x1="${LEFT}" x2="${at(x(1))}" y1="${at(y(1))}" y2="${at(y(1))}"/>`,
      `<line class="foot" x1="${LEFT}" x2="${at(x(1))}" y1="${at(foot)}" y2="${at(foot)}"/>`,
    ].join('\n');
  };
  const spacing = spacingOf(duration);
  const marks = Array.from({ length: Math.floor(duration / spacing) + 1 }, (_, i) => i * spacing).map(
    (time) =>
      `<text class="time" x="${at(x(duration > 0 ? time / duration : 0))}" y="${bottom + 8}">${clock(time)}</text>`,
  );
  const name = escaped(`${title}: ${called}, plays ${recording.name}`);
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${bottom + 20}" role="img" aria-label="${name}">
<title>${name}</title>
<style>
text { font: 13px sans-serif; fill: #222 }
.time { font-size: 11px; text-anchor: middle }
.used { fill: #9db8cf }
.passed { fill: #c2321f }
.limit { stroke: #c2321f; stroke-dasharray: 5 3 }
.foot { stroke: #555 }
</style>
<rect width="${WIDTH}" height="${bottom + 20}" fill="#fff"/>
<text x="${LEFT}" y="24" style="font-size: 15px">${name}</text>
${limits.map(row).join('\n')}
${marks.join('\n')}
</svg>
`;
}
