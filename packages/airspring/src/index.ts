/** What comes back? */
export type {
  Answer,
  At,
  Curves,
  Design,
  DesignVent,
  DriverAccount,
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
