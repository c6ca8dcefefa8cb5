/** What a brief that states no printer, or one that is too small, is told. */
import { filesToBuildFrom, type WorkChange } from '@airspring/workshop/dossier';
import { type Brief, design, reportText, retrofitText, toBuild } from 'airspring';
import { expect, test } from 'vitest';
import { demo } from '../../arbitrary/brief.js';
import { demoStanding, retrofitted } from '../../arbitrary/standing.js';

test('a brief whose printer stands in the way is told with which one a box meets every wish, and that one does', () => {
  const small = {
    ...demo,
    wanted: { ...demo.wanted, level: '96 dB' },
    box: { ...demo.box, kinds: ['vented'] },
    printer: { height: '40 mm', width: '90 mm' },
  } as Brief;
  const answer = design(small);
  if (answer.ok) throw new Error('the printer is too small');
  const edge = /with one that builds (\d+\smm) in each direction/.exec(answer.because.join(' '))?.[1];
  if (edge === undefined) throw new Error(answer.because.join(' '));
  expect(design({ ...small, printer: { height: edge, width: edge } }).ok).toBe(true);
  // Where a larger one does not help, none is named.
  const louder = design({ ...small, wanted: { ...small.wanted, level: '125 dB' } });
  expect(louder.ok || louder.because.join(' ')).not.toContain('printer');
});

test('without a printer in the brief, report and pages tell the one that their pieces are for', async () => {
  const { printer: _, ...without } = { ...demo, box: { ...demo.box, kinds: ['vented'] } };
  const built = toBuild(without);
  if (!built.ok) throw new Error(built.line);
  const [vent] = built.work.vents;
  expect(vent!.pieces.length).toBeGreaterThan(1);
  const straight = vent!.pieces.filter((piece) => piece < 0.2 + 1e-9).length;
  expect(straight).toBeGreaterThanOrEqual(vent!.pieces.length - 1);
  const told = 'for one that builds 200 mm in each direction';
  expect(reportText(design(without)).replace(/\s+/g, ' ')).toContain(told);
  const { files } = await filesToBuildFrom(built.work);
  expect(String(files[0]!.contents).replace(/\u00a0/g, ' ')).toContain(told);
});

test('without a printer in the brief, a box that stands is told for which usual one its tubes are, and the pages are for it', async () => {
  const { printer: _, ...without } = demoStanding;
  const made = toBuild(without, { only: '1' });
  if (!made.ok || !('change' in made.work)) throw new Error('there is no change');
  const { change } = made.work as { readonly change: WorkChange };
  expect(change.tubes[0]!.printer).toEqual({ height: 0.2, width: 0.2 });
  const told = 'for one that builds 200 mm in each direction';
  expect(retrofitText(retrofitted(without)).replace(/\s+/g, ' ')).toContain(told);
  expect(retrofitText(retrofitted(demoStanding))).not.toContain('states no printer');
  const pageOf = async (tube: object, tools = {}) => {
    const work = { ...made.work, tools, change: { ...change, tubes: [{ ...change.tubes[0]!, ...tube }] } };
    const { files, notes } = await filesToBuildFrom(work);
    return { notes: notes.join(), page: String(files[0]!.contents).replace(/\u00a0/g, ' ') };
  };
  expect((await pageOf({})).page).toContain(told);
  // A tube whose flange is wider than the smallest of them.
  const wide = { diameter: 0.19, hole: 0.2, printer: { height: 0.25, width: 0.25 } };
  const larger = await pageOf(wide);
  expect(larger.notes).toBe('');
  expect(larger.page).toContain('for one that builds 250 mm in each direction');
  expect((await pageOf(wide, { printer: { height: 0.2, width: 0.2 } })).notes).toContain('cannot be divided');
});

test('a box of the nearest brief is built for the printer that this brief has', async () => {
  const narrow = { ...demo, box: { ...demo.box, kinds: ['vented'] }, printer: { height: '200 mm', width: '50 mm' } };
  const built = toBuild(narrow);
  if (!built.ok) throw new Error(built.line);
  expect(built.met).toBe(false);
  expect((await filesToBuildFrom(built.work)).notes).toEqual([]);
});
