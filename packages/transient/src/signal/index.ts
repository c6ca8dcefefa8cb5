/** What is a signal that can be made at any place? */
export type { Signal, SignalBlock } from './signal.js';
/** What is a steady tone? */
export { type SineInput, sine } from './sine.js';
/** Which short tone shows the greatest output at a frequency? */
export { burstCycles, type ShapedBurstInput, shapedBurst } from './shaped-burst.js';
/** Which tone passes through all frequencies of a band? */
export { type SweepInput, sweep } from './sweep.js';
/** Which noise has equal power in each octave? */
export { type NoiseInput, pinkNoise } from './pink-noise.js';
/** Which noise has the spectrum of programme? */
export {
  type ProgrammeWeight,
  type SimulatedProgrammeInput,
  simulatedProgramme,
  simulatedProgrammeWeights,
} from './simulated-programme.js';
/** How are signals made louder, added or limited? */
export { clipped, scaled, summed } from './combine.js';
/** How is the power of a signal or a recording spread over frequency, and how far do its peaks stand out? */
export {
  compileListening,
  type Listening,
  type ListeningOptions,
  type MeasuredProgramme,
  type ProgrammeOptions,
  programmeOf,
} from './programme.js';
export type { Band } from './third-octaves.js';
export type { Heard, Spectrum } from './welch.js';
/** Does a signal of your own obey its laws? */
export { signalLaws } from './signal-laws.js';
