import type { ShapeChoice } from '@airspring/core/space';
import { standardAlignments } from '../brief/alignment.js';
import type { CoilChoice, DriverModels, SuspensionChoice } from '../brief/driver-models.js';
import { standardCoils, standardSuspensions } from '../brief/standard-models.js';
import type { AlignmentChoice } from '../job/alignment-choice.js';
import type { BoxKind } from './box-kind.js';
import type { FlareMaker } from './flare-form.js';
import { flaredVented, flaredVentedWith } from './flared-vented.js';
import { standard } from './standard.js';

/** What a brief may name: kinds of box, models of drivers, alignments, and shapes of the space. */
export interface BriefOptions {
  /**
   * Kinds of box that may be searched; default those of `standard`. The brief's `box.kinds` picks among them. Where the brief
   * leaves that out, every kind is tried, except those that are `byName`.
   */
  readonly kinds?: readonly BoxKind[];
  /** Models of voice coils that a driver may ask for as `coil`; default those of `standardCoils`. */
  readonly coils?: readonly CoilChoice[];
  /** Models of suspensions that a driver may ask for as `suspension`; default those of `standardSuspensions`. */
  readonly suspensions?: readonly SuspensionChoice[];
  /** Alignments that `alignment` may name, and with which 'compare' compares; default `standardAlignments`. */
  readonly alignments?: readonly AlignmentChoice[];
  /** Shapes that `space.shape` may ask for; default none. Those of `@airspring/workshop/shape` are `standardShapes`. */
  readonly shapes?: readonly ShapeChoice[];
  /**
   * What makes flares of vents that are no quarter rounds, for `flare.innerForm` and `flare.outerForm`; default none. The module
   * `@airspring/workshop/solid` is one.
   */
  readonly flares?: FlareMaker | undefined;
}

/** The same with everything that is left out. */
export const completeOptions = ({
  kinds = standard,
  coils = standardCoils,
  suspensions = standardSuspensions,
  alignments = standardAlignments,
  shapes = [],
  flares,
}: BriefOptions): {
  readonly kinds: readonly BoxKind[];
  readonly models: DriverModels;
  readonly alignments: readonly AlignmentChoice[];
  readonly shapes: readonly ShapeChoice[];
} => ({
  kinds: flares ? kinds.map((kind) => (kind === flaredVented ? flaredVentedWith(flares) : kind)) : kinds,
  models: { coils, suspensions },
  alignments,
  shapes,
});
