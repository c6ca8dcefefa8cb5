/** Into how much of space does a small source radiate, and what do walls that it touches change? */
export { type SolidAngleGain, solidAngleGain, solidAngles } from './solid-angle.js';
/** How much does a wall reflect? */
export { absorbing, type Reflection, rigid } from './reflection.js';
/** How much more or less power does a box radiate near walls? */
export { boundaryPower } from './boundary-power.js';
export type { WallInput } from './walls.js';
/** What do walls near a box change at a listener? */
export { type CornerInput, compileCorner } from './corner.js';
/** At which frequencies does a rectangular room resonate? */
export { type RoomMode, type RoomModesInput, roomModes } from './modes.js';
/** How does a closed room or cabin lift the bass below its first mode? */
export {
  compilePressureZone,
  type PressureZoneInput,
  pressureZoneCorner,
  type RoomGainInput,
} from './pressure-zone.js';
/** What is the trend of the level in a room, from its lowest frequencies to the free field? */
export { compileRoomGain } from './room-gain.js';
/** How loud is a box, or an acoustic power, at a distance? */
export {
  levelAtDistance,
  type LevelAtDistanceInput,
  levelOfPower,
  type LevelOfPowerInput,
} from './level-at-distance.js';
/** What do distance, delay, polarity and level change at a listener? */
export { compilePath, type PathInput } from './path.js';
/** How do several boxes add up at a listener? */
export { type SourceInput, sumAtListener } from './sum-at-listener.js';
/** How do a level and a phase become a sound pressure, and how does it become a level? */
export { gainLevel, type LevelAndPhase, pressureLevel, soundPressure } from './pressure.js';
/** What does a main speaker do at low frequencies? */
export { type MainSpeaker, mainPressure } from './main-speaker.js';
/** How do a bass box and a main speaker add up about their crossing? */
export { type Crossing, type Joined, type JoinedInput, type JoinInput, joinMains } from './join-mains.js';
/** Which delay and polarity let a box and a main speaker add best? */
export { type BestDelay, type BestDelayInput, bestDelay, type Delayed } from './best-delay.js';
