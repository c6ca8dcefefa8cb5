import type { Printing } from './printing.js';
import type { Sawing } from './sawing.js';
import type { Says } from './says.js';
import type { SmallPart } from './small-parts.js';
import { boughtText, type Terminals } from './terminals.js';
import type { Work } from './work.js';

/** What an impedance is measured with. */
export const MEASURING =
  'for the measurement: a resistor of about 10 Ω and at least 5 W, a meter for alternating voltage, and a player of steady tones';

/** What to buy, from the same numbers as the pages that use it. */
export function shopping(
  work: Work,
  sawing: Sawing | undefined,
  printings: readonly Printing[],
  small: readonly SmallPart[],
  terminals: Terminals | undefined,
  says: Says,
): string[] {
  const { drivers, tools } = work;
  const printed = small.filter(({ mesh }) => mesh !== undefined);
  const plastic = [...printings, ...printed].reduce((sum, { mass }) => sum + mass, 0);
  const has = (name: string) => printed.some((part) => part.name === name);
  const bought = [
    ...(has('gasket') ? [] : ['a soft gasket for each driver']),
    tools.bolts
      ? `${drivers.count * tools.bolts.count} screws with washers for the frames, for holes of ${says(tools.bolts.hole)}`
      : 'screws with washers for the frames: the holes in the frame of the driver tell how many and how thick; they are shorter than frame and board together',
    ...(has('terminal-cup') ? [`two binding posts for holes of ${says(tools.terminals?.hole ?? 8e-3)}`] : []),
    'cable',
  ];
  return [
    `${drivers.count} × "${drivers.name}", ${says(drivers.outerDiameter)} across its frame, hole ${says(drivers.cutoutDiameter)}`,
    ...(sawing?.sheets ?? []).flatMap(({ board, thickness, nesting }) => {
      const sizes = nesting.sheets.map(({ length, width }) => `${says(length)} × ${says(width)}`);
      return [...new Set(sizes)].map(
        (size) => `${sizes.filter((one) => one === size).length} × ${board}, ${says(thickness)} thick, ${size}`,
      );
    }),
    ...(sawing?.unnested ?? []).map(
      ({ board, thickness }) => `${board}, ${says(thickness)} thick, for the pieces that lie on no sheet`,
    ),
    ...(printings.length + printed.length > 0
      ? [`about ${Math.ceil(plastic * 100) * 10} g of plastic for the printer, and glue for it`]
      : []),
    ...(work.filled ?? []).map((part) => `wadding, fibre or felt to fill the ${part}, as told under "Put it together"`),
    `wood glue, sealant for the seams, ${bought.join(', ')}`,
    ...(terminals && !has('terminal-cup') ? [boughtText(terminals, work, says)] : []),
    ...(work.highPass?.buy === undefined ? [] : [work.highPass.buy]),
    MEASURING,
  ];
}
