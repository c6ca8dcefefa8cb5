import { isInputError } from '@airspring/core/fault';
import { compileLengthForTuning } from '@airspring/core/vent';
import type { Phrase } from '../kind/phrase.js';
import type { Standing, StandingVent, Tube, Way } from './standing.js';
import { ventOf } from './state.js';
import { wayBehind } from './way.js';

const MM = 1e-3;
/** Free room between a tube and its hole, all round. */
const PLAY = 0.5e-3;
/** Of a printed tube, where a brief does not say it. */
export const WALL = 3e-3;

export const outerOf = ({ diameter, wall }: Pick<Tube, 'diameter' | 'wall'>): number => diameter + 2 * wall;
/** Air that each metre of tubes takes, m². */
export const sectionTaken = (tube: Omit<Tube, 'length'>): number => (tube.count * Math.PI * outerOf(tube) ** 2) / 4;

/**
 * The length for which tubes of this section alone tune the box; whole millimetres. `undefined` where no length does, or where
 * core refuses the sizes.
 */
export function lengthOrNone(
  { job, airBeforeVents, panelThickness: t, tuningRatio }: Standing,
  section: Omit<Tube, 'length'>,
  fb: number,
  air = airBeforeVents,
): number | undefined {
  const { length: _, ...core } = ventOf({ ...section, length: 1 });
  let lengthAt: ReturnType<typeof compileLengthForTuning>;
  try {
    lengthAt = compileLengthForTuning(core, job.air);
  } catch (error) {
    if (!isInputError(error)) throw error;
    return undefined;
  }
  const taken = sectionTaken(section);
  let length = t;
  for (let i = 0; i < 60; i++) {
    const net = air - taken * Math.max(0, length - t);
    if (!(net > 0.2 * air)) return undefined;
    const next = lengthAt(net, fb / tuningRatio);
    if (Math.abs(next - length) < 1e-7) {
      const whole = Math.round(next / MM) * MM;
      return whole > t ? whole : undefined;
    }
    length = next;
  }
  return undefined;
}

/** The hole that a tube passes, and how it is made. */
export interface Passage {
  readonly hole: number;
  readonly how: 'as it is' | 'joined inside' | 'enlarged' | 'freehand';
}

/** The smallest hole that a tube passes: the one that is there, or one that a saw at hand makes larger. */
export function passageOf({ workshop: { holeSaws } }: Standing, hole: number, outer: number): Passage {
  if (outer <= hole + 1e-9) return { hole, how: 'as it is' };
  const saw = holeSaws.find((diameter) => diameter >= outer - 1e-9);
  return saw === undefined ? { hole: outer + 2 * PLAY, how: 'freehand' } : { hole: saw, how: 'enlarged' };
}

/** The widest bore of a tube, its wall, and how it gets in. */
export interface Bore {
  readonly bore: number;
  readonly wall: number;
  readonly passage: Passage;
  /** A pipe at hand has this bore and no other. */
  readonly fixed?: true;
}

/**
 * The ways to a tube behind a hole: through the hole as it is; glued to the panel from inside, as wide as the hole, brought in
 * through a cutout; through the hole made larger by each saw; and every pipe that passes one of these holes.
 */
export function boresFor(standing: Standing, { hole }: StandingVent): Bore[] {
  const { workshop, drivers } = standing;
  const { cutoutDiameter = 0 } = drivers.driver;
  const asItIs: Passage = { hole, how: 'as it is' };
  const sawn = workshop.holeSaws
    .filter((saw) => saw > hole + 1e-9)
    .map((saw): Passage => ({ hole: saw, how: 'enlarged' }));
  const bore = Math.floor(hole / MM + 1e-6) * MM;
  const inside: Bore = { bore, wall: WALL, passage: { hole, how: 'joined inside' } };
  return [
    ...[asItIs, ...sawn].map((passage): Bore => ({ bore: boreFor(passage.hole), wall: WALL, passage })),
    ...(bore + 2 * WALL <= cutoutDiameter ? [inside] : []),
    ...workshop.pipes.flatMap(({ inner, outer }): Bore[] => {
      const passage = [asItIs, ...sawn].find((one) => outer <= one.hole + 1e-9);
      return passage ? [{ bore: inner, wall: (outer - inner) / 2, passage, fixed: true }] : [];
    }),
  ];
}

