/** What a number in a phrase means, and so in which unit it is printed. */
export type Meaning =
  | 'length'
  | 'bareLength'
  | 'volume'
  | 'mass'
  | 'frequency'
  | 'edge'
  | 'level'
  | 'ratio'
  | 'airSpeed'
  | 'travel'
  | 'voltage'
  | 'current'
  | 'power'
  | 'impedance'
  | 'capacitance'
  | 'acousticResistance';

/** A sentence as data: words, and quantities in SI units, which are printed in the units of the reader. */
export type Phrase = readonly (string | readonly [value: number, meaning: Meaning])[];

/** The unit of the travel of cones: a centimetre is too long for it. */
export const travelUnitOf = (length: 'mm' | 'cm' | 'in'): 'mm' | 'in' => (length === 'in' ? 'in' : 'mm');
