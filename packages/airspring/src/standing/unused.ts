import type { Fault } from '@airspring/core/fault';
import { valueAt } from '../brief/path.js';
import type { Job, Written } from '../job/job.js';

/** What a brief about an existing box may say; of some sections, which fields. `vent.waves` has a fault of its own. */
const USED: Readonly<Record<string, true | readonly string[]>> = {
  $schema: true,
  version: true,
  title: true,
  note: true,
  drivers: true,
  air: true,
  wanted: ['lowest', 'highest', 'safeFrom', 'level', 'at', 'fall'],
  room: true,
  amplifier: true,
  workshop: ['holeSaws', 'pipes', 'nozzle', 'sheets', 'kerf', 'trim', 'board', 'grain', 'density'],
  units: true,
  box: ['QL', 'QA', 'QP'],
  vent: ['airSpeed', 'quiet', 'waves'],
  printer: true,
  radiators: true,
  standing: true,
};

/** Sections and fields that ask something of a new box: about an existing one they would be passed over in silence. */
export function faultsOfUnused(written: Written, read: Partial<Job['sections']>): Fault[] {
  const paths = Object.entries(written).flatMap(([section, said]): (readonly string[])[] => {
    const used = USED[section];
    if (used === undefined) return [[section]];
    if (used === true || typeof said !== 'object' || said === null) return [];
    return Object.keys(said).flatMap((field) => (used.includes(field) ? [] : [[section, field]]));
  });
  // What is misspelt has a fault already.
  const known = paths.filter((path) => valueAt(read, path) !== undefined);
  return known.map((path) => ({
    code: 'conflict',
    path: path.join('.'),
    got: valueAt(written, path),
    expected: 'no field that counts for a new box alone: this brief is about a box that stands',
    remedy: path[0] === 'space' ? 'Leave it out: the sizes of the box are in standing.' : 'Leave it out.',
  }));
}
