import { type LineVentedBoxSpec, lineVentedBox, lineVentedFamily } from '@airspring/core/enclosure';
import type { Fault } from '@airspring/core/fault';
import { impossible } from '@airspring/core/fault';
import { si } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import { solidAngles } from '@airspring/core/room';
import { compileVentWithWaves, type VentSection, type VentWithWaves } from '@airspring/core/vent';
import * as v from 'valibot';
import { fieldsIn } from '../brief/kind-sections.js';
import type { DriverChoice, Job, Written } from '../job/job.js';
import { acousticsOf, type BoxKind, type Variant } from './box-kind.js';
import type { KindRecord } from './kind-record.js';
import type { Point } from './point.js';
import { type LengthFor, tuningBy } from './vent-length.js';
import type { Vents } from './vents.js';
import { capital } from './wording.js';

/** A tube that is hardly there, m. */
const LEAST = 1e-3;

/** Asks for vents in which waves travel. */
export const waves = v.exactOptional(
  v.pipe(
    v.boolean(),
    v.description(
      'true: the air in round vents that tune a box alone is computed as that of a pipe: waves travel along it, friction at its walls takes energy, and it resonates where half a wave fits. The search takes longer, no alignment suits such a box, and no recording can be played through it. Default false: the air moves as one mass',
    ),
  ),
);

/** Losses that a brief states by itself, although the pipe has them already. */
export function acrossWaves(written: Written, read: Partial<Job['sections']>): Fault[] {
  const { box, vent } = read as { box?: { QP?: number }; vent?: { waves?: boolean } };
  if (vent?.waves !== true || box?.QP === undefined) return [];
  const { QP: got } = written.box as { QP: unknown };
  const expected = 'no loss of the vent by itself, since vent.waves works out what its walls take';
  return [{ code: 'conflict', path: 'box.QP', got, expected, remedy: 'Leave one of the two out.' }];
}

/** Whether a brief asks for waves in vents. */
const asked = ({ sections }: Pick<Job, 'sections'>): boolean =>
  (sections as { readonly vent?: { readonly waves?: boolean } }).vent?.waves === true;

/** Whether waves travel in the vents of a kind of box, as the brief asks. */
export const hasWaves = (job: Pick<Job, 'sections'>, kind: BoxKind): boolean =>
  asked(job) && Object.hasOwn(fieldsIn(kind, 'vent'), 'waves');

/** Told of a box with vents of another kind, in which no waves are computed although the brief asks for them. */
export const wavesLeftOut = (job: Job, { kind, openings }: Variant, point: Point) =>
  asked(job) && !hasWaves(job, kind) && (openings?.(point) ?? []).some(({ length }) => length !== undefined)
    ? [
        {
          code: 'neglected' as const,
          text: `The brief asks for waves in vents (vent.waves). They are not computed for ${kind.called}: the air in each of its vents moves as one mass.`,
        },
      ]
    : [];

/** What a box is told of when waves travel in its vents. */
interface Waves {
  /** The length for a point: that of a pipe. */
  readonly lengthOf: (point: Point) => LengthFor;
  /** Its sound depends on the size of its vents as well. */
  readonly sound: Pick<Variant, 'system' | 'values' | 'align' | 'roomByPoint'>;
  readonly told: (
    point: Point,
    length: number,
  ) => Pick<KindRecord, 'numbers' | 'noAlignment' | 'assumed' | 'playing'> & { fb: number };
}

/** A box whose vents are pipes: `ventLength` is the length that its vents have at a point. */
export function ventWaves(
  job: Job,
  { drivers }: DriverChoice,
  vents: Vents,
  losses: { readonly QL: number; readonly QA?: number },
  ventLength: (point: Point) => number,
): Waves {
  const known = new Map<VentSection, VentWithWaves>();
  function ventOf(point: Point): VentWithWaves {
    const section = vents.section(point);
    let found = known.get(section);
    if (found === undefined) {
      found = compileVentWithWaves(section, job.air);
      known.set(section, found);
    }
    return found;
  }
  const lengthOf = (point: Point) => ventOf(point).length;
  function spec(point: Point, length = ventLength(point)): LineVentedBoxSpec {
    const { tube, shortest } = ventOf(point);
    return {
      drivers,
      netVolume: si('volume', point[0]!),
      ...losses,
      // Where no vent tunes so high, nothing is made; the numbers of the network must be some all the same.
      vent: { ...tube(Math.max(length, shortest + LEAST)), solidAngle: solidAngles.halfSpace },
      sourceResistance: si('resistance', job.amplifier.sourceResistance),
    };
  }

  function told(point: Point, length: number) {
    const [netVolume = 0, asked = 0] = point;
    const fb = tuningBy(lengthOf(point), netVolume, length, asked) ?? asked;
    const box = spec(point, length);
    const { vent } = box;
    const [one, all] = vent.count > 1 ? ['each vent', 'the vents'] : ['the vent', 'the vent'];
    const pipe = job.air.speedOfSound / (2 * (vent.length + vent.innerCorrection + vent.outerCorrection));
    const [lossy, lossless] = [box, { ...box, vent: { ...vent, wallLoss: 0 } }].map(
      (one) => respond(lineVentedBox(one, job.air), [fb]).levelHalfSpace[0]!,
    ) as [number, number];
    return {
      fb,
      numbers: [
        { what: `tone of ${one} as a pipe, where half a wave fits into it`, value: [[pipe, 'frequency']] as const },
        { what: `what the walls of ${all} take at the tuning`, value: [[lossless - lossy, 'level']] as const },
      ],
      playing: [
        [
          `${capital(one)} has a tone of its own at `,
          [pipe, 'frequency'],
          ', like a pipe. ',
          ...(pipe > job.wanted.highest
            ? ['Keep tones near it away from the box with a low-pass filter.']
            : [
                'That is within the band of the brief, so the level has a peak and a dip near it. If the dip is deeper than 3 dB, f3 is the frequency there.',
              ]),
        ] as const,
      ],
      noAlignment: [
        'An alignment is a shape of few poles. The waves in a vent have poles without end, so that no such box has one.',
      ],
      assumed: [
        [
          `The air in ${one} is computed as that of a straight pipe with smooth walls. Its bends, and waves in the box itself, are left out.`,
        ] as const,
      ],
    };
  }

  return {
    lengthOf,
    sound: {
      ...acousticsOf(lineVentedFamily, job, (point) => spec(point)),
      align: ({ name }) =>
        impossible(
          'other-order',
          `${name} is a shape of few poles; the waves in a vent have poles without end, so that no such box has it.`,
        ),
      roomByPoint: true,
    },
    told,
  };
}
