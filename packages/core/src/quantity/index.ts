/** How is a record of quantities read, with all its faults reported at once? */
export {
  anySign,
  count,
  type Field,
  type Fields,
  given,
  nested,
  notNegative,
  oneOf,
  type OptionalField,
  optional,
  positive,
  readFields,
  readFieldsInto,
  type Shape,
} from './fields.js';
/** How is a quantity written for people? */
export { decimalText, format, inUnit } from './format.js';
/** How are the frequencies of a calculation given? */
export { type FrequencyGrid, frequencyGrid, logarithmicGrid } from './frequency-grid.js';
/** What does a number mean? */
export * from './quantity.js';
/** How is a single quantity read? */
export { read, readInto, type Sign, unitList } from './read.js';
/** Which kinds and units are there? */
export { type KindDefinition, kinds, type Unit } from './units.js';
/** By how much may two lengths differ that count as the same? */
export { NANOMETRE } from './nanometre.js';
