import type { Alignment } from '@airspring/core/alignment';
import type { DriverChoice } from '../job/job.js';
import type { BoxKind, Variant } from '../kind/box-kind.js';
import type { Point } from '../kind/point.js';

/** Boxes in which an alignment cannot be had, and why. */
export interface Unsuited {
  readonly kind: BoxKind;
  readonly choice: DriverChoice;
  readonly because: string;
}

/** The net volume of a box of whole millimetres is that of its alignment within this share. */
const WITHIN = 0.01;

/** Any point of a variant: what an alignment leaves open is the same at all. */
const anyPoint = ({ choice, acoustic, geometric, span }: Variant): Point => [
  choice.completed.parameters.Vas,
  ...[...acoustic, ...geometric, ...(span ? [span] : [])].map(({ from }) => from),
];

/** A variant whose boxes all have the net volume and the acoustic values of an alignment, or why it has no such boxes. */
function heldTo(alignment: Alignment, variant: Variant): Variant | string {
  const found = variant.align?.(alignment, anyPoint(variant));
  if (found === undefined) return `${variant.kind.called} does not say how alignments are found for it`;
  if (!found.ok) return found.because.map(({ text }) => text.replace(/\.$/, '')).join('. ');
  const [netVolume = 0, ...acoustic] = found.point;
  return {
    ...variant,
    netVolume,
    acoustic: variant.acoustic.map((axis, i) => {
      const value = acoustic[i];
      return value === undefined ? axis : { ...axis, from: value, to: value };
    }),
    settle: (airBefore, point, inner) => {
      const settled = variant.settle(airBefore, point, inner);
      return settled && Math.abs(settled[0]! / netVolume - 1) <= WITHIN ? settled : undefined;
    },
  };
}

/** Variants held to an alignment; those in which it cannot be had stand apart. */
export function aligned(
  alignment: Alignment,
  variants: readonly Variant[],
): { readonly variants: readonly Variant[]; readonly unsuited: readonly Unsuited[] } {
  const held = variants.map((variant) => heldTo(alignment, variant));
  return {
    variants: held.filter((one) => typeof one !== 'string'),
    unsuited: held.flatMap((because, i): Unsuited[] => {
      const { kind, choice } = variants[i] as Variant;
      return typeof because === 'string' ? [{ kind, choice, because }] : [];
    }),
  };
}
