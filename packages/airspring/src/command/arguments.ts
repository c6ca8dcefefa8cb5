import { parseArgs } from 'node:util';

/** What the command was asked to do. */
export type Asked =
  | { readonly what: 'help' }
  | { readonly what: 'schema' }
  | { readonly what: 'design'; readonly path: string; readonly json: boolean }
  | { readonly what: 'refused'; readonly line: string };

export const help = `airspring design <brief.json>          print the boxes that meet a brief
airspring design <brief.json> --json   the same as data, in SI units
airspring design --schema              the JSON Schema of a brief, for editors

A brief is a JSON file: drivers, space, what is wanted, amplifier, vent, printer.

Ends with
  0  when every wish is met
  1  when not: the report says why, and what could be asked instead
  2  when the brief or the command has a fault: one line each
  3  when the file of the brief cannot be read
  4  when the report cannot be written, for example on a full disk
  5  when the reader of the report closed the pipe before its end
  70 when this program has a fault of its own
  130 when it was stopped with Ctrl-C
`;

/** Reads the words after the command's name. */
export function readArguments(words: readonly string[]): Asked {
  let read: ReturnType<typeof parse>;
  try {
    read = parse(words);
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    return { what: 'refused', line: error.message.split('. ')[0] as string };
  }
  const { values, positionals } = read;
  const [verb, path, ...more] = positionals;
  if (values.help) return { what: 'help' };
  if (verb !== 'design') return { what: 'refused', line: `expected "design", got ${verb ? `"${verb}"` : 'nothing'}` };
  if (values.schema) return { what: 'schema' };
  if (path === undefined) return { what: 'refused', line: 'expected the path of a brief after "design"' };
  if (more.length > 0) return { what: 'refused', line: `expected one path, got also "${more.join('", "')}"` };
  return { what: 'design', path, json: values.json ?? false };
}

const parse = (words: readonly string[]) =>
  parseArgs({
    args: [...words],
    allowPositionals: true,
    options: { json: { type: 'boolean' }, schema: { type: 'boolean' }, help: { type: 'boolean', short: 'h' } },
  });
