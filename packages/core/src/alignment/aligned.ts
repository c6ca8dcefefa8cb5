import type { Air } from '../air/index.js';
import { type Family, kept, type System, systemOf } from '../enclosure/index.js';
import { type Impossible, impossible } from '../fault/index.js';
import type { Filter } from '../filter/index.js';
import type { CompiledTopology } from '../network/index.js';
import { si } from '../quantity/index.js';
import { crossingsOf, cutoffAmong, levelToCross } from '../response/cutoff.js';
import type { Cutoff, CutoffOptions } from '../response/index.js';
import type { Alignment } from './alignment.js';
import type { Deviation } from './deviation.js';
import { type Behind, filterOf } from './high-pass.js';

/** A box of an alignment. */
export interface Aligned<Spec> {
  readonly alignment: string;
  /** The parameters of the alignment: those that are fixed, and the one that the driver decided. */
  readonly parameters: Readonly<Record<string, number>>;
  readonly system: System<Spec>;
  /** The auxiliary high-pass, if one was sought. */
  readonly highPass?: Filter;
  /** The frequency of the target, Hz: the geometric mean of the magnitudes of its poles. A goal has none. */
  readonly frequency?: number;
  /** The whole response against that of the target; a goal has none. */
  readonly deviation?: Deviation;
  /** What a goal comes to in this box: the least value that was found. A shape has none. */
  readonly least?: number;
  /**
   * Where the level is half power down. It is sought up to three octaves above `frequency`, or to the end of the band of the
   * deviation if the level has fallen again there. A shape that droops slowly may reach it as far as six octaves above.
   */
  readonly f3: Cutoff;
  /** The upper edge of a band-pass. Both edges are the outermost frequencies of half power below its greatest level. */
  readonly upper?: Cutoff;
}

/**
 * The boxes of an alignment for a driver that are reached from the starts of the family, or why there is none. The first follows
 * from that without losses.
 */
export type AlignmentResult<Spec> =
  | (Aligned<Spec> & { readonly ok: true; readonly others: readonly Aligned<Spec>[] })
  | Impossible;

/** The band in which f3 is sought, as multiples of a frequency near it; the last where a shape droops slowly or a band is wide. */
const [LOWEST, HIGHEST, FARTHEST] = [1 / 16, 8, 64];
/** Number of points of this band: a response of few poles is smooth between them. */
const POINTS = 100;

/** What a search found: a box, the frequency and the parameters of its target, and how far it is from it. */
export interface Found<Spec> {
  readonly trial: Behind<Spec>;
  /** A frequency near f3, Hz; that of the target where there is one. */
  readonly near: number;
  readonly parameters?: Readonly<Record<string, number>> | undefined;
  readonly deviation?: Deviation;
  readonly least?: number;
  /** Its topology, compiled before. */
  readonly compiled?: CompiledTopology;
  /** Whether the level falls above the band as well. */
  readonly bandPass: boolean;
}

/** The box that a search found, as it is told, with f3 of the whole response. */
export function alignedBox<Spec>(
  { name, parameters: fixed }: Alignment,
  family: Family<Spec, never>,
  air: Air,
  { trial, near, parameters = fixed, deviation, least, compiled, bandPass }: Found<Spec>,
): Aligned<Spec> {
  const { highPass, ...box } = trial;
  const system = systemOf(family, box as never, air);
  if (compiled !== undefined) kept(system, 'topology', () => compiled);
  const filter = highPass && filterOf(highPass);
  const bandUpTo = (ratio: number, lowest = LOWEST): CutoffOptions => {
    const [from, to] = [si('frequency', lowest * near), si('frequency', ratio * near)];
    return { from, to, ...(filter && { filter }) };
  };
  return {
    alignment: name,
    parameters,
    system,
    ...(filter && { highPass: filter }),
    ...(deviation && { frequency: near, deviation }),
    ...(least !== undefined && { least }),
    ...(bandPass ? bothEdges() : { f3: corner() }),
  };
  function corner(): Cutoff {
    const f3 = cutoffAmong(system, bandUpTo(HIGHEST), POINTS);
    // A coil may let the level fall far above the corner.
    if (f3.ok || deviation === undefined) return f3;
    const nearer = cutoffAmong(system, bandUpTo(deviation.to / near), POINTS);
    if (nearer.ok) return nearer;
    const farther = cutoffAmong(system, bandUpTo(FARTHEST), POINTS);
    return farther.ok ? farther : nearer;
  }
  function bothEdges(): Edges {
    const found = edges(system, bandUpTo(1 / LOWEST)) ?? edges(system, bandUpTo(FARTHEST, 1 / FARTHEST));
    if (found !== undefined) return found;
    const none = impossible('beyond-band', 'an edge of the band is more than six octaves from its middle');
    return { f3: none, upper: none };
  }
}

interface Edges {
  readonly f3: Cutoff;
  readonly upper: Cutoff;
}

/**
 * Both edges of a band-pass: the outermost, where a dip between its tops is lower than they are. `undefined` where one of them is not
 * among the frequencies of the options.
 */
function edges(system: System, options: CutoffOptions): Edges | undefined {
  const crossed = levelToCross(system, { ...options, reference: 'maximum' }, undefined, POINTS);
  const { levels, wanted } = crossed;
  if (levels[0]! >= wanted || levels[levels.length - 1]! >= wanted) return undefined;
  const found = crossingsOf(crossed);
  const [lower, upper] = [found[0], found.at(-1)];
  if (lower === undefined || upper === undefined) return undefined;
  return { f3: { ok: true, frequency: lower }, upper: { ok: true, frequency: upper } };
}
