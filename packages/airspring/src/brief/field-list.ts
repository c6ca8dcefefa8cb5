import type * as v from 'valibot';

/** One field of a brief, as data. */
export interface BriefField {
  /** Where it stands: `drivers[].fs`, `space.width`. */
  readonly path: string;
  /** What it is, in words. */
  readonly what: string;
  /** Whether every brief with its section must have it. */
  readonly needed: boolean;
  /** What it takes: 'a record', 'a text', 'true or false', 'a length', 'one of mm, cm, in'. */
  readonly takes: string;
  /** The units that a quantity may have. */
  readonly units?: readonly string[];
  /** The least and the greatest value, with its unit. */
  readonly range?: string;
  /** What counts where it is left out. */
  readonly default?: string;
  /** As it may stand in a brief; records have none. */
  readonly example?: string | number | boolean | readonly unknown[];
}

/** The parts of a schema that are read here. */
interface Parts {
  readonly type: string;
  readonly entries?: Readonly<Record<string, Parts>>;
  readonly item?: Parts;
  readonly items?: readonly Parts[];
  readonly wrapped?: Parts;
  /** Of a choice of texts; or of schemas, where one of several is taken. */
  readonly options?: readonly (string | Parts)[];
  readonly literal?: unknown;
  readonly pipe?: readonly (Parts & {
    readonly requirement?: number;
    readonly description?: string;
    readonly examples?: readonly unknown[];
  })[];
  readonly quantity?: { readonly of: string; readonly units: readonly string[]; readonly range?: string };
}

/** Every action of the pipes of a schema, those of inner pipes first. */
const actionsOf = (schema: Parts): NonNullable<Parts['pipe']> =>
  (schema.pipe ?? []).flatMap((part) => (part === schema.pipe?.[0] && part.pipe ? actionsOf(part) : [part]));

const last = <Name extends 'description' | 'examples' | 'requirement'>(schema: Parts, type: string, name: Name) =>
  actionsOf(schema).findLast((action) => action.type === type)?.[name];

/** The default that a description tells after its last semicolon. */
const SPLIT = /^(?:(.*); )?default ((?:(?!; ).)*)$/s;

/** The schemas of which one is taken; a single one for most fields. */
const waysOf = (schema: Parts): readonly Parts[] =>
  schema.type === 'union' ? (schema.options as readonly Parts[]) : [schema];

function takes(schema: Parts): string {
  const { type, options, literal, quantity, items } = schema;
  if (type === 'union') return waysOf(schema).map(takes).join(', or ');
  if (quantity) return `a text: ${quantity.of}`;
  if (options) return `one of ${options.join(', ')}`;
  if (type === 'literal') return String(literal);
  if (type === 'array' || items) return 'a list';
  if (type === 'strict_object' || type === 'record') return 'a record';
  if (type === 'boolean') return 'true or false';
  const whole = actionsOf(schema).some((action) => action.type === 'integer');
  return type === 'number' ? `a ${whole ? 'whole ' : ''}number` : 'a text';
}

const quantityOf = (schema: Parts) => waysOf(schema).find((way) => way.quantity)?.quantity;

function rangeOf(schema: Parts): string | undefined {
  const [least, greatest] = [last(schema, 'min_value', 'requirement'), last(schema, 'max_value', 'requirement')];
  return quantityOf(schema)?.range ?? (least === undefined ? undefined : `${least} to ${greatest}`);
}

function exampleOf(schema: Parts): BriefField['example'] {
  const given = last(schema, 'examples', 'examples');
  if (given) return given[0] as string;
  if (schema.type === 'union') return exampleOf(waysOf(schema)[0] as Parts);
  if (schema.options) return schema.options[0] as string;
  if (schema.type === 'literal') return schema.literal as number;
  if (schema.type === 'boolean') return true;
  const items = schema.items ?? (schema.item ? [schema.item] : []);
  const within = items.map(exampleOf);
  return within.length > 0 && within.every((one) => one !== undefined) ? within : undefined;
}

/** Every field of a schema in its order, each record before its fields. */
export function fieldsOf(given: v.GenericSchema, path = ''): BriefField[] {
  const whole = given as unknown as Parts;
  const schema = whole.wrapped ?? whole;
  const described = last(schema, 'description', 'description') ?? '';
  const [, before, byDefault] = SPLIT.exec(described.startsWith('For ') ? '' : described) ?? [];
  const quantity = quantityOf(schema);
  const [range, example] = [rangeOf(schema), exampleOf(schema)];
  const own: BriefField = {
    path,
    what: byDefault === undefined ? described : (before ?? ''),
    needed: whole.wrapped === undefined,
    takes: takes(schema),
    ...(quantity && { units: quantity.units }),
    ...(range !== undefined && { range }),
    ...(byDefault !== undefined && { default: byDefault }),
    ...(example !== undefined && { example }),
  };
  const record = schema.item?.entries ?? waysOf(schema).find((way) => way.entries)?.entries ?? {};
  const at = (name: string) => (path === '' ? name : `${path}${schema.item ? '[]' : ''}.${name}`);
  const inner = Object.entries(record).flatMap(([name, part]) => fieldsOf(part as never, at(name)));
  return path === '' ? inner : [own, ...inner];
}
