/** What comes back? */
export type {
  Answer,
  Asked,
  At,
  Curves,
  Design,
  DesignVent,
  DriverAccount,
  Guard,
  Hole,
  Margin,
  Met,
  NotMet,
  Panel,
  Stretch,
} from './answer.js';
/** Which schema do editors check a brief with? */
export { briefJsonSchema } from './brief/json-schema.js';
/** What may a brief say? */
export { type Brief, briefSchema } from './brief/schema.js';
/** From a brief to boxes: the whole job. */
export { design } from './design.js';
/** What does the report say, and how do the curves look in text? */
export { sketchText } from './report/sketch.js';
export { reportText } from './report/text.js';
