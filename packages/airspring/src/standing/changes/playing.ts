import { butterworthShape, highPass as highPassFilter } from '@airspring/core/filter';
import { si } from '@airspring/core/quantity';
import { filtered, flatColumns } from '../account.js';
import { soundingOf } from '../state.js';
import { type Change, rowOf } from './change.js';

const HALF = 0.5;

/** The gentlest second-order high-pass that keeps travel and air speed within their limits at the drive of the wanted level. */
export const highPass: Change = (now) => {
  const { standing, state, account } = now;
  const { job, airSpeedPeak, drivers } = standing;
  const { Xmax = Infinity } = drivers.driver;
  if (account.flat.travel.value <= Xmax && (account.flat.airSpeed?.value ?? 0) <= airSpeedPeak) return [];
  const sounding = soundingOf(standing, state);
  if (!sounding.ok || standing.filter) return [];
  const { grid, displacementPeak, airSpeedPeak: speed } = flatColumns(job, sounding);
  for (let corner = Math.ceil(job.wanted.lowest / 2); corner <= 2 * job.wanted.lowest; corner += HALF) {
    const filter = highPassFilter(butterworthShape(2), si('frequency', corner));
    const within = (column: Float64Array | undefined, most: number) =>
      column === undefined || filtered(filter, grid, column).every((value) => value <= most);
    if (!within(displacementPeak, Xmax) || !within(speed, airSpeedPeak)) continue;
    return [
      rowOf(now, {
        change: 'a high-pass filter',
        what: ['A second-order Butterworth high-pass at ', [corner, 'frequency'], ', before the amplifier'],
        holds: ['tuning', 'length', 'volume'],
        after: { ...standing, filter },
        box: { highPass: { order: 2, corner } },
        fitting: 'fits',
        effort: 0,
        steps: [
          {
            does: 'set',
            says: ['Set a second-order high-pass of ', [corner, 'frequency'], ' in the amplifier or in the player.'],
          },
        ],
        touches: [],
      }),
    ];
  }
  return [];
};

/** The wanted level lowered to what every tone of the band can have. */
export const lessLevel: Change = (now) => {
  const { standing, account } = now;
  const { wanted } = standing.job;
  // A tenth of a decibel is as fine as a report tells it.
  const level = Math.floor(account.loudest.level * 10) / 10;
  if (level >= wanted.level) return [];
  const softer = { ...standing, job: { ...standing.job, wanted: { ...wanted, level } } };
  return [
    rowOf(
      { ...now, standing: softer },
      {
        change: 'less level',
        what: [
          'Play ',
          [wanted.level - level, 'level'],
          ' softer: ',
          [level, 'level'],
          ' instead of ',
          [wanted.level, 'level'],
        ],
        holds: ['tuning', 'length', 'volume'],
        state: now.state,
        tubes: standing.vents,
        box: { level },
        fitting: 'fits',
        effort: 0,
        steps: [{ does: 'set', says: ['Turn it down. There is nothing to build.'] }],
        touches: [],
      },
    ),
  ];
};
