import { NANOMETRE, si } from '@airspring/core/quantity';
import { compileLengthForTuning } from '@airspring/core/vent';
import type { Phrase } from '../../kind/phrase.js';
import type { Edges } from '../standing.js';
import type { Part } from '../work.js';
import { type Change, refused, rowOf } from './change.js';
import { holeClosed } from './hole-closed.js';

const MM = 1e-3;
/** The share of the air that a channel must leave. */
const LEAST_AIR = 0.3;

/** The longest way inwards from a front, a bottom or the panels opposite, for a channel as wide as the box and this high. */
const longestBehind = ([, height, depth]: Edges, high: number): number =>
  Math.max(high <= height ? depth : 0, high <= depth ? height : 0);

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
  const cannot = (what: Phrase, because: Phrase) => [
    refused({ change: 'a slot', what: ['A slot', ...what], holds: ['tuning'] }, because),
  ];
  // The channel has boards of its own at its sides: they stand between those of the box.
  const widest = inner ? Math.floor((inner[0] - 2 * t) / MM + 1e-6) * MM : Infinity;
  const width = Math.min(widest, Math.ceil(((inner ? 6 : 2) * Math.sqrt(area)) / MM) * MM);
  if (!(width > 0)) return cannot([], ['The box is too narrow for a channel between two boards.']);
  const height = Math.ceil(area / width / MM) * MM;
  const opening: Phrase = [' of ', [width, 'length'], ' × ', [height, 'length']];
  const section = { width: si('length', width), height: si('length', height), wall: si('length', t) };
  const lengthAt = compileLengthForTuning(section, job.air);
  let length = t;
  for (let i = 0; i < 60; i++) {
    const net = airBeforeVents - (width + 2 * t) * (height + 2 * t) * Math.max(0, length - t);
    if (net < LEAST_AIR * airBeforeVents)
      return cannot(opening, ['Its channel would take more than 70 % of the air in the box.']);
    length = lengthAt(net, account.fb / standing.tuningRatio);
  }
  length = Math.round(length / MM) * MM;
  const what: Phrase = [...opening, ', ', [length, 'length'], ' long'];
  if (!(length > t)) return cannot(opening, ['Even as short as the panel it would tune the box lower.']);
  const needed = length - t + height;
  const room = inner && longestBehind(inner, height + 2 * t);
  if (room !== undefined && needed > room + NANOMETRE) {
    const has: Phrase =
      room > 0 ? ['there is room for ', [room, 'length'], ' at most.'] : ['it is too high for the box.'];
    return cannot(what, ['Its channel needs ', [needed, 'length'], ' inwards from the inside of its panel; ', ...has]);
  }
  const edge = Math.cbrt(airBeforeVents);
  const narrow = inner === undefined && needed > edge;
  return [
    rowOf(now, {
      change: 'a slot',
      what: ['A slot', ...what],
      holds: ['tuning'],
      state: { ...state, vents: [{ ...section, length: si('length', length) }] },
      box: { slot: { width, height, length } },
      fitting: 'measure',
      effort: narrow ? 1.5 : 1,
      steps: [
        {
          does: 'measure',
          says: [
            'Find a clear distance of ',
            [needed, 'length'],
            ' along a panel.',
            ...(narrow
              ? ([
                  ' A cubic box of this volume is only ',
                  [edge, 'length'],
                  ' wide inside, so look for room to fold the channel.',
                ] as const)
              : []),
          ],
        },
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
