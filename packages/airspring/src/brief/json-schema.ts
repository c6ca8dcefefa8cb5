import { toJsonSchema } from '@valibot/to-json-schema';
import { briefSchema } from './schema.js';

/**
 * The JSON Schema of a brief, for editors: made from the same code that reads it.
 *
 * @example JSON.stringify(briefJsonSchema(), null, 2)
 */
export const briefJsonSchema = (): object =>
  // A text becomes a number halfway down its pipe; pattern and meaning stand behind that step and count as well.
  toJsonSchema(briefSchema, { typeMode: 'ignore', ignoreActions: ['raw_transform'] });
