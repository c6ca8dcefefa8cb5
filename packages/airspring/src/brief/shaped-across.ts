import type { Fault } from '@airspring/core/fault';
import type { Face, ShapeChoice } from '@airspring/core/space';
import type { Written } from '../job/job.js';
import type { Faultless } from './faultless.js';
import type { BriefPart } from './fields.js';
import { fieldsIn } from './kind-sections.js';
import { isTried } from './kinds-named.js';
import type { ReadBrief } from './schema.js';
import { shapeOf, type WrittenShape } from './space-shape.js';

/** What may say on which faces it stands. */
type Parted = { readonly faces?: readonly (Face | undefined)[] } | undefined;

/** The kinds that are tried in a space that is no cuboid: those that say so. */
const shapedKinds = <Part extends BriefPart>(parts: readonly Part[]): readonly Part[] =>
  parts.filter(({ shaped }) => shaped);

/** Faults of a space that is no cuboid: of its shape, of kinds of box that need a cuboid, and of parts where it has no panel. */
export function faultsOfShape(
  written: Written,
  read: Faultless<ReadBrief>,
  kinds: readonly BriefPart[],
  shapes: readonly ShapeChoice[],
): Fault[] {
  const space = written.space as { readonly shape?: WrittenShape } | undefined;
  if (space?.shape === undefined || read.space === undefined) return [];
  const faults: Fault[] = [];
  const shape = shapeOf(faults, read.space as never, space.shape, shapes);
  if (shape === undefined) return faults;
  const named = (read.box as ReadBrief['box'])?.kinds;
  const able = shapedKinds(kinds);
  const unable = (named ?? []).filter((name) => !able.some((kind) => kind.name === name));
  if (unable.length > 0) {
    const expected = `in a space with a shape only ${able.map(({ name }) => name).join(', ')}`;
    faults.push({
      code: 'inconsistent',
      path: 'box.kinds',
      got: unable.join(', '),
      expected,
      remedy: 'Leave the others out, or leave out space.shape.',
    });
  }
  const check = (path: string, part: Parted) => {
    const on = part?.faces?.flatMap((face) => face ?? []);
    if ((on ?? ['front']).every((face) => shape.faces.includes(face))) return;
    const expected = `faces of this shape on which parts can stand: ${shape.faces.join(', ')}`;
    const got = on?.join(', ') ?? 'front (default)';
    faults.push({ code: 'inconsistent', path, got, expected, remedy: 'Name only these.' });
  };
  const checkEach = (path: string, parts: readonly Parted[]) =>
    parts.forEach((part, i) => {
      if (part !== undefined) check(`${path}[${i}].faces`, part);
    });
  checkEach('drivers', (read.drivers ?? []) as readonly Parted[]);
  const tried = able.filter((kind) => isTried(kind, named as readonly string[] | undefined));
  for (const section of new Set(tried.flatMap(({ fields }) => Object.keys(fields)))) {
    const own = (read as Readonly<Record<string, unknown>>)[section];
    if (Array.isArray(own)) checkEach(section, own);
    else if (tried.some((kind) => Object.hasOwn(fieldsIn(kind, section), 'faces')))
      check(`${section}.faces`, own as Parted);
  }
  return faults;
}
