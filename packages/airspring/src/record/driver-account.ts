import { NANOMETRE } from '@airspring/core/quantity';
import type { DriverChoice, Job } from '../job/job.js';
import type { Phrase } from '../kind/phrase.js';
import type { DriverAccount } from './answer.js';

/** How each driver of a brief was completed from its data. */
export const accountsOf = ({ choices }: Job): DriverAccount[] =>
  [...new Map(choices.map((choice) => [choice.driverIndex, choice])).values()].map((choice) => ({
    name: choice.name,
    parameters: { ...choice.completed.parameters } as unknown as Record<string, number>,
    derived: choice.completed.derived.map(({ field, value, by }) => ({ field, value, by })),
    deviations: choice.completed.deviations.map(({ field, given, implied, relative }) => ({
      field,
      given,
      implied,
      relative,
    })),
    blocked: choice.completed.blocked.map(({ what, missing }) => `${what}: ${missing.join(', ')} is missing`),
    assumed: [...assumedOfDriver(choice), ...widerThanCutout(choice)],
  }));

/**
 * A cone that is wider than the cutout. It is possible, since Sd counts the surround up to its middle, and a surround may lie over the
 * edge of the hole. More often one of the two numbers is wrong, and the hole would be sawn by it.
 */
function widerThanCutout({ completed: { driver } }: DriverChoice): Phrase[] {
  const { Sd, cutoutDiameter } = driver;
  const width = 2 * Math.sqrt(Sd / Math.PI);
  if (cutoutDiameter === undefined || width <= cutoutDiameter + NANOMETRE) return [];
  return [
    [
      'Its Sd is that of a disc ',
      [width, 'length'],
      ' wide, but its cutout is only ',
      [cutoutDiameter, 'length'],
      ' wide. Both can be true only where the surround lies over the edge of the hole. Check both numbers before you saw.',
    ],
  ];
}

/** What was assumed of a driver, and its range. */
export function assumedOfDriver({ estimated, sensitivity }: DriverChoice): Phrase[] {
  if (sensitivity !== undefined) {
    const { given, implied } = sensitivity;
    return [
      [
        'Its sheet states a sensitivity of ',
        [given, 'level'],
        ', and its other data lead to ',
        [implied, 'level'],
        '. Only the other data are used.',
      ],
    ];
  }
  if (estimated === undefined) return [];
  const { sensitivity: level, sensitivityAt, within, Vas, Re } = estimated;
  return [
    [
      'Its sheet does not give Vas. Vas was computed from the sensitivity, ',
      [level, 'level'],
      ` at ${sensitivityAt}, 1 m and half space, which is assumed to be right within `,
      [within, 'level'],
      ' (common practice). So Vas is assumed to be ',
      [Vas.value, 'volume'],
      ', and may lie between ',
      [Vas.from, 'volume'],
      ' and ',
      [Vas.to, 'volume'],
      '.',
    ],
    ...(Re
      ? [
          [
            'Its sheet does not give Re. It is assumed to be ',
            [Re.value, 'impedance'],
            ', 0.8 times the nominal impedance, and may lie between ',
            [Re.from, 'impedance'],
            ' and ',
            [Re.to, 'impedance'],
            ' (common practice). Measure it with an ohmmeter.',
          ] as const,
        ]
      : []),
  ];
}
