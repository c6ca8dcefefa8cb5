import { format, si } from '@airspring/core/quantity';
import { LEAST_OF_NOMINAL } from '../job/load.js';
import type { Margin } from '../record/design-parts.js';
import { driverMargins } from '../record/margins.js';
import type { Played } from '../record/played.js';
import type { Account } from './account.js';
import type { Now } from './changes/change.js';

/** How near the changed box is to each limit of the brief. */
export function marginsOf(
  { standing: { job, airSpeedPeak } }: Now,
  { reach, loudest, leastLoad }: Account,
  asked: Played['atWantedLevel'],
  driver: Played['drivers'],
): Margin[] {
  const { wanted, amplifier } = job;
  const margin = (
    [path, what]: readonly [string, string],
    text: (value: number) => string,
    value: number | undefined,
    limit: number | undefined,
    sense: Margin['sense'],
    ratio = (a: number, b: number) => a / b,
  ): Margin[] => {
    if (value === undefined || limit === undefined || !(limit < Infinity)) return [];
    const relative = (sense === 'at most' ? ratio(value, limit) : ratio(limit, value)) - 1;
    return [{ path, what, value: text(value), limit: text(limit), sense, relative }];
  };
  const hertz = (f: number) => format('frequency', si('frequency', f), 'Hz', 4);
  const level = (dB: number) => format('level', si('level', dB), 'dB', 4);
  return [
    ...margin(
      ['wanted.level', 'greatest level'],
      level,
      loudest.level,
      wanted.level,
      'at least',
      (a, b) => 10 ** ((a - b) / 20),
    ),
    ...margin(['wanted.lowest', 'reach of the response'], hertz, reach, wanted.lowest, 'at most'),
    ...margin(
      ['vent.airSpeed', 'air speed in the vent, peak'],
      (v) => format('airSpeedPeak', si('airSpeedPeak', v), 'm/s', 4),
      asked.own?.at.value,
      airSpeedPeak,
      'at most',
    ),
    ...driverMargins(job, job.choices[0]?.driverIndex ?? 0, driver, asked),
    ...margin(
      ['amplifier.voltage', 'amplifier voltage, rms'],
      (u) => format('voltageRms', si('voltageRms', u), 'V', 4),
      asked.driveVoltageRms.value,
      amplifier.voltage,
      'at most',
    ),
    ...margin(
      ['amplifier.current', 'amplifier current, rms'],
      (i) => format('currentRms', si('currentRms', i), 'A', 4),
      asked.currentRms.value,
      amplifier.current,
      'at most',
    ),
    ...margin(
      ['amplifier.leastLoad', 'least impedance'],
      (z) => format('resistance', si('resistance', z), 'Ω', 4),
      leastLoad.value,
      amplifier.leastLoad && LEAST_OF_NOMINAL * amplifier.leastLoad,
      'at least',
    ),
  ];
}
