const limits: Readonly<Record<string, string>> = {
  travel: 'the travel of the cone',
  heat: 'the heat of the voice coil',
  vent: 'the air in the vent',
  'amplifier voltage': 'the voltage of the amplifier',
  'amplifier current': 'the current of the amplifier',
};

/** What gives out, as it stands in a sentence of its own. */
export const limitInWords = (binding: string): string => limits[binding] ?? binding;
