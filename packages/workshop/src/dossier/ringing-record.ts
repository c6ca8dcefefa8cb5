import type { BoxPanelResonance, BraceInput } from '../panel/index.js';
import type { BraceAxis } from './brace-place.js';

/** The window brace that is proposed, or cut where the workshop asks for it. */
export interface ChosenBrace {
  readonly across: BraceAxis;
  /** Its middle, from the left, bottom or front outer edge of the box, m. */
  readonly at: number;
  readonly border: number;
  /** Its wood, m³: what it takes from the air. */
  readonly volume: number;
  /** The panels with it, in the order of those without. */
  readonly panels: readonly BoxPanelResonance[];
  /** The lowest first resonance of the panels that it stands on with half of its border, Hz. */
  readonly narrow: number;
  /** As the panels of the box take it. */
  readonly input: BraceInput;
}

/** A panel as a plate, by its face or, of a box that is no cuboid, by its name. */
export type RingingPanel = Omit<BoxPanelResonance, 'face'> & { readonly face: string };

/** Where the panels of a box ring, alone and with a brace; or why none is made. */
export interface Ringing {
  /** Left out where they are too short to be plates. */
  readonly panels?: readonly RingingPanel[];
  /** What is known of the panels that are not among these, a sentence each. */
  readonly untold?: readonly string[];
  /** What the boards inside are called that the panels are held by. */
  readonly dividing?: readonly string[];
  readonly brace?: ChosenBrace;
  /** Why there is no brace, as the end of a sentence. */
  readonly because?: string;
}
