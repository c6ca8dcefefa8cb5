import type { BriefFor } from '../brief/schema.js';
import { aperiodic } from './aperiodic.js';
import { bandPass } from './band-pass.js';
import { capacitorBoxKind } from './capacitor.js';
import { closed } from './closed.js';
import { flaredVented } from './flared-vented.js';
import { foldedLine } from './line.js';
import { openBaffle } from './open-baffle.js';
import { parallelBandPass } from './parallel-band-pass.js';
import { radiatorBox } from './radiator.js';
import { seriesBandPass } from './series-band-pass.js';
import { slotVented } from './slot-vented.js';
import { steppedLine } from './stepped-line.js';
import { taperedLine } from './tapered-line.js';
import { vented } from './vented.js';

/** The kinds of box that a brief may name when no others are passed in. Those that are `byName` are tried only where it names them. */
export const standard = [
  closed,
  vented,
  slotVented,
  flaredVented,
  radiatorBox,
  capacitorBoxKind,
  aperiodic,
  bandPass,
  parallelBandPass,
  seriesBandPass,
  foldedLine,
  steppedLine,
  taperedLine,
  openBaffle,
] as const;

/** A brief for these kinds as it stands in a file. */
export type Brief = BriefFor<typeof standard>;
