import type { Phrase } from '../kind/phrase.js';
import type { Printer } from '../kind/printed-tube.js';
import type { cautions } from '../record/cautions.js';
import type { Legs } from './standing.js';
import type { Tube } from './tube.js';

/** What is done at a bench, in the order in which a box is changed. */
export const works = ['measure', 'buy', 'take out', 'cut', 'drill', 'print', 'fit', 'wire', 'set'] as const;
export type Work = (typeof works)[number];

/** A tube that is printed, with all of its sizes, m. */
export interface MadeTube extends Omit<Tube, 'count'> {
  /** Place of its vent in the brief. */
  readonly vent: number;
  readonly hole: number;
  readonly how: 'as it is' | 'joined inside' | 'enlarged' | 'freehand';
  /** How it bends; 'somewhere' where places are not known. */
  readonly bend?: Legs | 'somewhere';
  /** The usual printer that its pieces are for, where the brief states none. */
  readonly printer?: Printer;
}

/** What a board is for, with the size that follows from that, m. */
export type MadeBoard =
  | { readonly covers: number }
  | { readonly guides: number }
  | { readonly plugs: number }
  | { readonly sides: readonly [number, number] };

/** Something that is made or bought. */
export interface Part {
  readonly what: string;
  readonly made: 'print' | 'cut' | 'buy';
  readonly count: number;
  readonly size: Phrase;
  readonly tube?: MadeTube;
  readonly board?: MadeBoard;
}

/** A hole that is cut or made larger. */
export type NewHole = { readonly what: string } & (
  | { readonly form: 'circle'; readonly diameter: number }
  | { readonly form: 'rectangle'; readonly sides: readonly [number, number] }
);

/** One step of a change, with what it makes and the caution that is due at it. */
export interface Step {
  readonly does: Work;
  readonly says: Phrase;
  /** Of tubes that are printed: into which pieces, and how these are joined. */
  readonly making?: Phrase;
  /** It is about the tubes: a further change of them replaces it. */
  readonly ofTubes?: true;
  readonly caution?: keyof typeof cautions;
  readonly parts?: readonly Part[];
  readonly holes?: readonly NewHole[];
}

/** The same steps in the order of the work; equal ones once. */
export const inOrder = (steps: readonly Step[]): Step[] =>
  works.flatMap((work) => [
    ...new Map(
      steps.filter(({ does }) => does === work).map((step) => [JSON.stringify([step.says, step.parts]), step]),
    ).values(),
  ]);
