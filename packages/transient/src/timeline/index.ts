/** What does a box do while a piece is played, which limits does it pass, and how much louder may the piece be? */
export { compileTimeline, type Timeline } from './timeline.js';
export type { BlockSimulation, Simulate, TimelineOptions } from './timeline-options.js';
export type { Hearing } from './hearing.js';
export type { TimelineVent } from './vent-noise-in-time.js';
export type { Slice } from './slice.js';
export type { LimitAccount, TimelineAccount } from './account.js';
/** How is a recording played through it? */
export { type PlayOptions, timelineOfRecording } from './timeline-of-recording.js';
