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
  sixthOrderBandPass,
  subChebyshev,
  superBoomBox,
} from '@airspring/core/alignment';
import { type Fault, isInputError } from '@airspring/core/fault';
import * as v from 'valibot';
import type { AlignmentChoice } from '../job/alignment-choice.js';

/** The alignments that a brief may name when no others are passed in. */
export const standardAlignments: readonly AlignmentChoice[] = /* @__PURE__ */ [
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
  { ...lowShelf(3), made: ({ depth = 3 }) => lowShelf(depth) },
  lowShelf(6),
  {
    ...bandPass(),
    takes:
      'Q from 0.1 to 3 (of the driver in its closed chamber); S from 0.1 to below 1, or ripple up to 14 dB in its place',
    made: ({ ripple, ...rest }) => bandPass(ripple ? { ripple, ...rest } : rest),
  },
  bandPass({ ripple: 0.5 }),
  bandPass({ ripple: 1.5 }),
  { ...sixthOrderBandPass(), made: ({ ripple }) => sixthOrderBandPass(ripple ? { ripple } : {}) },
  sixthOrderBandPass({ ripple: 0.5 }),
  sixthOrderBandPass({ ripple: 1.5 }),
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

type Parameters = Readonly<Record<string, number>>;

/** An alignment with the parameters of a brief, or the faults of these. */
function withParameters(one: AlignmentChoice, parameters: Parameters): Alignment | readonly Fault[] {
  const at = (parameter: string) => `alignment.parameters.${parameter}`;
  try {
    const { made, ...plain } = one;
    const fixed = fixedAt(made && Object.keys(parameters).length > 0 ? made(parameters) : plain, parameters);
    if (fixed.ok) return fixed.alignment;
    const remedy = 'Correct the parameter, or leave it out.';
    return fixed.because.map(({ code, text }) => {
      const expected = `what the alignment allows: ${text.replace(/\.$/, '')}`;
      return { code: 'inconsistent', path: at(code), got: parameters[code], expected, remedy };
    });
  } catch (error) {
    if (!isInputError(error)) throw error;
    return error.faults.map((fault) => ({ ...fault, path: at(fault.path.split('.').at(-1)!) }));
  }
}

const isFound = (tried: Alignment | readonly Fault[]): tried is Alignment => 'target' in tried;

/** What a brief without faults asks of alignments. */
export function alignmentAsked(
  asked: WrittenAlignment | undefined,
  alignments: readonly AlignmentChoice[],
): Alignment | 'compare' | undefined {
  if (asked === undefined || asked === 'compare') return asked;
  const { name, parameters = {} } = asked;
  return alignments
    .filter((one) => one.name === name)
    .map((one) => withParameters(one, parameters))
    .find(isFound);
}

type Read = { readonly [Field in keyof Exclude<WrittenAlignment, 'compare'>]?: unknown };

/** Why none of the alignments of a name has some parameters: one of any shape says it best, and else each says it. */
function faultsOfParameters(named: readonly AlignmentChoice[], parameters: Parameters): readonly Fault[] {
  const tried = named.map((one) => withParameters(one, parameters));
  if (tried.some(isFound)) return [];
  const faults = tried as readonly (readonly Fault[])[];
  const maker = named.findIndex(({ made }) => made);
  if (maker >= 0) return faults[maker]!;
  const all = faults.flat();
  return all.slice(0, 1).map((fault) => ({ ...fault, expected: all.map(({ expected }) => expected).join('; ') }));
}

/** Faults of the parameters of an alignment, and of other fields that it decides. */
export function faultsOfAlignment(
  read: 'compare' | Read | undefined,
  box: { readonly tuning?: unknown } | undefined,
  alignments: readonly AlignmentChoice[],
): Fault[] {
  if (typeof read !== 'object') return [];
  return [
    ...faultsOfParameters(
      alignments.filter(({ name }) => name === read.name),
      (read.parameters ?? {}) as Parameters,
    ),
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
