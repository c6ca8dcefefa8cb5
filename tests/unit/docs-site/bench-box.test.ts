/** The box of the pages about saw and printer is box C of the whale bench, as the search designs it. */
import { readFileSync } from 'node:fs';
import { read } from '@airspring/core/quantity';
import { expect, test } from 'vitest';
import * as cut from '../../../docs-site/examples/cut-the-box.js';
import * as print from '../../../docs-site/examples/print-the-vent.js';
import { answerTo } from '../../arbitrary/brief.js';

const brief = new URL('../../../packages/airspring/briefs/whale-bench.json', import.meta.url);
const answer = answerTo(JSON.parse(readFileSync(brief, 'utf8')));
const design = answer.ok ? answer.designs.find(({ name }) => name === 'C') : undefined;

test('its panels and its holes', () => {
  const { width, height, depth } = cut.outer;
  const outer = [width, height, depth].map((text) => read('length', text));
  design?.box.outer.forEach((edge, i) => expect(outer[i]).toBeCloseTo(edge, 9));
  const holes = design?.box.holes.map((hole) => [
    hole.what,
    hole.face,
    ...[hole.across, hole.up, hole.form === 'circle' ? hole.diameter : 0].map((length) => Math.round(length * 1e4)),
  ]);
  const pages = cut.cutouts.map(({ part, face, across, up, opening }) => [
    part,
    face,
    ...[across, up, opening.diameter].map((text) => Math.round(read('length', text) * 1e4)),
  ]);
  expect(pages).toEqual(holes);
  expect(read('length', print.box.panelThickness)).toBeCloseTo(design?.box.panelThickness ?? 0, 9);
});

test('its vent, and the air before the vent is in it', () => {
  const { diameter, outerDiameter, length, fb } = design?.vent ?? { diameter: 0, outerDiameter: 0, length: 0, fb: 0 };
  expect(read('length', print.inputs.diameter.value)).toBeCloseTo(diameter, 9);
  expect(print.fb).toBe(`${fb.toFixed(1)} Hz`);
  const behind = length - (design?.box.panelThickness ?? 0);
  const before = (design?.box.netVolume ?? 0) + (Math.PI / 4) * outerDiameter ** 2 * behind;
  expect(read('volume', print.box.volumeBeforeVent)).toBeCloseTo(before, 5);
});
