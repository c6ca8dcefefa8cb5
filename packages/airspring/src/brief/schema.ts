import * as v from 'valibot';
import { amplifierFields } from './amplifier.js';
import { air, audible, coil, decibels, edge, most, ohms, oneOrMore, Q, size, wall } from './bounds.js';
import type { BriefPart, Fields, WrittenFields } from './fields.js';
import { mediumFields } from './medium.js';
import { plainNumber, quantity, wholeNumber, words } from './quantity-text.js';
import { seatingFields } from './seating.js';
import { sensitivityFields } from './sensitivity.js';

const opt = <const S extends v.GenericSchema>(schema: S) => v.exactOptional(schema);
const titled = words(200, 'The whale bench');
const said = <const S extends v.GenericSchema>(schema: S, text: string) => v.pipe(schema, v.description(text));
const dose = (what: string) => opt(said(plainNumber(0, 100), `how much ${what} counts; default 1`));
const EDGES = ['width', 'height', 'depth'] as const;

/** A driver to choose from: the data of its sheet, and its sizes. */
export const driverFields = {
  name: said(words(200, 'ten-inch driver'), 'what the report calls it'),
  fs: opt(said(quantity('frequency', audible), 'resonance in free air')),
  Qts: opt(said(Q, 'quality factor of motor and suspension together')),
  Qes: opt(said(Q, 'quality factor of the motor')),
  Qms: opt(said(Q, 'quality factor of the suspension')),
  Vas: opt(said(quantity('volume', air), 'volume of air as compliant as the suspension')),
  Sd: opt(said(quantity('coneArea', { least: 0.1, greatest: 20_000, unit: 'cm²' }), 'area that moves air')),
  coneDiameter: opt(
    said(quantity('length', { ...size, example: '205 mm' }), 'in place of Sd: cone and half the surround, across'),
  ),
  Mms: opt(
    said(quantity('mass', { least: 0.01, greatest: 10_000, unit: 'g' }), 'moving mass with the air that moves with it'),
  ),
  Cms: opt(said(quantity('compliance', { least: 1e-4, greatest: 1000, unit: 'mm/N' }), 'compliance of the suspension')),
  Rms: opt(
    said(
      quantity('mechanicalResistance', { least: 1e-3, greatest: 1e4, unit: 'N·s/m' }),
      'mechanical resistance of the suspension',
    ),
  ),
  Re: opt(said(quantity('resistance', ohms), 'resistance of the voice coil for direct current')),
  Bl: opt(said(quantity('forceFactor', { least: 0.01, greatest: 1000, unit: 'T·m' }), 'force factor of the motor')),
  Le: opt(said(quantity('inductance', coil), 'inductance of the voice coil; default none')),
  R2: opt(said(quantity('resistance', ohms), 'resistance beside L2, of the eddy currents; default none')),
  L2: opt(said(quantity('inductance', coil), 'second inductance of the voice coil, beside R2; default none')),
  Xmax: said(
    quantity('displacementPeak', { least: 0.001, greatest: 200, unit: 'mm' }),
    'greatest travel of the cone to one side',
  ),
  Pe: said(
    quantity('power', { least: 0.001, greatest: 100_000, unit: 'W' }),
    'power that the voice coil can turn into heat for long',
  ),
  outerDiameter: said(quantity('length', { ...size, example: '262 mm' }), 'diameter of the frame'),
  cutoutDiameter: said(quantity('length', { ...size, example: '232 mm' }), 'diameter of the hole in the panel'),
  depth: said(quantity('length', { ...size, example: '118 mm' }), 'how deep it reaches from the outside of the panel'),
  displacedVolume: opt(
    said(
      quantity('volume', { least: 1e-4, greatest: 1000, unit: 'L', example: '1.6 L' }),
      'air that it takes inside the box; default an estimate from cutout and depth',
    ),
  ),
} as const;

