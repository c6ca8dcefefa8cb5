/** Cautions of the work, each where its step is taken; local codes and licensed people decide. */
export const cautions = {
  /** @source niosh98_126 recommended exposure limit */
  hearing:
    'Hearing: 85 dB(A) is the recommended limit for eight hours a day, and each 3 dB more halves the time (NIOSH 98-126). The levels here are for one metre; measure where people sit, and start low.',
  mains: 'Mains: leave the wiring of an amplifier to the mains to a licensed person, and follow the local code.',
  travel:
    'Driver: tones below the lowest safe frequency can tear the cone loose; protect it from them before the first loud test.',
  dust: 'Dust: wood and fibreboard dust harms the lungs and can burn; cut with extraction and a mask that fits.',
  fumes: 'Fumes: print and glue in a ventilated room.',
  weight: 'Weight: lift a finished box with two people, and fix it so that nobody can pull it over.',
} as const;

/** Those that concern a design of this loudness, in the order of the work. */
export const cautionsOf = (
  level: number,
  { printed, travels }: { readonly printed: boolean; readonly travels: boolean },
): string[] => [
  ...(level >= 85 ? [cautions.hearing] : []),
  ...(travels ? [cautions.travel] : []),
  cautions.mains,
  cautions.dust,
  ...(printed ? [cautions.fumes] : []),
  cautions.weight,
];
