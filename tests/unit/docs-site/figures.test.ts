import { readdirSync, readFileSync } from 'node:fs';
import type { Design, DesignVent } from 'airspring';
import { expect, test } from 'vitest';
import { axis, axisOf, frequencyAxis, spread } from '../../../docs-site/src/figures/axis.js';
import { centreLine, centreOf } from '../../../docs-site/src/figures/box-geometry.js';
import { farthestApart, type Sweep, sweepMarkup } from '../../../docs-site/src/figures/sweep.js';
import { between } from '../../../docs-site/src/figures/third-octaves.js';
import { room } from '../../../docs-site/src/sections/margins.js';
import { documentOf } from './document.js';

const outer: Design['box']['outer'] = [0.4, 0.3, 0.5];

test('a hole lies where a builder measures it', () => {
  const hole = {
    what: 'vent',
    form: 'circle',
    diameter: 0.08,
    across: 0.06,
    up: 0.25,
    from: ['left', 'bottom'],
  } as const;
  expect(centreOf({ ...hole, face: 'front' }, outer)).toEqual([0.06, 0.25, 0]);
  expect(centreOf({ ...hole, face: 'back' }, outer)).toEqual([0.06, 0.25, 0.5]);
  expect(centreOf({ ...hole, face: 'right', from: ['front', 'bottom'] }, outer)).toEqual([0.4, 0.25, 0.06]);
  expect(centreOf({ ...hole, face: 'top', from: ['left', 'front'] }, outer)).toEqual([0.06, 0.3, 0.25]);
});

test('the drawn vent is as long as the built one, and ends where legs and radius lead', () => {
  const bend = { radius: 0.08, firstLeg: 0.28, arc: 0.04 * Math.PI, secondLeg: 0.15, towards: 'right' as const };
  const vent: DesignVent = {
    count: 1,
    diameter: 0.074,
    outerDiameter: 0.08,
    flangeDiameter: 0.104,
    length: 0.28 + 0.04 * Math.PI + 0.15,
    fb: 24,
    face: 'front',
    bend,
    pieces: [],
    clearance: 0.074,
    spare: 0,
  };
  const line = centreLine([0.06, 0.25, 0], vent);
  const length = line
    .slice(1)
    .reduce((sum, point, i) => sum + Math.hypot(...point.map((x, k) => x - (line[i] as typeof point)[k]!)), 0);
  expect(Math.abs(length / vent.length - 1)).toBeLessThan(1e-3); // chords instead of an arc
  const [x, y, z] = line.at(-1) as (typeof line)[number];
  expect(x).toBeCloseTo(0.06 + 0.08 + 0.15, 12);
  expect(y).toBe(0.25);
  expect(z).toBeCloseTo(0.28 + 0.08, 12);
});

test('letters keep apart and above the edge, and stay put where there is room', () => {
  expect(spread([1, 5, 9], 2)).toEqual([1, 5, 9]);
  const near = [...spread([3, 3.1, 3.2, 3], 1, 2.5)].sort((a, b) => a - b);
  near.slice(1).forEach((letter, i) => expect(letter - near[i]!).toBeGreaterThan(0.95));
  expect(near[0]).toBeGreaterThanOrEqual(2.5);
});

test('an axis ends in whole steps', () => {
  expect(axis([61.2, 92.4], 5)).toEqual({ domain: [60, 95], ticks: [60, 65, 70, 75, 80, 85, 90, 95] });
});

test('a table reads between points in log f, and never beyond them', () => {
  expect(between([10, 40], [0, 2], 20)).toBeCloseTo(1, 12);
  expect(between([10, 40], [0, 2], 10)).toBe(0);
  expect(between([10, 40], [0, 2], 9)).toBeUndefined();
  expect(between([10, 40], [0, 2], 41)).toBeUndefined();
});

test('room is said in decibels for levels, else in percent, and none when the limit binds', () => {
  const margin = { path: '', what: '', sense: 'at most', relative: -0.25 } as const;
  expect(room({ ...margin, value: '300 mm', limit: '400 mm' })).toBe('25\u00a0%');
  expect(room({ ...margin, value: '0.4 dB', limit: '1.5 dB' })).toBe('1.1\u00a0dB');
  expect(room({ ...margin, value: '105.2 dB', limit: '92 dB', sense: 'at least' })).toBe('13.2\u00a0dB');
  expect(room({ ...margin, value: '400 mm', limit: '400 mm', relative: -1e-9 })).toBe('none');
});

test('one axis for all frequencies: few labels, lines between them, and no more than the data need', () => {
  expect(frequencyAxis(16, 120)).toMatchObject({ ticks: [20, 30, 50, 100], between: [40, 60, 70, 80, 90] });
  expect(axisOf(0, 1038, 'mm').domain).toEqual([0, 1200]);
  const models = readdirSync(new URL('../../../docs-site/src/worked/', import.meta.url));
  for (const file of models) {
    const code = readFileSync(new URL(`../../../docs-site/src/worked/${file}`, import.meta.url), 'utf8');
    expect(code, file).not.toMatch(/31\.5|frequency, Hz'/);
  }
});

const sweep: Sweep = {
  id: 'x',
  title: 'Two boxes',
  frequencies: [10, 20, 50, 100],
  band: [20, 100],
  events: [
    { f: 20, words: 'tuned to 20 Hz' },
    { f: 100, words: 'to 100 Hz' },
  ],
  panels: ['one', 'two'].map((id) => ({
    id,
    title: id,
    label: `${id} falls.`,
    colour: 'var(--level)',
    unit: 'dB',
    domain: [0, 10] as const,
    ticks: [0, 5, 10],
    lines: [
      { name: 'A', values: [1, 2, 8, 10] },
      { name: 'B', values: [1, 4.5, 7, 10] },
    ],
    data: { heads: ['Hz', 'A', 'B'], rows: [['10', '1', '1']] },
  })),
};

test('panels share one axis of frequency; names stand where the lines are apart, and say by how much', () => {
  expect(farthestApart(sweep.panels[0]?.lines ?? [], 0, 3)).toBe(1);
  const { body } = documentOf(`<html lang="en"><body>${sweepMarkup(sweep).markup}</body></html>`);
  const wide = body.querySelector('.wide svg') as Element;
  const texts = [...wide.querySelectorAll('text')].map(({ textContent }) => textContent);
  expect(texts.filter((text) => text === '50')).toEqual(['50']);
  expect(texts.filter((text) => text === 'B +2.50')).toEqual(['B +2.50', 'B +2.50']);
  expect(texts).toContain('tuned to 20 Hz');
  expect(wide.querySelectorAll('.event').length).toBe(2);
  expect(wide.querySelectorAll('[stroke-dasharray]').length).toBe(0);
  const bold = [...wide.querySelectorAll('[data-line=A]')].map((line) => Number(line.getAttribute('stroke-width')));
  expect(Math.min(...bold)).toBeGreaterThan(2);
});