/** A driver to choose from, and the wirings in which it may be used. */
const driver = v.strictObject({
  ...driverFields,
  ...sensitivityFields,
  wirings: opt(
    v.pipe(
      v.array(
        v.strictObject({
          series: opt(said(wholeNumber(1, 4), 'how many stand in series in each branch; default 1')),
          parallel: opt(said(wholeNumber(1, 4), 'how many branches are in parallel; default 1')),
          isobaric: opt(said(v.boolean(), 'whether each two drivers stand one behind the other; default false')),
        }),
      ),
      v.minLength(1, 'empty\nat least one wiring\nGive one, or leave the field out for a single driver.'),
      most(),
      v.description('how many of this driver, and how they are wired; each wiring is tried; default one driver'),
    ),
  ),
  ...seatingFields,
});

/** The fields of every brief, whatever kinds of box are tried. */
const sections = {
  $schema: opt(said(words(2000, './brief.schema.json'), 'the address of the JSON Schema, for editors')),
  version: said(v.literal(1), 'the version of this form of brief'),
  title: said(titled, 'heads the report'),
  note: opt(
    v.pipe(
      v.string(),
      v.maxLength(20_000, 'out-of-range\na text of at most 20000 characters\nShorten it.'),
      v.description('for people; nothing reads it'),
      v.examples(['Measured in May.']),
    ),
  ),
  drivers: v.pipe(
    v.array(driver),
    v.minLength(1, 'empty\nat least one driver\nAdd a driver.'),
    most(),
    v.description('the drivers to choose from, with the data of their sheets'),
  ),
  air: opt(said(v.strictObject(mediumFields), 'the air around and in the box; default 20 °C, 101.325 kPa, 50 %')),
  space: said(
    v.strictObject({
      width: v.pipe(quantity('length', edge), v.description('greatest outer width of the box')),
      height: v.pipe(quantity('length', edge), v.description('greatest outer height of the box')),
      depth: v.pipe(quantity('length', edge), v.description('greatest outer depth of the box')),
      volume: opt(v.pipe(quantity('volume', air), v.description('greatest outer volume of the box; default no limit'))),
      exactly: opt(
        v.pipe(
          oneOrMore(v.picklist(EDGES), 'an edge'),
          v.description('outer edges that the box must have exactly, not at most; default none'),
        ),
      ),
      panelThickness: v.pipe(quantity('length', wall), v.description('thickness of every panel')),
      bracing: opt(
        v.pipe(
          quantity('volume', { least: 0, greatest: 10_000, unit: 'L', example: '0.5 L' }, 'not-negative'),
          v.description('volume of the bracing inside the box; default none'),
        ),
      ),
      cutoutPlay: opt(
        v.pipe(
          quantity('length', { least: 0, greatest: 50, unit: 'mm', example: '2 mm' }, 'not-negative'),
          v.description(
            'clear space kept around each cutout, so that the basket still fits if the saw slips; default 2 mm',
          ),
        ),
      ),
    }),
    'the room that the box may take',
  ),
  wanted: said(
    v.strictObject({
      lowest: v.pipe(quantity('frequency', audible), v.description('lowest frequency of the programme')),
      highest: v.pipe(
        quantity('frequency', { ...audible, example: '120 Hz' }),
        v.description('highest frequency that this box has to play'),
      ),
      safeFrom: opt(
        v.pipe(
          quantity('frequency', audible),
          v.description(
            'from here upwards travel, heat, air speed and amplifier must hold at the wanted level; default wanted.lowest',
          ),
        ),
      ),
      level: v.pipe(
        quantity('level', decibels),
        v.description('level of a steady sine at every frequency of the band, at 1 m in half space'),
      ),
      fall: opt(
        v.pipe(
          quantity('level', { ...decibels, example: '6 dB' }),
          v.description('how far the response may have fallen at the lowest frequency; default half power (3 dB)'),
        ),
      ),
      rise: opt(
        v.pipe(
          quantity('level', { ...decibels, example: '1.5 dB' }),
          v.description('how far the response may rise above its reference; default 1.5 dB'),
        ),
      ),
    }),
    'the sound that is wanted',
  ),
  amplifier: said(v.strictObject(amplifierFields), 'what the amplifier can give'),
  units: opt(
    said(
      v.strictObject({
        length: opt(said(v.picklist(['mm', 'cm', 'in']), 'unit of lengths in the report; default mm')),
        volume: opt(said(v.picklist(['L', 'ft³', 'in³']), 'unit of volumes in the report; default L')),
      }),
      'how the report writes numbers',
    ),
  ),
  weights: opt(
    said(
      v.strictObject({
        deep: dose('depth of sound'),
        loud: dose('loudness'),
        small: dose('a small box'),
        simple: dose('little work'),
      }),
      'how much each criterion counts where boxes meet every wish',
    ),
  ),
};

