import { si } from '@airspring/core/quantity';
import { compileLengthForTuning } from '@airspring/core/vent';
import type { Part } from '../work.js';
import { type Change, rowOf } from './change.js';
import { holeClosed } from './hole-closed.js';

const MM = 1e-3;

const board = (what: string, [length, width]: readonly [number, number]): Part => ({
  what,
  made: 'cut',
  count: 2,
  size: [[length, 'bareLength'], ' × ', [width, 'length']],
  board: { sides: [length, width] },
});

/** A slot between two boards, of the area that the wanted level needs. */
export const slot: Change = (now) => {
  const { standing, state, account } = now;
  const speed = account.wanted.airSpeed?.value;
  const [vent] = standing.vents;
  if (vent === undefined || account.fb === undefined || speed === undefined) return [];
  const { job, panelThickness: t, airBeforeVents, inner } = standing;
  const areaNow = (standing.vents.reduce((sum, { count, diameter }) => sum + count * diameter ** 2, 0) * Math.PI) / 4;
  const area = areaNow * Math.max(1, speed / standing.airSpeedPeak);
  // The channel has boards of its own at its sides: they stand between those of the box.
  const widest = inner ? Math.floor((inner[0] - 2 * t) / MM + 1e-6) * MM : Infinity;
  const width = Math.min(widest, Math.ceil(((inner ? 6 : 2) * Math.sqrt(area)) / MM) * MM);
  if (!(width > 0)) return [];
  const height = Math.ceil(area / width / MM) * MM;
  const section = { width: si('length', width), height: si('length', height), wall: si('length', t) };
  const lengthAt = compileLengthForTuning(section, job.air);
  let length = t;
  for (let i = 0; i < 60; i++) {
    const net = airBeforeVents - (width + 2 * t) * (height + 2 * t) * Math.max(0, length - t);
    if (net < 0.3 * airBeforeVents) return [];
    length = lengthAt(net, account.fb / standing.tuningRatio);
  }
  length = Math.round(length / MM) * MM;
  if (!(length > t)) return [];
  return [
    rowOf(now, {
      change: 'a slot',
      what: ['A slot of ', [width, 'length'], ' × ', [height, 'length'], ', ', [length, 'length'], ' long'],
      holds: ['tuning'],
      state: { ...state, vents: [{ ...section, length: si('length', length) }] },
      box: { slot: { width, height, length } },
      fitting: 'measure',
      effort: 1,
      steps: [
        { does: 'measure', says: ['Find a clear distance of ', [length - t + height, 'length'], ' along a panel.'] },
        holeClosed(standing.ventsNow),
        {
          does: 'cut',
          says: [
            'Cut a slot of ',
            [width, 'length'],
            ' × ',
            [height, 'length'],
            ' through the panel, and build a channel of four boards behind it, ',
            [length - t, 'length'],
            ' long. A panel has to come off for this. Wear eye protection and a dust mask.',
          ],
          caution: 'dust',
          parts: [
            board('board of the channel, wide', [length - t, width + 2 * t]),
            board('board of the channel, narrow', [length - t, height]),
          ],
          holes: [{ what: 'slot', form: 'rectangle', sides: [width, height] }],
        },
      ],
      touches: ['holes'],
    }),
  ];
};
