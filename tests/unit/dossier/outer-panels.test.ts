/** A driver in a panel that covers a part of its face, as in a box with a step: it is fitted from outside. */
import { filesToBuildFrom } from '@airspring/workshop/dossier';
import { expect, test } from 'vitest';
import { plainWork } from '../../arbitrary/work.js';

async function steps(inwards: number): Promise<string> {
  const board = { name: 'upper front', size: [0.36, 0.3], from: [0, 0.1, inwards] } as const;
  const at = { across: 0.18, up: 0.15, from: ['left', 'bottom'], form: 'circle', diameter: 0.2 } as const;
  const work = plainWork({}, { holes: [{ what: 'driver', face: 'front', ...at, board }] });
  const { files } = await filesToBuildFrom(work);
  return String(files.find(({ path }) => path === 'build.html')!.contents).replace(/\u00a0/g, ' ');
}

test('a driver in an outer panel is fitted when the box is closed', async () => {
  const told = await steps(0);
  expect(told).toContain('Glue the back on');
  for (const inside of ['in its board', 'the panel that is screwed on', 'of the chamber behind the cone'])
    expect(told).not.toContain(inside);
});

test('a driver in a board inside is reached through a panel that is screwed on', async () => {
  const told = await steps(0.2);
  expect(told).toContain('Glue all panels but the panel that is screwed on');
  expect(told).toContain('in its board');
});
