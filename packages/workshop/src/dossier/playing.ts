import { caution, escaped, paragraph, section, steps, table } from './markup.js';
import type { Work } from './work.js';

/** How loud it plays, at which drives the cone is safe, and how the high-pass is set: what is due before the first loud tone. */
export const playingSection = ({ playing, drives = [], highPass, cautions }: Work): string =>
  section(
    'Play it',
    [
      caution(cautions.hearing),
      ...playing.map(paragraph),
      ...(drives.length > 0
        ? [table(['voltage at the box, rms', 'what it is', 'the cone stays within its travel'], drives)]
        : []),
      ...(highPass
        ? [
            `<div class="on"><h3>The high-pass filter</h3>${table([], highPass.settings)}${steps([{ says: highPass.step, caution: cautions.travel }])}</div>`,
          ]
        : [caution(cautions.travel)]),
    ].join('\n'),
    'flows',
  );

/** The sheet of a driver, to be compared with that of the one in hand. */
export const driverTable = ({ drivers: { data = [], name } }: Pick<Work, 'drivers'>): string =>
  data.length === 0
    ? ''
    : `<h3>The sheet of "${escaped(name)}" that all this is worked out from</h3>${table(['', 'value', 'where it comes from'], data)}${paragraph(
        'Compare it with the sheet of the driver in your hand, or measure that one: an ohmmeter shows Re, and in free air, out of any box, its impedance, measured like that of the box, peaks at fs. With other numbers it is another box: write them into the brief, and make these pages again.',
      )}`;
