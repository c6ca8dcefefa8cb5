import { type Fault, isInputError, type LengthWords } from '@airspring/core/fault';
import type { ShapeChoice, ShapeField, SpaceShape } from '@airspring/core/space';
import * as v from 'valibot';
import type { Bounds } from './quantity-text.js';
import { quantity } from './quantity-text.js';

/** A shape in a brief: one key, its name, and its fields. */
export type WrittenShape = Readonly<Record<string, Readonly<Record<string, unknown>>>>;

const LENGTH: Bounds<'length'> = { least: 0.1, greatest: 20_000, unit: 'mm' };
const MOST_CORNERS = 1000;
const MOST_RECORDS = 20;

const corner = v.strictTuple([
  quantity('length', { ...LENGTH, least: 0 }, 'not-negative'),
  quantity('length', { ...LENGTH, least: 0 }, 'not-negative'),
]);

function schemaOf(field: ShapeField): v.GenericSchema {
  if (field.takes === 'length') {
    return v.pipe(quantity('length', { ...LENGTH, example: field.example }), v.description(field.what));
  }
  if (field.takes === 'choice') return v.pipe(v.picklist(field.of), v.description(field.what));
  if (field.takes === 'records') {
    return v.pipe(
      v.array(recordOf(field.of)),
      v.minLength(2, 'empty\nat least two records\nAdd one.'),
      v.maxLength(
        MOST_RECORDS,
        `out-of-range\na list of at most ${MOST_RECORDS} records\nLeave out what is not needed.`,
      ),
      v.description(field.what),
    );
  }
  return v.pipe(
    v.array(corner),
    v.minLength(3, 'empty\nat least three corners\nAdd corners.'),
    v.maxLength(MOST_CORNERS, `out-of-range\na list of at most ${MOST_CORNERS} corners\nLeave out what is not needed.`),
    v.description(field.what),
    v.examples([field.example] as never),
  );
}

/** One record of the fields of a shape. */
function recordOf(fields: Readonly<Record<string, ShapeField>>): v.GenericSchema {
  const entries = Object.entries(fields).map(([name, one]): [string, v.GenericSchema] => {
    const schema = schemaOf(one);
    return [name, one.optional ? v.exactOptional(schema) : schema];
  });
  return v.strictObject(Object.fromEntries(entries));
}

/** The field of a brief in which a shape is asked for: one record of which one field is given. Without shapes it is refused. */
export function shapeField(shapes: readonly ShapeChoice[]) {
  const names = shapes.map(({ name }) => name).join(', ');
  const entries = shapes.map(({ name, what, fields }): [string, v.GenericSchema] => [
    name,
    v.exactOptional(v.pipe(recordOf(fields), v.description(what))),
  ]);
  const schema =
    shapes.length === 0
      ? v.pipe(
          v.unknown(),
          v.check(
            () => false,
            'inconsistent\nno shape, since none was passed in\nPass in shapes, such as the standardShapes of @airspring/workshop/shape.',
          ),
        )
      : v.pipe(
          v.strictObject(Object.fromEntries(entries)),
          v.minEntries(1, `empty\none of ${names}\nGive one, or leave the field out.`),
          v.maxEntries(1, `conflict\nonly one of ${names}\nKeep one of them.`),
          v.description('the shape of the space and of the box, where it is no cuboid; default a cuboid'),
        );
  return schema as unknown as v.GenericSchema<WrittenShape, WrittenShape>;
}

type Space = Partial<Readonly<Record<'width' | 'height' | 'depth' | 'panelThickness', number>>> & {
  readonly shape?: Readonly<Record<string, object | undefined>>;
};

/** Whether nothing is missing from a value, however deep. */
const isWhole = (value: unknown): boolean =>
  value !== undefined && (typeof value !== 'object' || value === null || Object.values(value).every(isWhole));

/** Whether a record has all that was written and all that is needed, however deep. */
function isRead(fields: object, written: unknown, known: ShapeChoice['fields']): boolean {
  const needed = Object.entries(known).flatMap(([field, { optional }]) => (optional ? [] : [field]));
  const asked = Object.keys(written ?? {});
  if (![...asked, ...needed].every((field) => Object.hasOwn(fields, field))) return false;
  return Object.entries(known).every(([field, one]) => {
    const records = (fields as Readonly<Record<string, readonly object[]>>)[field];
    if (one.takes !== 'records' || records === undefined) return true;
    const own = (written as Readonly<Record<string, readonly unknown[]>>)[field];
    return records.every((record, i) => isRead(record, own?.[i], one.of));
  });
}

/** The shape that a brief asks for; `undefined` where it asks for none, or where one of the fields it depends on has a fault. */
export function shapeOf(
  faults: Fault[],
  { width, height, depth, panelThickness, shape = {} }: Space,
  written: WrittenShape | undefined,
  shapes: readonly ShapeChoice[],
): SpaceShape | undefined {
  const [name = '', fields] = Object.entries(shape)[0] ?? [];
  const choice = shapes.find((one) => one.name === name);
  if (choice === undefined || typeof fields !== 'object' || Object.keys(shape).length > 1) return undefined;
  if (width === undefined || height === undefined || depth === undefined || panelThickness === undefined)
    return undefined;
  if (!isRead(fields, written?.[name], choice.fields) || !isWhole(fields)) return undefined;
  const path = `space.shape.${name}`;
  try {
    const made = choice.shape(fields as Readonly<Record<string, unknown>>, {
      outer: [width, height, depth],
      panelThickness,
    });
    if (!('ok' in made)) return made;
    for (const { text, words } of made.because) {
      const [last, ...before] = [...(words ?? [text])].reverse();
      const expected: LengthWords = [
        'a shape that the panels leave some air: ',
        ...before.reverse(),
        typeof last === 'string' ? last.replace(/\.$/, '') : last!,
      ];
      faults.push({
        code: 'inconsistent',
        path,
        got: name,
        expected: text,
        remedy: 'Use thinner panels, or another size.',
        words: { expected },
      });
    }
  } catch (error) {
    if (!isInputError(error)) throw error;
    for (const fault of error.faults) faults.push({ ...fault, path: `${path}${fault.path.replace(/^[^.[]*/, '')}` });
  }
  return undefined;
}
