/** Pages in inches and cubic feet: whoever reads them meets no other unit but that of the files. */
import { filesToBuildFrom, type Work } from '@airspring/workshop/dossier';
import { toBuild } from 'airspring';
import { expect, test } from 'vitest';
import old from '../../../packages/airspring/briefs/old-thunder-box.json' with { type: 'json' };
import { plainWork } from '../../arbitrary/work.js';

const vent = {
  count: 1,
  diameter: 0.06,
  outerDiameter: 0.066,
  flangeDiameter: 0.09,
  length: 0.25,
  pieces: [0.25],
  fb: 32,
} as const;
const tools = {
  bolts: { count: 8, circle: 0.247, hole: 0.005 },
  terminals: {},
  recess: 0.004,
  roundOver: 0.003,
  brace: {},
};
const pagesOf = async (more: Partial<Work>) => {
  const { files, notes } = await filesToBuildFrom(plainWork({ unit: 'in', volumeUnit: 'ft³', ...more }));
  const text = (contents: string) =>
    contents.replace(/<style>[\s\S]*?<\/style>|<[^>]*>/g, ' ').replace(/[\u00a0\s]+/g, ' ');
  const [page] = files;
  return {
    notes,
    text: text(String(page!.contents)).replace('Lengths in DXF, STL and 3MF files are millimetres.', ''),
  };
};
const OTHER = /.{40}\d (?:mm|cm|m|m²|L)\b.{20}|millimet.{20}/g;

test('pages in inches tell no millimetre and no litre', async () => {
  const { text, notes } = await pagesOf({ vents: [vent], tools: { ...tools, joint: { rabbet: { depth: 0.009 } } } });
  expect(text).toContain('rabbet 0.7087 in wide, 0.3543 in deep');
  expect(notes.filter((note) => !note.startsWith('The gasket'))).toEqual([]);
  // Pages of the sound tell at which distance.
  expect(text.match(OTHER)).toBeNull();
  expect(text).toContain('differs by more than 0.01 in');
  expect(text).toContain('must agree within 0.04 in');
  expect(text).toContain('closed-cell foam of about 0.1 in');
  expect(text).toMatch(/takes about 0\.006 ft³ of air/);
});

test('why a vent is not made is told in the unit of the reader', async () => {
  const thin = { ...vent, outerDiameter: 0.0612, length: 0.3 };
  const { notes } = await pagesOf({ vents: [thin] });
  expect(notes.join(' ')).toContain('expected at least 0.0689 in: two lines');
  expect(notes.join(' ').match(OTHER)).toBeNull();
  const wide = { ...vent, flangeDiameter: 0.24 };
  const large = (await pagesOf({ vents: [wide], tools: { printer: { height: 0.2, width: 0.2 } } })).notes.join(' ');
  expect(large).toContain('and the printer has 7.874 in × 7.874 in × 7.874 in.');
});

test('a small part that is not made is told in inches, to its last length', async () => {
  const { notes } = await pagesOf({
    tools: {
      bolts: { count: 24, circle: 0.236, hole: 0.03 },
      terminals: { hole: 0.03, apart: 0.02 },
    },
  });
  const text = notes.join(' ').replace(/\u00a0/g, ' ');
  expect(text).toContain('workshop.bolts');
  expect(text).toContain('workshop.terminals.apart: got');
  expect(text.match(OTHER)).toBeNull();
});

test('tubes of a set are named by their lengths in inches', async () => {
  const work = toBuild({ ...old, units: { length: 'in', volume: 'ft³' } }, { only: 'set 1' });
  if (!work.ok) throw new Error(work.line);
  const { files } = await filesToBuildFrom(work.work);
  const page = String(files[0]!.contents).replace(/<style>[\s\S]*?<\/style>|<[^>]*>/g, ' ');
  expect(page).toMatch(/tube T1, [\d.]+ in/);
  expect(page).not.toMatch(/tube T1, [\d.]+ mm/);
});
