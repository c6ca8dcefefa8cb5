import { toJsonSchema } from '@valibot/to-json-schema';
import { briefSchema } from './schema.js';

/**
 * The JSON Schema of a brief, for editors: made from the same code that reads it.
 *
 * @example JSON.stringify(briefJsonSchema(), null, 2)
 */
export const briefJsonSchema = (): object =>
  toJsonSchema(briefSchema, {
    typeMode: 'input',
    ignoreActions: ['raw_transform'],
    overrideAction: ({ valibotAction, jsonSchema }) => {
      if (valibotAction.type !== 'metadata') return undefined;
      const { pattern } = (valibotAction as unknown as { metadata: { pattern?: string } }).metadata;
      return pattern === undefined ? undefined : { ...jsonSchema, pattern };
    },
  });
