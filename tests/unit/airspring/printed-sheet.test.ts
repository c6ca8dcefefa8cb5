/** A panel on the printed sheet is as large as the cut list beside it says, however the panels meet. */
import { type Brief, printPage } from 'airspring';
import { expect, test } from 'vitest';
import { demo, metByWeights } from '../../arbitrary/brief.js';

const sheetFor = (workshop: object, face: string) => {
  const vent = { ...demo.vent, faces: [face], smallest: '70 mm', largest: '70 mm' };
  const [design] = metByWeights({ ...demo, vent, workshop } as Brief).designs;
  return { design: design!, page: printPage('A bench', [design!]) };
};

test.each([
  ['butt', {}, 0.018],
  ['rabbet', { joint: { rabbet: { depth: '6 mm' } } }, 0.012],
  ['mitre', { joint: { mitre: {} } }, 0],
])('%s', (_, workshop, setback) => {
  for (const face of ['left', 'top']) {
    const { design, page } = sheetFor(workshop, face);
    const [width, height, depth] = design.box.outer;
    const sawn = face === 'left' ? [depth - 2 * setback, height - 2 * setback] : [width, depth - 2 * setback];
    const size = sawn.map((edge) => Math.round(1e3 * edge)).join(' × ');
    expect(page).toContain(`The ${face} panel, ${size} mm`);
    // The same two sizes are in the table, in one order or the other.
    const listed = [size, size.split(' × ').reverse().join(' × ')].some((one) => page.includes(`<td>${one} mm</td>`));
    expect(listed).toBe(true);
    expect(page.includes('of the face, mm')).toBe(setback > 0);
  }
});
