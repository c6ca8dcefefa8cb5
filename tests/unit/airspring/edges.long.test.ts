import { briefJsonSchema, type Design, design, reportText } from 'airspring';
import { describe, expect, test } from 'vitest';
import { progressLines } from '../../../packages/airspring/src/command/progress.js';
import { anyBox } from '../../../packages/airspring/src/search/best.js';
import { bestOf, demo, metByWeights, put, searchFor } from '../../arbitrary/brief.js';

const [driver] = demo.drivers;

describe('room', () => {
  const straight = put(put(demo, 'vent.bends', 0), 'space.volume', '41 L');
  test('a box that stands in a smaller space is found in a larger one', () => {
    expect(anyBox(searchFor(straight))).toBeDefined();
    for (const edge of ['700 mm', '1500 mm']) {
      const space = { ...straight.space, width: edge, height: edge, depth: edge };
      expect(anyBox(searchFor({ ...straight, space })), edge).toBeDefined();
    }
  });

  test('no cutout is flush with a side panel: a slip of the saw is allowed for, and told', () => {
    const brief = { ...demo, space: { ...demo.space, cutoutPlay: '4 mm' } };
    for (const one of metByWeights(brief, 2).designs) {
      for (const hole of one.box.holes) {
        if (hole.what !== 'driver' || hole.form !== 'circle') continue;
        const { diameter, across, up } = hole;
        const [width, height] = one.box.outer;
        const walls = [across, up, width - across, height - up].map((at) => at - diameter / 2 - one.box.panelThickness);
        for (const wall of walls) expect(wall).toBeGreaterThanOrEqual(0.004 - 1e-9);
      }
    }
    const words = (asked: unknown) => reportText(metByWeights(asked)).replace(/\s+/g, ' ');
    expect(words(brief)).toMatch(/Every cutout for a driver is at least [\d.]+ mm away/);
    // Only what the brief does not say is assumed.
    expect(words(brief)).not.toContain('Around each cutout');
    expect(words(demo)).toContain('Around each cutout, 2 mm is kept clear');
  });
});

describe('bounds that are no whole millimetre', () => {
  test.each(['2 in', '2.5 in', '3 in', '3.5 in', '75.4 mm'])('a vent of exactly %s', (size) => {
    const brief = put(put(demo, 'vent.smallest', size), 'vent.largest', size);
    const metres = Number(size.split(' ')[0]) * (size.endsWith('in') ? 0.0254 : 1e-3);
    const { vent } = bestOf(brief);
    expect(vent?.diameter).toBeCloseTo(metres, 12);
  });
  test('never outside of them', () => {
    const brief = put(put(demo, 'vent.smallest', '75.4 mm'), 'space.width', '15.7 in');
    for (const { vent, box } of metByWeights(brief, 2).designs) {
      if (vent) expect(vent.diameter).toBeGreaterThanOrEqual(0.0754);
      expect(box.outer[0]).toBeLessThanOrEqual(15.7 * 0.0254 + 1e-12);
    }
  });
});

describe('depth', () => {
  const brief = put(put(demo, 'vent.smallest', '2.5 in'), 'vent.largest', '2.5 in');
  /** Air speed at a frequency for the wanted level: read off a design's own curves. */
  const speedAt = ({ curves }: Design, f: number, level: number): number => {
    const at = curves.frequencies.findIndex((one) => one >= f);
    const louder = 10 ** ((level - curves.levelHalfSpace[at]!) / 20);
    return (curves.airSpeedPeak?.[at] ?? 0) * louder;
  };
  test('is claimed only where the air in the vent keeps its limit at the wanted level', () => {
    const { asked, designs } = metByWeights(brief, 5);
    for (const one of designs) {
      expect(speedAt(one, one.response.depth, 92)).toBeLessThanOrEqual(12.05);
      const { below, cutoff, depth } = one.response;
      expect(depth).toBeGreaterThanOrEqual(cutoff - 1e-9);
      if (below?.load) expect(below.load.value / speedAt(one, cutoff, 92)).toBeCloseTo(1, 1);
    }
    const stopped = designs.filter(({ response }) => response.depth > response.cutoff + 0.5);
    expect(stopped.length).toBeGreaterThan(0);
    expect(reportText({ ok: true, version: 1, title: 'x', asked, designs: stopped, drivers: [] })).toMatch(
      /the air in the vent\s+would\s+reach/,
    );
  });
});

