import * as v from 'valibot';
import { most } from './bounds.js';
import type { BriefPart, Fields } from './fields.js';

const emptyList = 'empty\nat least one kind of box\nName one, or leave the field out.';

/** One schema for a field that several kinds may have, with what each kind says about it. */
function fieldOf(name: string, section: string, parts: readonly BriefPart[]): v.GenericSchema {
  const owners = parts.filter((part) => Object.hasOwn(fieldsIn(part, section), name));
  const [first, ...others] = owners.map((part) => fieldsIn(part, section)[name] as v.GenericSchema);
  const texts = [
    ...new Set(owners.map((part) => descriptionOf(part, section, name)).filter((one) => one !== undefined)),
  ];
  const schema = first as v.GenericSchema;
  if (others.length === 0 || texts.length < 2) return schema;
  const all = texts.map((text) => {
    const names = owners.filter((part) => descriptionOf(part, section, name) === text).map((part) => part.name);
    return `For ${names.join(', ')}: ${text}`;
  });
  const described = v.pipe(unwrapped(schema), v.description(all.join('. ')));
  return schema.type === 'exact_optional' ? v.exactOptional(described) : described;
}

const unwrapped = (schema: v.GenericSchema): v.GenericSchema =>
  'wrapped' in schema ? (schema.wrapped as v.GenericSchema) : schema;
const descriptionOf = (part: BriefPart, section: string, name: string): string | undefined =>
  v.getDescription(unwrapped(fieldsIn(part, section)[name] as v.GenericSchema) as never);

/** The fields of a kind in a section. There are none where the whole section is one schema. */
export const fieldsIn = ({ fields }: BriefPart, section: string): Readonly<Record<string, v.GenericSchema>> => {
  const own = fields[section] ?? {};
  return isSchema(own) ? {} : own;
};
const isSchema = (part: Fields[string]): part is v.GenericSchema => part.kind === 'schema';

/** Which kinds are tried where a brief names none. */
function triedText(parts: readonly BriefPart[]): string {
  const [tried, others] = [false, true].map((byName) => parts.filter((part) => (part.byName ?? false) === byName));
  const names = (list: readonly BriefPart[] = []) => list.map(({ name }) => name).join(', ');
  if (tried?.length === 0) return 'each must be named';
  const rest = others?.length === 0 ? '' : `. These are tried only if they are named: ${names(others)}`;
  return `default ${names(tried)}${rest}`;
}

/** The sections to which kinds of box add fields, each with the fields of all kinds. */
export function sectionsOf(parts: readonly BriefPart[]): Record<string, v.GenericSchema> {
  const names = [...new Set(['box', ...parts.flatMap(({ fields }) => Object.keys(fields))])];
  const kinds = v.pipe(
    v.array(v.picklist(parts.map(({ name }) => name))),
    v.minLength(1, emptyList),
    most(),
    v.description(`kinds of box to try; ${triedText(parts)}`),
  );
  return Object.fromEntries(
    names.map((section) => {
      const whole = parts.map(({ fields }) => fields[section]).find((own) => own !== undefined && isSchema(own));
      if (whole !== undefined) return [section, v.exactOptional(whole as v.GenericSchema)];
      const fields = [...new Set(parts.flatMap((part) => Object.keys(fieldsIn(part, section))))];
      const own = Object.fromEntries(fields.map((name) => [name, fieldOf(name, section, parts)]));
      const entries = { ...(section === 'box' && { kinds: v.exactOptional(kinds) }), ...own };
      const owners = parts.filter((part) => Object.keys(fieldsIn(part, section)).length > 0).map(({ name }) => name);
      const what =
        section === 'box'
          ? 'the kinds of box to try, and what they share'
          : `fields of the ${owners.length > 1 ? 'kinds' : 'kind'} ${owners.join(', ')}`;
      return [
        section,
        v.exactOptional(v.pipe(v.strictObject(entries) as unknown as v.GenericSchema, v.description(what))),
      ];
    }),
  );
}
