import type { Fault } from '../fault/index.js';
import type { Field } from '../quantity/index.js';
import { type Face, faces } from './cuboid.js';
import type { Interior } from './interior.js';

export const interiorField: Field<Interior> = {
  optional: false,
  read: (faults, value, path) => {
    const { faces: own, contains, way } = (value ?? {}) as Partial<Interior>;
    const listed = Array.isArray(own) && own.every((face) => faces.includes(face));
    if (listed && typeof contains === 'function' && typeof way === 'function') return value as Interior;
    const remedy = 'Give the three, as cuboidInterior does, or leave the field out.';
    const expected = `faces (a list of ${faces.join(', ')}), contains and way (functions)`;
    faults.push({ code: 'inconsistent', path, got: value, expected, remedy });
    return undefined;
  },
};

interface Standing {
  readonly faces?: readonly Face[] | undefined;
  readonly along?: string | undefined;
}

/** Faults of parts that stand where the interior has no face, and of slots whose boards it may not have. */
export const judgeInterior = (
  { faces: own }: Interior,
  parts: Readonly<Record<string, Standing | readonly Standing[] | undefined>>,
  path: string,
): Fault[] =>
  Object.entries(parts).flatMap(([name, some]) =>
    [some ?? []].flat().flatMap(({ faces: on = ['front'], along = 'none' }: Standing, index) => {
      const at = `${path}.${name}${Array.isArray(some) ? `[${index}]` : ''}`;
      const faults: Fault[] = [];
      const fault = (field: string, got: unknown, expected: string, remedy: string) =>
        faults.push({ code: 'inconsistent', path: `${at}.${field}`, got, expected, remedy });
      const expected = `faces of the interior: ${own.join(', ')}`;
      if (on.some((face) => !own.includes(face))) fault('faces', on, expected, 'Name only these.');
      if (along !== 'none') fault('along', along, 'none, in an interior of your own', 'Give the slot its own boards.');
      return faults;
    }),
  );