const emptyList = 'empty\nat least one kind of box\nName one, or leave the field out.';

/** One schema for a field that several kinds may have, with what each kind says about it. */
function fieldOf(name: string, section: string, parts: readonly BriefPart[]): v.GenericSchema {
  const owners = parts.filter((part) => Object.hasOwn(fieldsIn(part, section), name));
  const [first, ...others] = owners.map((part) => fieldsIn(part, section)[name] as v.GenericSchema);
  const said = [
    ...new Set(owners.map((part) => descriptionOf(part, section, name)).filter((one) => one !== undefined)),
  ];
  const schema = first as v.GenericSchema;
  if (others.length === 0 || said.length < 2) return schema;
  const all = said.map((text) => {
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
  const rest = others?.length === 0 ? '' : `. These are tried only where they are named: ${names(others)}`;
  return `default ${names(tried)}${rest}`;
}

/** The sections to which kinds of box add fields, each with the fields of all kinds. */
function sectionsOf(parts: readonly BriefPart[]): Record<string, v.GenericSchema> {
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
      if (whole !== undefined) return [section, opt(whole as v.GenericSchema)];
      const fields = [...new Set(parts.flatMap((part) => Object.keys(fieldsIn(part, section))))];
      const own = Object.fromEntries(fields.map((name) => [name, fieldOf(name, section, parts)]));
      const entries = { ...(section === 'box' && { kinds: opt(kinds) }), ...own };
      const owners = parts.filter((part) => Object.keys(fieldsIn(part, section)).length > 0).map(({ name }) => name);
      const what =
        section === 'box' ? 'the kinds of box to try, and what they share' : `fields of the kinds ${owners.join(', ')}`;
      return [section, opt(said(v.strictObject(entries) as unknown as v.GenericSchema, what))];
    }),
  );
}

/**
 * The schema of a brief for these kinds of box. Types, checks and the JSON Schema for editors all come from it.
 *
 * @example v.parse(briefSchema(kinds), brief)
 */
export const briefSchema = (parts: readonly BriefPart[]) =>
  v.strictObject({ ...sections, ...sectionsOf(parts) }) as unknown as v.GenericSchema<unknown, ReadBrief>;

/** The same with further sections, for a box that stands already: such a brief needs no space for a new box. */
export const schemaWith = (parts: readonly BriefPart[], more: v.ObjectEntries) =>
  v.strictObject({ ...sections, space: opt(sections.space), ...sectionsOf(parts), ...more });

const base = v.strictObject(sections);

/** A brief for boxes of these kinds, as it is written in a file. */
export type BriefFor<Parts extends readonly BriefPart[]> = v.InferInput<typeof base> & {
  readonly box?: { readonly kinds?: readonly string[] };
} & WrittenFields<Parts>;

/** The same with every quantity read. It also holds the fields of kinds, which only their kind knows. */
export type ReadBrief = v.InferOutput<typeof base> & { readonly box?: { readonly kinds?: readonly string[] } };
