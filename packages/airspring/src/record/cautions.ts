const LOUD =
  'Hearing: loud sound damages hearing for good. The recommended limit is 85 dB(A) for eight hours a day, and each 3 dB more halves the time (NIOSH 98-126).';
const START = 'Start at a low level, and measure where people sit.';

/** Cautions for the work, each given at its step. Local codes and licensed people have the last word. */
export const cautions = {
  /** @source niosh98_126 recommended exposure limit */
  hearing: `${LOUD} The levels here are for a distance of 1 m. ${START}`,
  /** @source niosh98_126 recommended exposure limit */
  hearingThere: `${LOUD} The levels here are for where the listener sits. Nearer to the box it is louder: keep people away from it while it plays. ${START}`,
  mains: 'Mains: have a licensed person connect the amplifier to the mains, and follow the local code.',
  travel:
    'Driver: tones that drive a cone beyond its safe travel can destroy the driver. Protect it from them before the first loud test.',
  dust: 'Dust: dust of wood and fibreboard harms the lungs and can catch fire. Cut with dust extraction, and wear eye protection and a mask that fits.',
  fumes: 'Fumes: printing and gluing give off fumes. Work in a ventilated room.',
  byEye:
    'Low level, ears, fingers: this check needs very little sound. A deep tone that sounds soft can still move a cone far, and too far. Keep your ears away from the vent, and your fingers off the cone and out of the vent while it plays.',
  weight: 'Weight: lift the finished box with two people, and secure it so that nobody can pull it over.',
} as const;

/** The cautions that a design of this loudness needs, in the order of the work. */
export const cautionsOf = (
  level: number,
  {
    printed,
    travels,
    there = false,
  }: {
    readonly printed: boolean;
    readonly travels: boolean /** Whether the levels are those at a listener. */;
    readonly there?: boolean;
  },
): string[] => [
  ...(level >= 85 ? [there ? cautions.hearingThere : cautions.hearing] : []),
  ...(travels ? [cautions.travel] : []),
  cautions.mains,
  cautions.dust,
  ...(printed ? [cautions.fumes] : []),
  cautions.weight,
];
