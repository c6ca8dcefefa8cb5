import { impedanceFigure } from './impedance-figure.js';
import { caution, figure, paragraph, section, steps, table } from './markup.js';
import { wiringFigure } from './wiring-figure.js';
import type { Work } from './work.js';

const ohms = (value: number): string => `${value.toFixed(1)} Ω`;

/** How the poles of the drivers are found, and what the finished wiring measures. */
export const POLES =
  'Check the poles: touch a cell of 1.5 V to the wires for a moment, + to +. Every cone must jump outwards. A cone that jumps inwards is joined the wrong way round (common practice).';
export const RESISTANCE =
  'Measure the resistance between the two wires before the amplifier is joined. It is a little below the lowest impedance told under "Measure".';

/** What is done about the wiring of a box whose drivers are joined in another way. */
export const REWIRING = [
  'Lead the cable through a cup for terminals or through a tight hole, and seal it: a leak there whistles and costs bass.',
  POLES,
  RESISTANCE,
] as const;

/** How the drivers are joined, as a picture and in words, and what the amplifier then sees. */
export function wiringSection(work: Work, tasks: readonly string[] = []): string {
  const { series, parallel, count, isobaric, name } = work.drivers;
  const how =
    count === 1
      ? 'One driver: its + to the + of the amplifier, its − to the −.'
      : `${count} drivers: ${[
          ...(series > 1 ? [`${series} one after the other, the − of each to the + of the next`] : []),
          ...(parallel > 1
            ? [`${parallel} ${series > 1 ? 'such branches' : 'drivers'} side by side, + to + and − to −`]
            : []),
        ].join('; ')}.`;
  const pair = isobaric ? ' In each pair both cones must move the same way at the same time.' : '';
  return section(
    'Wiring',
    [
      `<div class="pair">${figure(wiringFigure(work), `Each circle is a voice coil of "${name}".`)}<div>${paragraph(how + pair)}${paragraph(work.load)}</div></div>`,
      caution(work.cautions.mains),
      ...(tasks.length > 0 ? [steps(tasks.map((says) => ({ says })))] : []),
    ].join('\n'),
    'on',
  );
}

/** Peaks and dips in the range of a curve, in their order. */
function spotsOf({ peaks, dips }: Pick<Work['impedance'], 'peaks' | 'dips'>, last: number) {
  return [...peaks.map((point) => ['peak', point] as const), ...dips.map((point) => ['dip', point] as const)]
    .filter(([, { frequency }]) => frequency <= last)
    .sort(([, a], [, b]) => a.frequency - b.frequency);
}

/** Peaks and dips beside room for what is measured. */
export const spotsTable = (
  impedance: Pick<Work['impedance'], 'peaks' | 'dips'>,
  last: number,
  computed = 'designed',
): string =>
  table(
    ['', computed, 'impedance', 'measured'],
    spotsOf(impedance, last).map(([what, { frequency, value }]) => [
      what,
      `${frequency.toFixed(1)} Hz`,
      ohms(value),
      '',
    ]),
  );

/** How an impedance is measured with a resistor and a meter. */
export const howToMeasure = (cautions: Work['cautions'], compare: string): string =>
  [
    '<h3>How to measure it</h3>',
    caution(cautions.hearing),
    caution(cautions.travel),
    steps([
      { says: 'Put a resistor of about 10 Ω and at least 5 W between the + of the amplifier and the box.' },
      {
        says: 'Play a steady tone so softly that you hardly hear it: about 0.3 V across the box. Leave a high-pass out for this; so little cannot over-drive the cone.',
      },
      {
        says: 'At each frequency read two alternating voltages: across the resistor, and across the box. The impedance is the resistance times the voltage of the box divided by that of the resistor. Many meters read too little below about 40 Hz (common practice). Use one meter for both: the share that it loses drops out.',
      },
      {
        says: 'Go up from 10 Hz until you are past the last peak, each tone a tenth higher than the one before. Near a peak or a dip, take steps of 0.5 Hz.',
      },
      { says: compare },
    ]),
  ].join('\n');

/** The impedance that proves that the built box is the designed one. */
export function measuringSection(work: Work): string {
  const { text, frequencies } = work.impedance;
  return section(
    'Measure',
    [
      paragraph(text),
      figure(impedanceFigure(work), 'The impedance that the finished box should have. Draw what you measure on it.'),
      spotsTable(work.impedance, frequencies.at(-1) ?? 0),
      howToMeasure(
        work.cautions,
        'Compare the frequencies of peaks and dips with the table. A tuning that is too high means a vent that is too short, or less air than planned. A tuning that is too low means the opposite. Drivers of one type differ as well, commonly by some per cent. Peaks that are lower than these, with the right frequencies, tell of a leak or of much damping.',
      ),
    ].join('\n'),
    'flows',
  );
}