describe('candidates', () => {
  test('equal drivers and equal wirings are one candidate', () => {
    const many = { ...demo, drivers: Array.from({ length: 100 }, (_, i) => ({ ...driver!, name: `driver ${i}` })) };
    expect(searchFor(many).job.choices).toHaveLength(1);
    const wired = { ...demo, drivers: [{ ...driver!, wirings: Array.from({ length: 100 }, () => ({})) }] };
    expect(searchFor(wired).job.choices).toHaveLength(1);
    expect(
      searchFor({ ...demo, drivers: [{ ...driver!, wirings: [{ parallel: 2 }, { series: 2 }] }] }).job.choices,
    ).toHaveLength(2);
  });

  test('a search tells how far it is; the command says so once it takes longer than a second', () => {
    const done: number[] = [];
    design(
      { ...demo, box: { kinds: ['closed'] }, wanted: { ...demo.wanted, lowest: '45 Hz' } },
      { progress: ({ count, of }) => done.push(count / of) },
    );
    expect(done.length).toBeGreaterThan(1);
    expect(done.every((part) => part > 0 && part <= 1)).toBe(true);
    let now = 0;
    const lines: string[] = [];
    const progress = progressLines(
      (line) => lines.push(line),
      () => now,
    );
    for (now = 100; now <= 2500; now += 100) progress({ what: 'variant', count: now / 100, of: 25 });
    expect(lines).toEqual(['still searching: variant 10 of 25\n', 'still searching: variant 20 of 25\n']);
  });
});

describe('what is said', () => {
  test('a caution of travel is given only where some drive can be too much', () => {
    const quiet = { ...demo, amplifier: { voltage: '6 V' }, wanted: { ...demo.wanted, level: '80 dB' } };
    for (const { cautions, protection } of metByWeights(quiet, 2).designs) {
      const unsafe = [protection, protection.atFullVoltage].some((one) => one.lowestSafeFrequency || one.neverSafe);
      expect(cautions.some((text) => text.startsWith('Driver:'))).toBe(unsafe);
    }
  });

  test('an estimated driver, an isobaric chamber, filling and leaks are told with their amounts', () => {
    const { displacedVolume: _, ...bare } = driver!;
    const drivers = [{ ...bare, wirings: [{ series: 2, isobaric: true }] }];
    const wanted = { lowest: '45 Hz', highest: '110 Hz', level: '84 dB', fall: '6 dB' };
    const said = (brief: unknown) => reportText(metByWeights(brief)).replace(/\s+/g, ' ');
    const isobaric = said({ ...demo, drivers, wanted, box: {} });
    expect(isobaric).toMatch(
      /the inner driver takes up [\d.]+ L inside the box, estimated from its cutout and its depth/,
    );
    expect(isobaric).toMatch(/chamber between the drivers of a pair takes up [\d.]+ L/);
    const closed = { ...demo, wanted, box: { kinds: ['closed'], fillGain: 1.2 } };
    const filled = said(closed);
    expect(filled).toContain('Fill the box loosely');
    // The brief says it, so it is not assumed.
    for (const { assumed } of metByWeights(closed).designs) expect(JSON.stringify(assumed)).not.toContain('1.2');
    expect(filled).toContain('The impedance has one peak:');
    expect(filled).toContain('If the frequency of its peak is');
    expect(filled).toMatch(/resonance in the box \(fc\) [\d.]+ Hz/);
    expect(filled).toMatch(/quality factor of the driver in the box \(Qtc\) [\d.]+/);
    expect(said({ ...demo, box: {} })).toContain('The leaks of the box are assumed to have a QL of 7');
  });

  test('the schema says the default of each kind as it is', () => {
    const { box } = (
      briefJsonSchema() as { properties: Record<string, { properties: Record<string, { description: string }> }> }
    ).properties;
    expect(box!.properties.QL!.description).toMatch(/For closed\b.*default no leaks\. For vented, .*default 7/);
  });
});
