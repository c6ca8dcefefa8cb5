import { inUnit } from '@airspring/core/quantity';
import type { Curves } from '../record/design-parts.js';
import type { Design } from '../record/design-record.js';
import { paragraph } from './layout.js';

/** One column of the curves, and how its axis is written. */
interface View {
  readonly title: string;
  readonly unit: string;
  readonly column: (curves: Curves) => readonly number[] | undefined;
  /** Least span of the axis below its top. Without it the axis begins at zero. */
  readonly span?: number;
}

const metresToMillimetres = (metres: number) => inUnit('length', metres, 'mm');

const views: readonly View[] = [
  { title: 'Level at 1 m in half space', unit: 'dB', column: ({ levelHalfSpace }) => levelHalfSpace, span: 30 },
  {
    title: 'Cone travel, peak',
    unit: 'mm',
    column: ({ displacementPeak }) => displacementPeak.map(metresToMillimetres),
  },
  { title: 'Air speed in the vent, peak', unit: 'm/s', column: ({ airSpeedPeak }) => airSpeedPeak },
  { title: 'Input impedance', unit: 'Ω', column: ({ impedance }) => impedance },
  { title: 'Greatest level of a steady tone', unit: 'dB', column: ({ greatestLevel }) => greatestLevel, span: 30 },
];

const WIDTH = 60;
const HEIGHT = 10;
const MARGIN = 9;

/** A curve read at any frequency, by straight lines between its points over log f; `undefined` outside them. */
function readAt(frequencies: readonly number[], values: readonly number[], f: number): number | undefined {
  const above = frequencies.findIndex((one) => one >= f * (1 - 1e-9));
  if (above < 0) return undefined;
  const [high, low] = [frequencies[above]!, frequencies[above - 1]];
  if (low === undefined) return high <= f * (1 + 1e-9) ? values[above] : undefined;
  const part = Math.log(f / low) / Math.log(high / low);
  return values[above - 1]! * (1 - part) + values[above]! * part;
}

/** The least of 1, 2 and 5 times a power of ten that is not below the value. */
function roundStep(value: number): number {
  const ten = 10 ** Math.floor(Math.log10(value));
  return [1, 2, 5, 10].find((step) => step * ten >= value * (1 - 1e-9))! * ten;
}

/** The lower end of the vertical axis, and a round step for each of its rows. */
function axisOf(values: readonly number[], span: number | undefined): { bottom: number; step: number } {
  const most = Math.max(...values);
  if (span === undefined) return { bottom: 0, step: roundStep(Math.max(most, 1e-9) / (HEIGHT - 1)) };
  const step = roundStep(span / (HEIGHT - 1));
  return { bottom: Math.ceil(most / step) * step - step * (HEIGHT - 1), step };
}

/** Marks below the frequency axis; each begins at its frequency. */
function frequencyMarks(low: number, high: number): string {
  let marks = '';
  for (let ten = 10 ** Math.floor(Math.log10(low)); ten <= high; ten *= 10) {
    for (const f of [ten, 2 * ten, 5 * ten].filter((one) => one >= low * (1 - 1e-9) && one <= high * (1 + 1e-9))) {
      const at = Math.round((Math.log(f / low) / Math.log(high / low)) * (WIDTH - 1));
      if (at >= marks.length) marks = `${marks.padEnd(at)}${f} `;
    }
  }
  return `${' '.repeat(MARGIN + 1)}${marks.trimEnd()} Hz`;
}

function sketchOf(view: View, designs: readonly Design[]): string | undefined {
  const curves = designs.flatMap(({ name, curves }) => {
    const values = view.column(curves);
    return values === undefined ? [] : [{ name, frequencies: curves.frequencies, values }];
  });
  const first = curves[0];
  if (first === undefined) return undefined;
  const [low, high] = [first.frequencies[0]!, first.frequencies.at(-1)!];
  const { bottom, step } = axisOf(
    curves.flatMap(({ values }) => values),
    view.span,
  );
  const rows = Array.from({ length: HEIGHT }, () => Array<string>(WIDTH).fill(' '));
  // The first design is drawn last, so that it stays on top.
  for (const { name, frequencies, values } of curves.toReversed()) {
    for (let x = 0; x < WIDTH; x++) {
      const value = readAt(frequencies, values, low * (high / low) ** (x / (WIDTH - 1)));
      const row = value === undefined ? -1 : Math.round((value - bottom) / step);
      const line = rows[row];
      if (line !== undefined) line[x] = name;
    }
  }
  const places = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  const lines = rows.map((line, row) => {
    const mark = row % 3 === 0 ? (bottom + row * step).toFixed(places) : '';
    return `${mark.padStart(MARGIN - 1)} ${mark === '' ? '|' : '+'}${line.join('').trimEnd()}`.trimEnd();
  });
  const title = `${view.title}, ${view.unit}`;
  return [title, ...lines.toReversed(), `${' '.repeat(MARGIN)}+${'-'.repeat(WIDTH)}`, frequencyMarks(low, high)].join(
    '\n',
  );
}

/**
 * Curves of several designs in plain text, each drawn by its letter over a logarithmic frequency axis.
 *
 * @example sketchText(answer.designs)
 */
export function sketchText(designs: readonly Design[]): string {
  const drives = designs.map(({ name, curves }) => `${name} ${curves.driveVoltageRms.toPrecision(3)} V`).join(', ');
  const note = `Each curve is drawn with the letter of its box. Where two curves meet, the earlier letter is shown. The curves of level, travel and air speed are for the drive that gives the wanted level where the response is flat (rms: ${drives}).`;
  const sketches = views.flatMap((view) => sketchOf(view, designs) ?? []);
  return `${[paragraph(note), ...sketches].join('\n\n')}\n`;
}
