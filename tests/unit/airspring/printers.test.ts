/** What a brief that states no printer, or one that is too small, is told. */
import { filesToBuildFrom } from '@airspring/workshop/dossier';
import { type Brief, design, reportText, toBuild } from 'airspring';
import { expect, test } from 'vitest';
import { demo } from '../../arbitrary/brief.js';

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
