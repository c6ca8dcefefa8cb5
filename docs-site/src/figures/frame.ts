import { frequencyAxis, spread } from './axis.js';
import { drawChart, heightOf, margin, type Trace } from './chart.js';

/** One line of a figure; `stretches` colour parts of it. */
export interface Line {
  readonly name: string;
  readonly values: readonly number[];
  readonly stretches?: readonly { readonly from: number; readonly to: number; readonly colour: string }[];
}

export interface Frame {
  readonly label: string;
  readonly colour: string;
  readonly unit: string;
  readonly frequencies: readonly number[];
  readonly lines: readonly Line[];
  /** Of the vertical axis. */
  readonly domain: readonly [number, number];
  readonly ticks: readonly number[];
  /** Frequencies that the brief speaks of. */
  readonly band: readonly [number, number];
  /** A level line with its words. */
  readonly rule?: { readonly at: number; readonly words: string; readonly under?: boolean };
  /** Words beside the curve. */
  readonly words?: readonly {
    readonly f: number;
    readonly y: number;
    readonly text: string;
    readonly colour: string;
    readonly before: boolean;
  }[];
}

const dashes = ['none', '9 4', '2 3', '9 3 2 3', '4 3', '14 4'];
const LETTER = 15;

/** Curves over a logarithmic frequency axis, each named at its low end, where curves of boxes differ most. */
export function drawFrame(frame: Frame, width: number): string {
  const { frequencies, lines, domain, band, rule, words = [] } = frame;
  const [first, last] = [frequencies[0]!, frequencies.at(-1) as number];
  const perPixel = (domain[1] - domain[0]) / (heightOf(width) - margin.top - margin.bottom);
  const starts = lines.map(({ values }) => Math.min(domain[1], Math.max(domain[0], values[0]!)));
  const letters = spread(starts, LETTER * perPixel, domain[0] + 4 * perPixel);

  const traces = lines.flatMap(({ name, values, stretches }, i): Trace[] => {
    const parts = stretches ?? [{ from: first, to: last, colour: frame.colour }];
    return parts.map(({ from, to, colour }, part) => {
      const at = frequencies.flatMap((f, k) => (f >= from * (1 - 1e-9) && f <= to * (1 + 1e-9) ? [k] : []));
      return {
        name: `${name}${part}`,
        x: at.map((k) => frequencies[k]!),
        y: at.map((k) => values[k]!),
        colour,
        thick: i === 0,
        dash: dashes[i % dashes.length] as string,
      };
    });
  });
  return drawChart(
    {
      label: frame.label,
      x: frequencyAxis(first, last),
      y: { domain, ticks: frame.ticks, words: frame.unit },
      band: { from: band[0], to: band[1], words: `${band[0]} to ${band[1]} Hz: the brief` },
      ...(rule && { rules: [rule] }),
      traces,
      letters: lines.map(({ name, stretches }, i) => ({
        name,
        start: starts[i]!,
        at: letters[i]!,
        colour: stretches?.[0]?.colour ?? frame.colour,
      })),
      marks: words.map(({ f, y, text, colour, before }, i) => ({
        name: String(i),
        x: f,
        y,
        words: text,
        colour,
        side: before ? 'left' : 'middle',
      })),
    },
    width,
  );
}
