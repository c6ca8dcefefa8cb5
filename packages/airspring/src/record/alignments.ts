import { type Deviation, nearestAlignments } from '@airspring/core/alignment';
import type { Impossible } from '@airspring/core/fault';
import type { Job } from '../job/job.js';
import type { AlignedPoint } from '../kind/box-kind.js';
import type { Box } from '../search/box.js';

/** How near a box comes to a named alignment, and how it differs from the box that has it. */
export interface NearAlignment {
  readonly name: string;
  readonly parameters: Readonly<Record<string, number>>;
  /** The level of this box against the nearest shape of the alignment, dB, and the band in which they are compared, Hz. */
  readonly deviation: Deviation;
  /** The box in which these drivers have the alignment, with the same losses; or why there is none. */
  readonly box:
    | {
        readonly ok: true;
        readonly parameters: Readonly<Record<string, number>>;
        readonly netVolume: number;
        readonly f3?: number;
      }
    | { readonly ok: false; readonly because: string };
}

/** What a goal that the brief asks for comes to: a number that is to be small, in a unit of its own. */
export interface ReachedGoal {
  readonly name: string;
  /** In the box of the design, whose edges are whole millimetres. */
  readonly value: number;
  /** The least value that these drivers reach, with the same losses, and the air that it takes, m³; or why there is none. */
  readonly least:
    | { readonly ok: true; readonly value: number; readonly netVolume: number }
    | { readonly ok: false; readonly because: string };
}

/** The number of alignments that are reported, the nearest ones. */
const TOLD = 3;

/**
 * Which alignments a box comes near to, the nearest first: those that have the order of its response, or the one that the brief
 * asks for. `undefined` where the brief does not ask, and where the kind does not say how alignments are found for it.
 */
export function alignmentsNear(job: Job, { variant, point }: Box): readonly NearAlignment[] | undefined {
  if (job.alignment === undefined || variant.align === undefined || goalOf(job) !== undefined) return undefined;
  const asked = job.alignment === 'compare' ? job.alignments : [job.alignment];
  const system = variant.system(point);
  const nearest = asked
    .flatMap((alignment) => nearestAlignments(system, [alignment]).map((near) => ({ near, alignment })))
    .sort((a, b) => a.near.deviation.rms - b.near.deviation.rms);
  const told: NearAlignment[] = [];
  for (const { near, alignment } of nearest) {
    if (told.length === TOLD) break;
    const box = variant.align(alignment, point, true);
    // A box can look like an alignment of another order by chance alone.
    if (!box.ok && box.because.some(({ code }) => code === 'other-order')) continue;
    const { parameters, deviation } = near;
    told.push({ name: near.alignment, parameters, deviation, box: boxTold(box) });
  }
  return told;
}

/** The alignment that a brief asks for, if its target is a goal. */
function goalOf({ alignment }: Job) {
  if (alignment === undefined || alignment === 'compare' || typeof alignment.target === 'function') return undefined;
  return { alignment, least: alignment.target.least };
}

/** What the goal of a brief comes to in a box. `undefined` where the brief asks for none. */
export function goalReached(job: Job, { variant, point }: Box): ReachedGoal | undefined {
  const goal = goalOf(job);
  if (goal === undefined || variant.align === undefined) return undefined;
  const found = variant.align(goal.alignment, point, true);
  return {
    name: goal.alignment.name,
    value: goal.least(variant.system(point)),
    least: found.ok
      ? { ok: true, value: found.least!, netVolume: found.point[0]! }
      : { ok: false, because: reasonsOf(found) },
  };
}

const reasonsOf = ({ because }: Impossible): string => because.map(({ text }) => text).join(' ');

function boxTold(found: AlignedPoint): NearAlignment['box'] {
  if (!found.ok) return { ok: false, because: reasonsOf(found) };
  const { parameters, f3, point } = found;
  return { ok: true, parameters, netVolume: point[0]!, ...(f3.ok && { f3: f3.frequency }) };
}
