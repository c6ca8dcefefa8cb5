import {
  type Alignment,
  bandPass,
  bessel,
  boomBox,
  butterworth,
  chebyshev,
  criticallyDamped,
  fixedAt,
  interOrder,
  legendre,
  linkwitzRiley,
  lowShelf,
  quasiThirdOrder,
  subChebyshev,
  superBoomBox,
} from '@airspring/core/alignment';
import type { Fault } from '@airspring/core/fault';
import * as v from 'valibot';

/** The alignments that a brief may name when no others are passed in. */
export const standardAlignments: readonly Alignment[] = /* @__PURE__ */ [
  butterworth(2),
  bessel(2),
  criticallyDamped(2),
  quasiThirdOrder,
  butterworth(4),
  chebyshev(4),
  subChebyshev(4),
  bessel(4),
  legendre(4),
  interOrder(),
  boomBox,
  superBoomBox,
  linkwitzRiley,
  lowShelf(3),
  lowShelf(6),
  bandPass(),
  bandPass({ ripple: 0.5 }),
  bandPass({ ripple: 1.5 }),
];

/** What a brief may say of alignments, as it is written. */
export type WrittenAlignment =
  | 'compare'
  | { readonly name: string; readonly parameters?: Readonly<Record<string, number>> };

/** The field of a brief in which alignments are asked for. */
export const alignmentField = (alignments: readonly Alignment[]) =>
  v.exactOptional(
    v.pipe(
      v.union([
        v.literal('compare'),
        v.strictObject({
          name: v.pipe(
            v.picklist([...new Set(alignments.map(({ name }) => name))]),
            v.description('the alignment that every box must have: it decides the air and the tuning'),
          ),
          parameters: v.exactOptional(
            v.pipe(
              v.record(v.string(), v.number()),
              v.description('its parameters, such as the ripple in dB; default what the driver decides'),
              v.examples([{ ripple: 0.5 }]),
            ),
          ),
        }),
      ]),
      v.description(
        "'compare' tells which alignment each box comes near to; a name and parameters hold every box to one; default neither",
      ),
      v.examples(['compare']),
    ),
  );

/** What a brief without faults asks of alignments. */
export function alignmentAsked(
  asked: WrittenAlignment | undefined,
  alignments: readonly Alignment[],
): Alignment | 'compare' | undefined {
  if (asked === undefined || asked === 'compare') return asked;
  const { name, parameters = {} } = asked;
  for (const one of alignments.filter((alignment) => alignment.name === name)) {
    const fixed = fixedAt(one, parameters);
    if (fixed.ok) return fixed.alignment;
  }
  return undefined;
}

type Read = { readonly [Field in keyof Exclude<WrittenAlignment, 'compare'>]?: unknown };

/** Faults of the parameters of an alignment, and of other fields that it decides. */
export function faultsOfAlignment(
  read: 'compare' | Read | undefined,
  box: { readonly tuning?: unknown } | undefined,
  alignments: readonly Alignment[],
): Fault[] {
  if (typeof read !== 'object') return [];
  const named = alignments.filter(({ name }) => name === read.name);
  const parameters = (read.parameters ?? {}) as Readonly<Record<string, number>>;
  const tried = named.map((one) => fixedAt(one, parameters));
  const reasons = tried.some(({ ok }) => ok) ? [] : tried.flatMap((one) => (one.ok ? [] : one.because));
  const [reason] = reasons;
  return [
    ...(reason
      ? [
          {
            code: 'inconsistent' as const,
            path: `alignment.parameters.${reason.code}`,
            got: parameters[reason.code],
            expected: reasons.map(({ text }) => text.replace(/\.$/, '')).join('; '),
            remedy: 'Correct the parameter, or leave it out.',
          },
        ]
      : []),
    ...(box?.tuning === undefined || read.name === undefined
      ? []
      : [
          {
            code: 'conflict' as const,
            path: 'box.tuning',
            got: box.tuning,
            expected: 'no tuning, since the alignment decides it',
            remedy: 'Remove one of the two.',
          },
        ]),
  ];
}
