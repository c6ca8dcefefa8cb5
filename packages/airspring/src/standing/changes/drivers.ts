import { type DriverGroup, group } from '@airspring/core/driver';
import type { DriverChoice } from '../../job/job.js';
import { contentsOf } from '../../kind/drivers.js';
import { axisOf } from '../../kind/face-axis.js';
import type { Phrase } from '../../kind/phrase.js';
import { inWords } from '../../kind/wording.js';
import type { Standing } from '../standing.js';
import { lengthOrNone } from '../tube-change.js';
import { tubeWork } from '../tube-work.js';
import type { Step } from '../work.js';
import { type Change, type Made, refused, rowOf } from './change.js';

/** The air that other drivers, or the same ones mounted otherwise, would leave before vents take theirs, m³. */
function airWith({ job, drivers, airBeforeVents }: Standing, others: DriverGroup): number {
  const [choice] = job.choices as [DriverChoice];
  const taken = (group: DriverGroup) => contentsOf(job, { ...choice, drivers: group }).taken;
  return airBeforeVents + taken(drivers) - taken(others);
}

const closingBoard = (what: string, count: number, cutout: number): Step => ({
  does: 'fit',
  says: [`${what} with a board, glued and screwed tight.`],
  parts: [
    {
      what: 'board over a cutout',
      made: 'cut',
      count,
      size: cutout > 0 ? ['wider than ', [cutout, 'length']] : ['wider than the cutout'],
      ...(cutout > 0 && { board: { covers: cutout } }),
    },
  ],
});

const checkingLoad: Step = {
  does: 'wire',
  says: ['Before you switch it on, check that the amplifier takes the new least impedance.'],
};

/** One driver instead of several: in the box as it is, and with its air made smaller. */
export const oneDriver: Change = (now) => {
  const { standing, account } = now;
  const { drivers, airBeforeVents, vents } = standing;
  const { fronts, driver } = drivers;
  if (fronts < 2 || drivers.isobaric) return [];
  const alone = group(driver);
  const air = airWith(standing, alone);
  const { cutoutDiameter = 0 } = driver;
  const closing: readonly Step[] = [
    {
      does: 'take out',
      says: [
        `Switch the amplifier off, and disconnect the ${fronts > 2 ? 'drivers' : 'driver'} you take out; the one that stays is wired alone.`,
      ],
      caution: 'mains',
    },
    closingBoard(`Close the other ${fronts > 2 ? 'cutouts' : 'cutout'}`, fronts - 1, cutoutDiameter),
    ...(drivers.series > drivers.parallel ? [checkingLoad] : []),
  ];
  const rows: Made[] = [
    rowOf(now, {
      change: 'one driver',
      what: ['One driver'],
      holds: ['length'],
      after: { ...standing, drivers: alone, airBeforeVents: air },
      fitting: 'fits',
      effort: 0.1,
      steps: closing,
      touches: ['drivers'],
    }),
  ];
  const [vent, ...others] = vents;
  const filler = airBeforeVents * (1 - 1 / fronts);
  const smaller = air - filler;
  if (vent && others.length === 0 && account.fb !== undefined) {
    const length = lengthOrNone(standing, vent, account.fb, [], smaller);
    if (length !== undefined) {
      const tube = { ...vent, length };
      rows.push(
        rowOf(now, {
          change: 'one driver in less air',
          what: ['One driver, with ', [filler, 'volume'], ' of the air filled up'],
          holds: ['tuning'],
          after: { ...standing, drivers: alone, airBeforeVents: smaller, vents: [tube] },
          fitting: 'measure',
          effort: 0.3 + length,
          steps: [
            ...closing,
            {
              does: 'measure',
              says: ['Check whether a vent of ', [length, 'length'], ' still fits beside the filler.'],
              ofTubes: true,
            },
            {
              does: 'fit',
              says: ['Glue a solid block or a sealed chamber of ', [filler, 'volume'], ' into the box.'],
              parts: [{ what: 'block or sealed chamber', made: 'cut', count: 1, size: [[filler, 'volume']] }],
            },
            ...tubeWork(standing, { ...standing, vents: [tube] }).steps.filter(({ does }) => does !== 'measure'),
          ],
          touches: ['drivers', 'box'],
        }),
      );
    }
  }
  return rows;
};

