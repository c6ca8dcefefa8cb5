import { butterworthShape, highPass as highPassFilter, sectionsOf } from '@airspring/core/filter';
import { si } from '@airspring/core/quantity';
import { inWords } from '../kind/wording.js';
import type { Guard } from '../record/design-parts.js';
import type { Played } from '../record/played.js';
import type { Phrasing } from '../words/phrasing.js';
import { bandOf, costOfHighPass, filterName, flatWhere, highPassName, tooMuch } from '../words/play-text.js';

/** Which tones a drive plays with the cone within its travel. */
function safeAt(guard: Guard, design: Played, say: Phrasing): string {
  const { lowestSafeFrequency: from, lowestWithoutFilter, neverSafe, highPass } = guard;
  if (neverSafe) return 'at no tone: turn it down';
  if (lowestWithoutFilter !== undefined) {
    return `at every tone behind ${filterName(design.amplifier)}; without it from ${say.hertz(lowestWithoutFilter)} up`;
  }
  if (from === undefined) return 'at every tone';
  const up = `from ${say.hertz(from)} up`;
  if (from > bandOf(design).lowest)
    return `${up}: not in the whole band, and no high-pass below the band helps. Turn it down`;
  if (design.amplifier.filter !== undefined)
    return `${up}: ${filterName(design.amplifier)} does not prevent that. Set its corner higher, or turn it down`;
  return highPass
    ? `${up}; behind ${highPassName(highPass, say)} at every tone`
    : `${up}; no Butterworth high-pass of order 1 to 4 below the band prevents that. Turn it down, or keep such tones out of the programme`;
}

/** The drives that pages speak of, each with what it is: none where the travel of the cone is not known. */
export function drivesOf(design: Played, say: Phrasing): (readonly [string, string, string])[] {
  const { protection, atWantedLevel, amplifier, drivers } = design;
  if (drivers.Xmax === undefined) return [];
  const { driveVoltageRms: most, displacementPeak: travel } = atWantedLevel;
  const soft = tooMuch(design)
    ? []
    : [
        [
          say.volts(protection.driveVoltageRms),
          `gives the wanted level ${flatWhere(design)}`,
          safeAt(protection, design, say),
        ] as const,
      ];
  return [
    ...soft,
    [
      say.volts(most.value),
      `gives the wanted level at ${say.edge(most.frequency)}, the tone that needs most: with an equaliser, at this tone alone`,
      `at the wanted level it moves by at most ${say.travel(travel.value)}, at ${say.edge(travel.frequency)}; its limit is ${say.travel(drivers.Xmax)}`,
    ],
    [say.volts(amplifier.voltage), 'the most that the amplifier gives', safeAt(protection.atFullVoltage, design, say)],
  ];
}

/** The high-pass that a box needs or has, as its builder sets it; nothing where the cone is safe without, or no high-pass helps. */
export function highPassOf(design: Played, say: Phrasing) {
  const { amplifier, protection } = design;
  if (amplifier.filter !== undefined) {
    return {
      ...(amplifier.filterIsNew && { buy: buyText(amplifier.filter) }),
      settings: [[amplifier.filterIsNew ? 'new' : 'there already', amplifier.filter]] as const,
      step: `${amplifier.filterIsNew ? 'Set it' : 'See that it is on and set so'}, in the amplifier, in a processor before it, or in the player: level, travel and air speed on these pages count on it.`,
    };
  }
  const guard = [protection.atFullVoltage, ...(tooMuch(design) ? [] : [protection])].find((one) => one.highPass);
  if (guard?.highPass === undefined) return undefined;
  const { order, corner } = guard.highPass;
  const qualities = sectionsOf(highPassFilter(butterworthShape(order), si('frequency', corner))).flatMap(({ Q }) =>
    Q === undefined ? [] : [Q.toFixed(2)],
  );
  const isFull = guard === protection.atFullVoltage;
  const settings: (readonly [string, string])[] = [
    ['shape', `high-pass, Butterworth, order ${order} (${6 * order} dB per octave)`],
    ['corner', say.hertz(corner)],
    ...(qualities.length > 0
      ? [
          [
            'its sections',
            `${order % 2 === 1 ? 'one of first order, and ' : ''}${inWords(qualities.length)} of second order, Q ${qualities.join(' and ')}, ${qualities.length > 1 ? 'each ' : ''}at the corner`,
          ] as const,
        ]
      : []),
    [
      'enough up to',
      `${say.volts(guard.driveVoltageRms)} rms${isFull ? ', the most that the amplifier gives' : '; at the most that the amplifier gives, none below the band is enough'}`,
    ],
    ['what it costs', costOfHighPass(guard.highPass, bandOf(design).lowest, say)],
  ];
  return {
    buy: buyText(highPassName(guard.highPass, say)),
    settings,
    step: 'Set it as the table tells, in the amplifier, in a processor before it, or in the player, before the first loud tone. The measurement is done without it.',
  };
}

const buyText = (name: string): string =>
  `a high-pass filter before the amplifier, where neither amplifier nor player has one: ${name}, set as told under "Play it"`;
