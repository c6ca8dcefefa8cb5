import { type BendAfter, type CentreLine, centreLine } from './centre-line.js';
import type { Section } from './cross-section.js';
import type { Flare } from './flare.js';

/** The flange of a drawn vent, in plain SI numbers. */
export interface DrawnFlange {
  /** How far it reaches beyond the clear cross-section, m. */
  readonly reach: number;
  readonly thickness: number;
  readonly screws?: {
    readonly count: number;
    readonly diameter: number;
    readonly circle?: number;
    readonly head?: number;
  };
}

/** A vent as it is drawn, in plain SI numbers: what a printed one is compared with. */
export interface VentDrawing {
  readonly section: Section;
  readonly length: number;
  readonly wall: number;
  readonly nozzle: number;
  readonly outerFlare?: Flare;
  readonly innerFlare?: Flare;
  readonly flange?: DrawnFlange;
  readonly bends: readonly BendAfter[];
  readonly fineness: number;
}

/** The centre line of a drawn vent. */
export const lineOf = ({ length, bends }: VentDrawing): CentreLine => centreLine(length, bends);
