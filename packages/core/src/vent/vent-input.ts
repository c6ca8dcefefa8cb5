import type { Fault } from '../fault/index.js';
import { type Field, type Fields, type Length, optional, positive, readFieldsInto } from '../quantity/index.js';
import { type RoundVentInput, type RoundVentSection, roundGeometry, roundShape } from './round-vent.js';
import { type SlotVentInput, type SlotVentSection, slotGeometry, slotShape } from './slot-vent.js';
import type { VentGeometry } from './vent-geometry.js';

/** A vent without its length: round, or a slot with `width` and `height`. */
export type VentSection = RoundVentSection | SlotVentSection;

/** A vent: round, or a slot with `width` and `height`. */
export type VentInput = RoundVentInput | SlotVentInput;

type Section = Fields<typeof roundShape> | Fields<typeof slotShape>;

/** Reads a vent as a slot when it has a width or a height, and as a round vent otherwise. */
const isSlot = (value: unknown): boolean =>
  typeof value === 'object' && value !== null && ['width', 'height'].some((side) => given(value, side) !== undefined);

const given = (value: object, name: string): unknown =>
  Object.hasOwn(value, name) ? (value as Record<string, unknown>)[name] : undefined;

const length = { length: positive('length') };

export const sectionField: Field<Section> = {
  optional: false,
  read: (faults, value, path) =>
    isSlot(value) ? readFieldsInto(faults, path, value, slotShape) : readFieldsInto(faults, path, value, roundShape),
};

/** A vent whose length makes no difference, and may be left out. */
export const openingField: Field<Section> = {
  optional: false,
  read: (faults, value, path) => {
    const any = { length: optional(positive('length')) };
    return isSlot(value)
      ? readFieldsInto(faults, path, value, { ...slotShape, ...any })
      : readFieldsInto(faults, path, value, { ...roundShape, ...any });
  },
};

export const ventField: Field<Section & { readonly length: Length }> = {
  optional: false,
  read: (faults, value, path) =>
    isSlot(value)
      ? readFieldsInto(faults, path, value, { ...slotShape, ...length })
      : readFieldsInto(faults, path, value, { ...roundShape, ...length }),
};

/** Derives the geometry, and adds a fault for each field that contradicts another. */
export const geometry = (faults: Fault[], vent: Section): VentGeometry =>
  'width' in vent ? slotGeometry(faults, vent) : roundGeometry(faults, vent);
