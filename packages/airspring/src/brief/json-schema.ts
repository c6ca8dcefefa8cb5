import { toJsonSchema } from '@valibot/to-json-schema';
import type { BriefPart } from './fields.js';
import { briefSchema } from './schema.js';

/** The JSON Schema of a brief in which these kinds of box can be tried: made from the same code that reads it. */
export const jsonSchemaOf = (kinds: readonly BriefPart[]): object =>
  // A text becomes a number halfway down its pipe; pattern and meaning stand behind that step and count as well.
  toJsonSchema(briefSchema(kinds) as never, { typeMode: 'ignore', ignoreActions: ['raw_transform'] });