/** The depth behind the cutouts from the outside of their panel, at most, m; infinite where no size is known. */
function depthBehind({ job, inner, panelThickness }: Standing): number {
  const faces = job.choices[0]?.seating.faces ?? [];
  if (inner === undefined || faces.length === 0) return Infinity;
  return panelThickness + Math.max(...faces.map((face) => inner[axisOf(face)]!));
}

/** Two drivers as an isobaric pair: one behind the other. */
export const isobaricPair: Change = (now) => {
  const { standing } = now;
  const { driver, count, series, parallel, isobaric } = standing.drivers;
  if (isobaric || count % 2 === 1) return [];
  const pair = group(driver, { series, parallel, isobaric: true });
  const air = airWith(standing, pair);
  const { depth = 0, cutoutDiameter = 0 } = driver;
  const head = {
    change: count > 2 ? 'isobaric pairs' : 'an isobaric pair',
    what: ['The drivers one behind the other, joined by a sealed tube'],
    holds: ['length'],
  } as const;
  const room = depthBehind(standing);
  if (2 * depth > room) {
    const needed: Phrase = ['Two drivers need ', [2 * depth, 'length'], ' of depth behind one cutout; '];
    return [refused(head, [...needed, 'there is room for ', [room, 'length'], ' at most.'])];
  }
  return [
    rowOf(now, {
      ...head,
      after: { ...standing, drivers: pair, airBeforeVents: air },
      fitting: 'measure',
      effort: 0.5,
      steps: [
        {
          does: 'measure',
          says:
            depth > 0
              ? ['Two drivers need ', [2 * depth, 'length'], ' of depth behind one cutout.']
              : ['Two drivers need twice the depth of one behind one cutout. Measure both.'],
        },
        { does: 'take out', says: ['Switch the amplifier off, and take the drivers out.'], caution: 'mains' },
        closingBoard(count > 2 ? 'Close the free cutouts' : 'Close the free cutout', count / 2, cutoutDiameter),
        {
          does: 'fit',
          says: [
            'Mount the second driver behind the first on a sealed tube, as short as the travel of the cones allows.',
          ],
          parts: [
            {
              what: 'tube between two drivers',
              made: 'print',
              count: count / 2,
              size: cutoutDiameter > 0 ? [[cutoutDiameter, 'length'], ' wide'] : ['as wide as the cutout'],
            },
          ],
        },
        {
          does: 'wire',
          says: [
            'Wire both drivers so that their cones move the same way. A cell of 1.5 V shows which way each cone moves.',
          ],
          caution: 'mains',
        },
      ],
      touches: ['drivers'],
    }),
  ];
};

const all = (count: number): string => (count === 2 ? 'Both' : `All ${inWords(count)}`);

/** Tells several wirings apart. */
const branches = (series: number, parallel: number): string =>
  series === 1 ? 'all in parallel' : parallel === 1 ? 'all in series' : `${parallel} branches of ${series}`;

/** Every other wiring of the same drivers. */
export const otherWiring: Change = (now) => {
  const { standing } = now;
  const { driver, count, series: asIs, isobaric } = standing.drivers;
  const ways = Array.from({ length: count }, (_, i) => i + 1).filter(
    (series) => count % series === 0 && series !== asIs,
  );
  return ways.map((series) => {
    const parallel = count / series;
    return rowOf(now, {
      change: ways.length > 1 ? `another wiring, ${branches(series, parallel)}` : 'another wiring',
      what: [
        series === 1
          ? `${all(count)} in parallel`
          : parallel === 1
            ? `${all(count)} in series`
            : `${parallel} parallel branches of ${series} in series`,
      ],
      holds: ['tuning', 'length', 'volume'],
      after: { ...standing, drivers: group(driver, { series, parallel, isobaric }) },
      fitting: 'fits',
      effort: 0,
      steps: [
        { does: 'wire', says: ['Switch the amplifier off, and rewire the drivers.'], caution: 'mains' },
        checkingLoad,
      ],
      touches: ['wiring'],
    });
  });
};
