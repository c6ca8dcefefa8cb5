/** What is bought, where the sheets at hand differ. */
import { filesToBuildFrom } from '@airspring/workshop/dossier';
import { expect, test } from 'vitest';
import { plainWork } from '../../arbitrary/work.js';

test('sheets of each size are counted by themselves', async () => {
  const sheets = [
    { length: 0.9, width: 0.5, count: 1 },
    { length: 0.8, width: 0.6 },
  ];
  const { files } = await filesToBuildFrom(plainWork({ tools: { sheets } }));
  const page = String(files[0]!.contents).replace(/\u00a0/g, ' ');
  const bought = [...page.matchAll(/<li>(\d+) × MDF, 18 mm thick, ([^<]*)<\/li>/g)].map(
    ([, count, size]) => `${count} × ${size}`,
  );
  const names = [...page.matchAll(/(Sheet \d of \d): (\d+) × (\d+) mm/g)];
  const sawn = [...new Map(names.map(([, name, length, width]) => [name, `${length} mm × ${width} mm`])).values()];
  const sizes = [...new Set(sawn)];
  expect(sizes).toHaveLength(2);
  expect(bought).toEqual(sizes.map((size) => `${sawn.filter((one) => one === size).length} × ${size}`));
});
