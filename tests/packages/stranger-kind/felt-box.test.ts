import { briefJsonSchema, design, type Met, reportText, sketchText, standard } from 'airspring';
import { expect, test } from 'vitest';
import { briefFacts } from '../../../docs-site/src/brief-facts.js';
import { boxFigure } from '../../../docs-site/src/figures/box-drawing.js';
import { balanced, demo, searchFor } from '../../arbitrary/brief.js';
import { feltBox } from './felt-box.js';

const kinds = [...standard, feltBox];
const wanted = { lowest: '45 Hz', highest: '120 Hz', level: '88 dB', fall: '6 dB' };
const brief = { ...demo, wanted, box: { kinds: ['felt'] }, felt: { airSpeed: '1.5 m/s', largest: '90 mm' } };
const answer = design(brief, { kinds }) as Met;

test('a stranger’s kind is searched by its own axes, and keeps its own limit', () => {
  expect(answer.ok).toBe(true);
  for (const one of answer.designs) {
    expect(one.kind).toBe('felt');
    const hole = one.box.holes.find(({ what }) => what === 'felt')!;
    expect(hole.face).toBe('back');
    expect(hole.form === 'circle' && hole.diameter).toBeLessThanOrEqual(0.09);
    expect(one.atWantedLevel.own!.at.value).toBeLessThanOrEqual(1.5 * 1.001);
    expect(one.margins.map(({ path }) => path)).toContain('felt.airSpeed');
    expect(one.loudness.level).toBeGreaterThanOrEqual(88 - 0.02);
  }
});

test('it is reported and drawn', () => {
  const text = reportText(answer).replace(/\s+/g, ' ');
  expect(text).toContain('is a box with a felt leak for one "ten-inch driver, invented"');
  expect(text).toContain('covered with felt damps it.');
  expect(text).toMatch(/felt back \d+ mm \d/);
  expect(text).toContain('air speed through the felt, peak');
  expect(sketchText(answer.designs)).toContain('Level at 1 m in half space');
  const [first] = answer.designs;
  const drawing = boxFigure(first!, briefFacts(demo)).draw(640);
  const hole = first!.box.holes.find(({ what }) => what === 'felt')!;
  const diameter = hole.form === 'circle' ? hole.diameter : Number.NaN;
  // From above the box is drawn to scale: the hole in its back is a gap as wide as it is, through one panel.
  const scale = Number(/M0 0H([\d.]+)/.exec(drawing)![1]) / first!.box.outer[0];
  expect(drawing).toMatch(new RegExp(`class="bore"[^>]*stroke-width="${(diameter * scale).toFixed(1)}"`));
});

test('its fields are in the schema, checked at their path, and unknown where the kind is not passed in', () => {
  const schema = briefJsonSchema({ kinds }) as { properties: Record<string, { properties: object }> };
  expect(Object.keys(schema.properties.felt!.properties)).toContain('airSpeed');
  expect(schema.properties.box!.properties).toMatchObject({
    kinds: { items: { enum: [...standard.map(({ name }) => name), 'felt'] } },
  });
  const faults = (run: () => unknown) => {
    try {
      run();
      return [];
    } catch (error) {
      return (error as { faults: { path: string }[] }).faults.map(({ path }) => path);
    }
  };
  expect(faults(() => design({ ...brief, felt: { airSpeed: '2 mm' } }, { kinds }))).toEqual(['felt.airSpeed']);
  expect(faults(() => design(brief)).sort()).toEqual(['box.kinds[0]', 'felt']);
});

test('beside ours it competes by absolute level at the same drive, and never makes an answer worse', () => {
  const open = { ...brief, box: {} };
  // By the weights of the brief alone: the other leanings would be four more searches.
  const ours = balanced(searchFor({ ...demo, wanted }))!;
  const all = balanced(searchFor(open, kinds))!;
  expect(all.designs[0]!.points).toBeGreaterThanOrEqual(ours.designs[0]!.points - 1e-9);
});

test('where nothing fits, its own wish can be the one that yields', () => {
  const mute = design({ ...brief, felt: { airSpeed: '0.02 m/s', largest: '30 mm' } }, { kinds });
  expect(mute.ok).toBe(false);
  if (!mute.ok) expect(mute.conflict.map(({ path }) => path)).toContain('felt.airSpeed');
});
