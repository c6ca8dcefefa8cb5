import { readdirSync, readFileSync } from 'node:fs';
import { standardShapes } from '@airspring/workshop/shape';
import { briefJsonSchema, design, standardAlignments } from 'airspring';
import { Ajv } from 'ajv';
import { expect, test } from 'vitest';
import { readBrief } from '../../../packages/airspring/src/brief/read.js';
import { standardModels } from '../../../packages/airspring/src/brief/standard-models.js';
import { standard } from '../../../packages/airspring/src/kind/standard.js';
import { readStanding, stands } from '../../../packages/airspring/src/standing/read.js';

const briefs = new URL('../../../packages/airspring/briefs/', import.meta.url);
const briefOf = (name: string) => JSON.parse(readFileSync(new URL(name, briefs), 'utf8'));
const validate = new Ajv({ allErrors: true }).compile(briefJsonSchema({ shapes: standardShapes }));

test.each(readdirSync(briefs))('a validator and our reader accept %s', (name) => {
  validate(briefOf(name));
  expect(validate.errors).toBeNull();
  const read = (brief: unknown) =>
    stands(brief)
      ? readStanding(brief, standard)
      : readBrief(brief, standard, standardModels, standardAlignments, standardShapes);
  expect(() => read(briefOf(name))).not.toThrow();
});

// biome-ignore lint/suspicious/noExplicitAny: a brief broken on purpose has no type
type Broken = Record<string, any>;
const broken: readonly [string, path: string, (brief: Broken) => void][] = [
  ['a quantity without a unit', 'space.width', (b) => (b.space.width = '480')],
  ['a unit of another kind', 'space.width', (b) => (b.space.width = '480 Hz')],
  ['a unit with a letter more', 'amplifier.voltage', (b) => (b.amplifier.voltage = '25 Volt')],
  ['two blanks', 'space.depth', (b) => (b.space.depth = '420  mm')],
  ['a hexadecimal number', 'space.depth', (b) => (b.space.depth = '0x1A mm')],
  ['a number for a quantity', 'wanted.level', (b) => (b.wanted.level = 92)],
  ['a quantity for a number', 'drivers[0].Qts', (b) => (b.drivers[0].Qts = '0.36')],
  ['a number out of range', 'drivers[0].Qts', (b) => (b.drivers[0].Qts = 0)],
  ['half a bend', 'vent.bends', (b) => (b.vent.bends = 0.5)],
  ['an unknown field', 'vent.colour', (b) => (b.vent.colour = 'red')],
  ['an unknown face', 'vent.faces[0]', (b) => (b.vent.faces = ['inside'])],
  ['an empty list', 'drivers', (b) => (b.drivers = [])],
  ['a missing field', 'wanted.lowest', (b) => delete b.wanted.lowest],
  ['a missing section', 'amplifier', (b) => delete b.amplifier],
  ['another version', 'version', (b) => (b.version = 2)],
  ['an empty title', 'title', (b) => (b.title = '')],
];

test.each(broken)('both refuse %s', (_, path, change) => {
  const brief = briefOf('whale-bench.json');
  change(brief);
  expect(validate(brief)).toBe(false);
  expect(() => design(brief)).toThrowError(
    expect.objectContaining({
      code: 'airspring-input',
      faults: expect.arrayContaining([expect.objectContaining({ path })]),
    }),
  );
});

test('a quantity says its units, and what it stands for', () => {
  const { properties } = briefJsonSchema() as { properties: { space: { properties: { width: object } } } };
  expect(properties.space.properties.width).toMatchObject({
    title: 'length: a number and one of m, mm, cm, in, ft',
    description: 'greatest outer width of the box',
    pattern: expect.stringContaining('(m)|(mm)|(cm)'),
  });
});

const spellings: readonly [path: string, text: string, strict: string][] = [
  ['space.width', '480\u00a0mm', '480 mm'],
  ['space.width', '480\u202fmm', '480 mm'],
  ['space.width', '48cm', '48 cm'],
  ['space.width', '10 1/4 in', '10.25 in'],
  ['space.width', '10\u00a01/4\u00a0in', '10.25 in'],
  ['space.panelThickness', '3/4 in', '0.75 in'],
  ['space.panelThickness', '3/4"', '0.75 in'],
  ['space.volume', '70 l', '70 L'],
  ['space.volume', '45L', '45 L'],
  ['space.volume', '0.07 m3', '0.07 m³'],
  ['space.volume', '0.07 m^3', '0.07 m³'],
  ['space.volume', '1.5 cu ft', '1.5 ft³'],
  ['air.temperature', '20 ºC', '20 °C'],
  ['air.temperature', '\u22122 °C', '-2 °C'],
  ['wanted.lowest', '24Hz', '24 Hz'],
  ['wanted.level', '90 db', '90 dB'],
  ['amplifier.sourceResistance', '0.1 \u2126', '0.1 Ω'],
  ['amplifier.sourceResistance', '0.1 Ohm', '0.1 ohm'],
  ['drivers.0.Sd', '330 cm2', '330 cm²'],
  ['drivers.0.Re', '5.6\u2126', '5.6 Ω'],
  ['drivers.0.Le', '900 \u03bcH', '900 µH'],
  ['drivers.0.Le', '900 uH', '900 µH'],
  ['drivers.0.Bl', '14.3 Tm', '14.3 T·m'],
  ['drivers.0.Bl', '14.3 T\u22c5m', '14.3 T·m'],
  ['drivers.0.Bl', '14.3 T*m', '14.3 T·m'],
  ['drivers.0.Rms', '4 Ns/m', '4 N·s/m'],
  ['drivers.0.Rms', '4 N s/m', '4 N·s/m'],
];

/** A brief with a text somewhere; what contradicts Bl and Rms of an invented sheet is left out. */
function written(path: string, text: string): Broken {
  const brief = briefOf('whale-bench.json') as Broken;
  const names = path.split('.');
  const last = names.pop() as string;
  if (last === 'Bl') delete brief.drivers[0].Vas;
  if (last === 'Rms') Object.assign(brief.drivers[0], { Vas: undefined, Qts: undefined }, { Qms: 3.6 });
  brief.drivers[0] = JSON.parse(JSON.stringify(brief.drivers[0]));
  names.reduce((part, name) => part[name], brief)[last] = text;
  return brief;
}

test.each(spellings)('%s: both take %j, and read it as %j', (path, text, strict) => {
  const brief = written(path, text);
  validate(brief);
  expect(validate.errors).toBeNull();
  const { written: _, ...read } = readBrief(brief, standard);
  const { written: __, ...same } = readBrief(written(path, strict), standard);
  expect(read).toEqual(same);
});

const questions: readonly [text: string, question: RegExp][] = [
  ['0,5 L', /Did you mean "0\.5 L"\?$/],
  ['55,5L', /Did you mean "55\.5 L"\?$/],
  ['1,500 L', /Did you mean "1\.500 L" or "1500 L"\?$/],
  ['1.234,5 cm³', /Did you mean "1234\.5 cm³"\?$/],
  ["1'500 L", /Did you mean "1500 L"\?$/],
  ['1 500 L', /Did you mean "1500 L"\?$/],
];

test.each(questions)('%j is asked about, not guessed', (text, question) => {
  const brief = written('space.volume', text);
  expect(validate(brief)).toBe(false);
  const remedy = expect.stringMatching(question);
  expect(() => readBrief(brief, standard)).toThrowError(
    expect.objectContaining({ faults: [expect.objectContaining({ code: 'unit', path: 'space.volume', remedy })] }),
  );
});
