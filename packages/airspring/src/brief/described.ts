import * as v from 'valibot';

/** A field of a brief with what the list of fields says of it. Its type keeps what is written and what is read, and nothing more. */
export const described = <const S extends v.GenericSchema>(
  schema: S,
  text: string,
): v.GenericSchema<v.InferInput<S>, v.InferOutput<S>> => v.pipe(schema, v.description(text));
