import { bendLossOf } from '../duct/bend-loss.js';
import { entranceLossOf } from '../duct/entrance-loss.js';
import { quadraticLossOf } from '../duct/flow-loss.js';
import { type FlowLoss, flanged, type LossRange, lossesTogether, type QuadraticLoss } from '../duct/index.js';
import { turbulentWallOf, unlessSmooth } from '../duct/turbulent-wall.js';
import { type Fault, refuse } from '../fault/index.js';
import { type LengthInput, notNegative, optional, readFieldsInto } from '../quantity/index.js';
import { hydraulicDiameter } from './opening-size.js';
import { geometry, type VentInput, ventField } from './vent-input.js';

export interface VentLossInput {
  readonly vent: VentInput;
  /** Height of the roughness of the walls; default 0, as of smooth plastic. Layers of a print are about as high as they are thick. */
  readonly roughness?: LengthInput | undefined;
}

/** A part of a vent that loses pressure, and its loss coefficient as a range: the mean of both directions. */
export interface LossPart extends LossRange {
  readonly part: 'inner end' | 'outer end' | 'bends';
}

/** The loss of a vent as a band, since published measurements of sound in tubes differ by more than a factor of five. */
export interface VentLoss {
  /** By the least published value of each end. */
  readonly low: FlowLoss;
  /** By the data of steady flow for these very ends: what tells one shape from another. */
  readonly nominal: FlowLoss;
  /** By the greatest published value of each end. */
  readonly high: FlowLoss;
  /** What the ends and bends of `nominal` lose, by direction: numbers for a simulation over time. */
  readonly quadratic: QuadraticLoss;
  readonly parts: readonly LossPart[];
}

const shape = { vent: ventField, roughness: optional(notNegative('length')) };

/**
 * The least loss of one end: nothing in by a wide rounded edge (harris1930), and all out. Sound in tubes was reported to lose as little
 * (atig2004, from memory).
 */
const END_LEAST = 0.5;
/** The greatest loss of one end that was reported of sound: thin sharp edges (atig2004). From memory alone; steady data end at 1.6. */
const END_MOST = 2.8;
/**
 * Flow out of an end loses all that it carries, whatever the shape of the edge: by the balance of momentum of a jet of one speed in
 * still air. Only a slender cone wins pressure back: above 50 to 60 degrees it does no better than a step (rennels2012), and a quarter round opens to more within half its radius.
 */
const EXIT = 1;

/**
 * What air that swings to and fro loses in a vent: at both ends, in its bends, and at its walls once they are turbulent.
 *
 * $$ K = \tfrac12\sum_{ends}(K_{in} + 1) + \sum_{bends} K_b,\qquad r = \frac{4}{3\pi}\rho K\hat u + r_{wall} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $K_{in}$ | `vent` | 1 | loss of flow into an end, by its rounding: `entranceLoss` |
 * | $K_b$ | `vent` | 1 | loss of a bend: `bendLoss`; of a slot by its short side, in whose plane it bends |
 * | $r_{wall}$ | `roughness` | Pa·s/m | what turbulent walls add: `turbulentWall` |
 *
 * These are data of steady flow. For sound in an open tube, one end was reported to lose between 0.5 (wide rounded edges) and 2.8
 * (thin sharp edges) times ½ρu², both from memory, so `low` and `high` use them whatever the shape. Steady data give the same 0.5 for the
 * best end; the 2.8 rests on memory alone. Programs of others hold 0.6 to 2 (read second-hand), within these.
 *
 * @validity speeds at which the air moves farther than the radius of the edges; below them the loss is less than `nominal`
 * @neglects pressure that a flow wins back in a flare: its exit loses 1, as that of every edge; jets that reach from one end to the
 *   other, ends near a wall, what several vents do to each other
 * @returns three losses and their parts
 * @throws InputError those of `effectiveLength`
 * @source idelchik1966 entrances; rennels2012 bends and exits; harris1930 the least loss of an end
 * @source atig2004 range of measured ends (from memory)
 * @example ventLoss({ vent: { diameter: '75 mm', length: '25 cm' } }).parts
 */
export function ventLoss(input: VentLossInput): VentLoss {
  const faults: Fault[] = [];
  const read = readFieldsInto(faults, '', input, shape);
  const form = read && geometry(faults, read.vent);
  if (form) faults.push(...unlessSmooth('roughness', hydraulicDiameter(form.inner), read!.roughness));
  refuse(faults);
  const { vent, roughness } = read!;
  const { inner, outer, innerEnd, outerEnd, bendRatio } = form!;
  const diameter = hydraulicDiameter(inner);
  const projects = innerEnd.flare === undefined && innerEnd !== flanged && inner.flangeRadius === undefined;
  const into = entranceLossOf(diameter, innerEnd.flare?.radius ?? 0, projects ? inner.wall : undefined);
  const back = entranceLossOf(hydraulicDiameter(outer), outerEnd.flare?.radius ?? 0);
  const { bend } = vent;
  const bends = bend === undefined ? 0 : (bend.count ?? 1) * bendLossOf(bend.angle, bendRatio / 2);
  const ofEnd = (part: 'inner end' | 'outer end', { nominal }: LossRange): LossPart => ({
    part,
    low: END_LEAST,
    nominal: (nominal + EXIT) / 2,
    high: END_MOST,
  });
  const parts: LossPart[] = [
    ofEnd('inner end', into),
    ofEnd('outer end', back),
    ...(bends > 0 ? [{ part: 'bends', low: bends, nominal: bends, high: bends } as const] : []),
  ];
  const walls = turbulentWallOf(diameter, vent.length, roughness);
  const quadratic = quadraticLossOf('ends and bends', into.nominal + EXIT + bends, back.nominal + EXIT + bends, [
    'idelchik1966',
    'rennels2012',
  ]);
  const published = (which: 'low' | 'high'): FlowLoss => {
    const sum = parts.reduce((total, part) => total + part[which], 0);
    return lossesTogether([quadraticLossOf('ends and bends', sum, sum, ['atig2004', 'rennels2012']), walls]);
  };
  return {
    low: published('low'),
    nominal: lossesTogether([quadratic, walls]),
    high: published('high'),
    quadratic,
    parts,
  };
}
