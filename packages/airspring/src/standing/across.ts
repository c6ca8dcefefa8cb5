import type { Fault } from '@airspring/core/fault';
import { decimalText } from '@airspring/core/quantity';
import type { Face } from '@airspring/core/space';
import { sheetOnly } from '../brief/driver-fields.js';
import type { Faultless } from '../brief/faultless.js';
import type { ReadBrief } from '../brief/schema.js';
import { tellingOf } from '../brief/units.js';
import type { Job, Written } from '../job/job.js';
import { axesOf } from '../kind/build-record.js';
import type { ReadStanding, WrittenStanding } from './fields.js';
import { withoutSheet } from './measured-driver.js';
import { faultsOfUnused } from './unused.js';

type Read = Partial<Pick<ReadStanding, 'standing'>>;
type Place = NonNullable<ReadStanding['standing']['drivers']>[number];
type WrittenPlace = NonNullable<WrittenStanding['standing']['drivers']>[number];

/** Contradictions in the description of an existing box, as far as it was read. Values are quoted as written. */
export function acrossStanding(written: Written, read: Partial<Job['sections']>): Fault[] {
  const { standing } = read as Read;
  const texts = written.standing as WrittenStanding['standing'] | undefined;
  if (standing === undefined || typeof texts !== 'object' || texts === null) return [];
  const faults = faultsOfUnused(written, read);
  const says = tellingOf(written);
  const { at } = (written.wanted ?? {}) as { at?: unknown };
  if (written.room !== undefined && at === 'listener') {
    const remedy = 'Leave it out: the report tells what the room does beside that.';
    faults.push({ code: 'conflict', path: 'wanted.at', got: at, expected: '1 m for a box that stands', remedy });
  }
  if ((read as { vent?: { waves?: boolean } }).vent?.waves === true) {
    const expected = 'no waves: the changes to a box that stands count the air in a vent as one mass';
    faults.push({ code: 'conflict', path: 'vent.waves', got: true, expected, remedy: 'Leave it out.' });
  }
  const told = (path: string, got: unknown, expected: string, remedy: string) =>
    faults.push({ code: 'inconsistent', path: `standing.${path}`, got, expected, remedy });

  const [driver] = (read as { readonly drivers?: readonly Faultless<ReadBrief['drivers'][number]>[] }).drivers ?? [];
  const [sheet] = (written.drivers ?? []) as readonly Readonly<Record<string, unknown>>[];
  if (driver && sheet && !withoutSheet(driver)) {
    for (const name of sheetOnly.filter((one) => sheet[one] === undefined)) {
      const remedy = 'Look it up in the sheet, or measure it.';
      faults.push({ code: 'empty', path: `drivers[0].${name}`, got: undefined, expected: 'this field', remedy });
    }
  }

  const sizes = (['outer', 'inner'] as const).filter((name) => texts[name] !== undefined);
  if (sizes.length === 2) {
    told('inner', 'both outer and inner', 'one of them', 'Leave one out: it follows from the other and the panels.');
  }
  if (sizes.length === 0 && texts.air === undefined) {
    const expected = 'the sizes of the box (outer or inner), or the air in it (air)';
    faults.push({ code: 'empty', path: 'standing', got: 'neither', expected, remedy: 'Measure one of them.' });
  }
  if (sizes.length === 0 && standing.air !== undefined) {
    const remedy = 'Add the sizes, or leave the places out.';
    const places = [
      ...(texts.drivers === undefined ? [] : ['drivers']),
      ...(texts.vents ?? []).flatMap((vent, i) => (vent?.place === undefined ? [] : [`vents[${i}].place`])),
    ];
    for (const path of places) told(path, 'a place', 'the sizes of the box as well (outer or inner)', remedy);
  }
  const { outer, panelThickness: t } = standing;
  const inner = standing.inner ?? (outer && t && less(outer, 2 * t));
  if (inner && Math.min(inner.width, inner.height, inner.depth) <= 0) {
    told('panelThickness', texts.panelThickness, 'less than half of every outer edge', 'Correct one of the two.');
    return faults;
  }
  if (inner && standing.air !== undefined && standing.air >= inner.width * inner.height * inner.depth) {
    const whole = says.volume(inner.width * inner.height * inner.depth);
    told('air', texts.air, `less than the inside of the box, ${whole}`, 'Correct one of the two.');
  }
  if (standing.measured !== undefined && texts.vents === undefined) {
    told('measured', 'a tuning', 'a vent', 'Add the vents. A closed box has no tuning: then leave this out.');
  }
  const within = (path: string, place: Place | undefined, written: WrittenPlace | undefined) => {
    if (place === undefined || inner === undefined || t === undefined) return;
    const [across, up] = panelOf(place.face, less(inner, -2 * t));
    const edges = [['across', across] as const, ['up', up] as const];
    for (const [name, edge] of edges) {
      if (place[name] === undefined || place[name] < edge) continue;
      const expected = `a centre on the ${place.face} panel, which is ${says.length(edge)} in this direction`;
      told(`${path}.${name}`, written?.[name], expected, 'Correct the place, or the sizes of the box.');
    }
  };
  for (const [i, place] of (standing.drivers ?? []).entries()) within(`drivers[${i}]`, place, texts.drivers?.[i]);
  const peaks = standing.measured?.peaks;
  if (peaks && peaks[0] >= peaks[1]) {
    const remedy = peaks[0] > peaks[1] ? 'Swap the two.' : 'Measure the two peaks again.';
    told('measured.peaks', texts.measured?.peaks?.join(', '), 'the lower peak first', remedy);
  }
  const tuning = standing.measured?.tuning;
  if (peaks && tuning !== undefined && !(peaks[0] < tuning && tuning < peaks[1])) {
    const expected = `a frequency between the peaks, ${decimalText(peaks[0], 4)} and ${decimalText(peaks[1], 4)} Hz`;
    told('measured.tuning', texts.measured?.tuning, expected, 'Check the three readings.');
  }
  for (const [i, vent] of (standing.vents ?? []).entries()) {
    if (vent === undefined) continue;
    const own = texts.vents?.[i];
    const at = `vents[${i}]`;
    if (t !== undefined && vent.length < t) {
      told(
        `${at}.length`,
        own?.length,
        `at least the panel, ${texts.panelThickness}`,
        'Measure it from the outside of the panel.',
      );
    }
    if (vent.hole !== undefined && vent.hole < vent.diameter) {
      told(
        `${at}.hole`,
        own?.hole,
        `at least the inner diameter of the vent, ${own?.diameter}`,
        'Correct one of the two.',
      );
    }
    if (vent.rounding !== undefined && 2 * vent.rounding > vent.length) {
      const expected = `at most half the length of the vent, ${own?.length}`;
      told(`${at}.rounding`, own?.rounding, expected, 'Correct one of the two.');
    }
    within(`${at}.place`, vent.place, own?.place);
    if (inner === undefined || t === undefined) continue;
    const { width, height, depth } = inner;
    const longest = width + height + depth;
    if (vent.length - t > longest) {
      const expected = `a vent that fits in the box, whose inner edges together are ${says.length(longest)}`;
      told(`${at}.length`, own?.length, expected, 'Correct the length, or the sizes of the box.');
    }
    const face = vent.place?.face ?? 'front';
    const panel = Math.min(...panelOf(face, inner));
    const opening = vent.hole === undefined ? 'diameter' : 'hole';
    if ((vent[opening] ?? 0) > panel) {
      const expected = `less than the inside of the ${face} panel, ${says.length(panel)}`;
      told(`${at}.${opening}`, own?.[opening], expected, `Correct the ${opening}, or the sizes of the box.`);
    }
  }
  return faults;
}

type Sizes = { readonly width: number; readonly height: number; readonly depth: number };
/** A panel, across and up. */
export const panelOf = (face: Face, { width, height, depth }: Sizes): readonly [across: number, up: number] => {
  const [across, up] = axesOf(face).map((axis) => [width, height, depth][axis]!) as [number, number];
  return [across, up];
};
const less = ({ width, height, depth }: Sizes, by: number): Sizes => ({
  width: width - by,
  height: height - by,
  depth: depth - by,
});
