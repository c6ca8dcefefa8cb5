import { toJsonSchema } from '@valibot/to-json-schema';
import type * as v from 'valibot';

/** The JSON Schema of what a schema reads: made from the same code that reads it. */
export const jsonSchemaOf = (schema: v.GenericSchema): object =>
  // A text becomes a number halfway down its pipe; pattern and meaning stand behind that step and count as well.
  toJsonSchema(schema as never, { typeMode: 'ignore', ignoreActions: ['raw_transform'] });