/** The bore of a printed tube that passes a hole, down to whole millimetres. */
export const boreFor = (hole: number, wall = WALL): number => Math.floor((hole - 2 * wall - 2 * PLAY) / MM + 1e-6) * MM;

/** Pieces that a printer makes of one length. */
const piecesOf = ({ workshop: { printer } }: Standing, length: number): number =>
  Math.max(1, Math.ceil(length / printer.height - 1e-9));

/** How a tube stands behind its hole: straight, bent, or not at all. */
export type Stance =
  | { readonly fitting: 'fits'; readonly bent: boolean }
  | { readonly fitting: 'measure'; readonly bent: boolean }
  | {
      readonly fitting: 'does not fit';
      readonly way: { readonly diameter: number; readonly needed: number; readonly free: number };
    };

export function stanceOf(standing: Standing, vent: StandingVent | undefined, tube: Tube): Stance {
  const way = wayOf(standing, vent, tube);
  if (way === undefined) return { fitting: 'measure', bent: false };
  const fitting = way.certain ? ('fits' as const) : ('measure' as const);
  if (tube.length <= way.straight + 1e-9) return { fitting, bent: false };
  // A bent tube is at least as long as panel and elbow.
  const least = standing.panelThickness + (Math.PI / 2) * outerOf(tube);
  if (tube.length >= least && tube.length <= way.bent() + 1e-9) return { fitting, bent: true };
  return {
    fitting: 'does not fit',
    way: { diameter: tube.diameter, needed: tube.length, free: Math.max(way.straight, way.bent()) },
  };
}

const wayOf = (standing: Standing, vent: StandingVent | undefined, tube: Tube): Way | undefined =>
  wayBehind(standing, vent?.place, {
    outerDiameter: outerOf(tube),
    clearance: tube.diameter,
    bendRadius: outerOf(tube),
  });

/** The steps to put a tube in. */
export function tubeSteps(standing: Standing, tube: Tube, bent: boolean, passage: Passage): Phrase[] {
  const outer = outerOf(tube);
  const printed = tube.length - (passage.how === 'joined inside' ? standing.panelThickness : 0);
  const pieces = piecesOf(standing, printed);
  const pipe = standing.workshop.pipes.find(
    (one) => Math.abs(one.inner - tube.diameter) < 1e-6 && Math.abs(one.outer - outer) < 1e-6,
  );
  const made: Phrase = pipe
    ? ['Cut the pipe of ', [tube.diameter, 'length'], ' inner diameter to ', [tube.length, 'length'], '.']
    : [
        `Print ${tube.count > 1 ? `${tube.count} tubes` : 'a tube'} of `,
        [tube.diameter, 'length'],
        ' inner and ',
        [outer, 'length'],
        ' outer diameter, ',
        [printed, 'length'],
        ' long',
        // The hole is a part of the vent: both lengths are told, so that neither is taken for the other.
        ...(printed < tube.length ? [' (', [tube.length, 'length'] as const, ' with the panel)'] : []),
        pieces > 1 ? `, in ${pieces} pieces of ` : '',
        ...(pieces > 1 ? ([[printed / pieces, 'length']] as const) : []),
        '. Print and glue in a ventilated room.',
      ];
  const hole: Phrase[] =
    passage.how === 'as it is'
      ? [['It fits through the existing hole.']]
      : passage.how === 'joined inside'
        ? [
            [
              'Take a driver out, bring the tube in through the cutout, and glue it to the inside of the panel around the hole. The hole itself is the first ',
              [standing.panelThickness, 'length'],
              ' of the vent.',
            ],
          ]
        : passage.how === 'enlarged'
          ? [
              [
                'Enlarge the hole with the ',
                [passage.hole, 'length'],
                ' saw. A hole saw has nothing to centre on in an open hole: clamp a board with a hole of that size over it as a guide, and wear eye protection and a dust mask.',
              ],
            ]
          : [
              [
                'None of your saws makes the hole that it needs, ',
                [passage.hole, 'length'],
                '. Rout the hole along a template. Wear eye protection and a dust mask.',
              ],
            ];
  const cutout = standing.drivers.driver.cutoutDiameter ?? 0;
  const elbow: Phrase[] = bent
    ? [
        outer <= cutout
          ? [
              'Join the elbow inside: take a driver out, and pass the elbow through its cutout, which is ',
              [cutout, 'length'],
              ' wide.',
            ]
          : ['The elbow is wider than the cutouts: take a panel off to put it in.'],
      ]
    : [];
  return [made, ...hole, ...elbow];
}
