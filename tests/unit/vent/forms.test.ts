import { standardAir } from '@airspring/core/air';
import {
  compileLine,
  compileRadiation,
  flanged,
  flangedRadiation,
  flared,
  roundSection,
  unflanged,
  withNeighbours,
} from '@airspring/core/duct';
import type { Network } from '@airspring/core/network';
import { si } from '@airspring/core/quantity';
import {
  acousticMass,
  compileLengthForTuning,
  compileVentAdmittance,
  effectiveLength,
  lengthForTuning,
  severalVents,
  standingWaves,
  type Tuning,
  type TuningInput,
  tuning,
} from '@airspring/core/vent';
import { describe, expect, it } from 'vitest';
import { chained, listed, type Numbered, networkOf, part } from '../../arbitrary/network-of.js';
import { byPlan } from '../../circuit/compare.js';

const fault = (code: string, path: string) =>
  expect.objectContaining({ faults: expect.arrayContaining([expect.objectContaining({ code, path })]) });
function found(input: TuningInput): Tuning {
  const result = tuning(input);
  if (!result.ok) throw new Error(JSON.stringify(result.because));
  return result;
}
const slot = { width: '300 mm', height: '30 mm', length: '25 cm' } as const;
const round = { diameter: '75 mm', length: '15 cm' } as const;

describe('a slot', () => {
  it('acts longer along walls, and says that its free end is an estimate', () => {
    const at = (along: 'none' | 'one' | 'two') => found({ vent: { ...slot, along }, netVolume: '60 L' });
    expect(at('one').fb).toBeLessThan(at('none').fb);
    expect(at('two').fb).toBeLessThan(at('one').fb);
    expect(at('none').warnings.map(({ path }) => path)).toContain('vent.innerEnd');
  });

  it('takes its boards out of the box, without those that the panels stand for', () => {
    const boards = { ...slot, wall: '18 mm' } as const;
    const taken = (along: 'none' | 'one' | 'two') =>
      0.06 - found({ vent: { ...boards, along }, volumeBeforeVent: '60 L', panelThickness: '18 mm' }).netVolume;
    expect(taken('none')).toBeCloseTo(0.336 * 0.066 * 0.232, 12);
    expect(taken('one')).toBeCloseTo(0.336 * 0.048 * 0.232, 12);
    expect(taken('two')).toBeCloseTo(0.318 * 0.048 * 0.232, 12);
  });

  it('is the same whichever side is called its width', () => {
    const turned = { width: slot.height, height: slot.width, length: slot.length };
    expect(effectiveLength({ vent: turned })).toBe(effectiveLength({ vent: slot }));
  });

  it('refuses a flare, and every field that is not its own', () => {
    expect(() => tuning({ vent: { ...slot, innerEnd: flared({ radius: '1 cm' }) }, netVolume: '60 L' })).toThrowError(
      fault('inconsistent', 'vent.innerEnd'),
    );
    const mixed = { ...slot, diameter: '75 mm' } as never;
    expect(() => tuning({ vent: mixed, netVolume: '60 L' })).toThrowError(fault('unknown-field', 'vent.diameter'));
    const half = { width: '30 cm', length: '20 cm' } as never;
    expect(() => tuning({ vent: half, netVolume: '60 L' })).toThrowError(fault('empty', 'vent.height'));
  });
});

describe('a flared vent', () => {
  const end = flared({ radius: '20 mm' });
  const flares = { diameter: '75 mm', innerEnd: flared({ radius: '20 mm', end: unflanged }), outerEnd: end } as const;

  it('tunes higher than a straight one of the same length, and is longer for the same tuning', () => {
    const straight = found({ vent: round, netVolume: '40 L' });
    expect(found({ vent: { ...flares, length: '15 cm' }, netVolume: '40 L' }).fb).toBeGreaterThan(straight.fb);
    const longer = lengthForTuning({ vent: flares, netVolume: '40 L', fb: straight.fb });
    expect(longer.ok && longer.length).toBeGreaterThan(0.15);
    expect(found({ vent: round, netVolume: '40 L' }).warnings).toEqual([]);
  });

  it('is at least as long as its flares', () => {
    expect(() => tuning({ vent: { ...flares, length: '39 mm' }, netVolume: '40 L' })).toThrowError(
      fault('inconsistent', 'vent.length'),
    );
    const shortest = found({ vent: { ...flares, length: si('length', 0.04) }, netVolume: '10 L' });
    const result = lengthForTuning({ vent: flares, netVolume: '10 L', fb: si('frequency', shortest.fb * 1.01) });
    expect(result).toMatchObject({ ok: false, because: [{ code: 'tuning-too-high' }] });
    expect(result.ok ? '' : result.because[0]!.text).toContain('with a vent of 0.04 m, the length of its flares');
    expect(compileLengthForTuning(flares)(0.01, shortest.fb * 1.01)).toBeLessThanOrEqual(0);
    expect(compileLengthForTuning(flares)(0.01, shortest.fb * 0.99)).toBeGreaterThan(0.04);
  });

  it('says that the free flare is an estimate, and where the mouth is too wide', () => {
    const { warnings } = found({ vent: { ...flares, length: '15 cm' }, netVolume: '40 L' });
    expect(warnings.map(({ path }) => path)).toEqual(['vent.innerEnd']);
    const wide = { diameter: '20 cm', length: '1 m', outerEnd: flared({ radius: '50 cm' }) } as const;
    expect(found({ vent: wide, netVolume: '40 L' }).warnings.map(({ path }) => path)).toContain('vent.outerEnd');
  });
});

describe('a folded vent', () => {
  const bend = { angle: '90 deg', centreLineRadius: '120 mm', count: 2 } as const;

  it('counts by its centre line, with all its bends', () => {
    expect(effectiveLength({ vent: { ...round, length: '50 cm', bend } })).toBe(
      effectiveLength({ vent: { ...round, length: '50 cm' } }),
    );
    expect(() => effectiveLength({ vent: { ...round, length: '37 cm', bend } })).toThrowError(
      fault('inconsistent', 'vent.length'),
    );
    const result = lengthForTuning({ vent: { diameter: '75 mm', bend }, netVolume: '40 L', fb: '35 Hz' });
    expect(result).toMatchObject({ ok: false, because: [{ code: 'bend-too-long' }] });
  });
});

describe('several vents', () => {
  it('are one vent when there is one, and its count when they are alike', () => {
    const single = found({ vent: round, netVolume: '40 L' });
    const one = severalVents({ vents: [round], netVolume: '40 L' });
    const pair = severalVents({ vents: [round, round], netVolume: '80 L' });
    const double = severalVents({ vents: [{ ...round, count: 2 }], netVolume: '80 L' });
    expect(one).toMatchObject({ fb: single.fb, acousticMass: single.acousticMass, shares: [{ flow: 1, airSpeed: 1 }] });
    expect(pair.ok && pair.shares.map(({ flow }) => flow)).toEqual([0.5, 0.5]);
    expect(pair.ok && double.ok && pair.fb / double.fb).toBeCloseTo(1, 12);
    expect(one.ok && one.shares[0]!.acousticMass).toBe(acousticMass({ vent: round, frequency: single.fb }));
  });

  it('tune lower when they are near each other', () => {
    const beside = { ...round, outerEnd: withNeighbours(flanged, ['80 mm']) };
    const [near, far] = [beside, round].map((vent) => severalVents({ vents: [vent, vent], netVolume: '80 L' }));
    expect(near!.ok && far!.ok && near!.fb / far!.fb).toBeLessThan(0.99);
  });

  it('refuse with the place of each', () => {
    const vents = [round, { ...round, bend: { angle: '90 deg', centreLineRadius: '10 mm' } }] as const;
    expect(() => severalVents({ vents, netVolume: '40 L' })).toThrowError(
      fault('inconsistent', 'vents[1].bend.centreLineRadius'),
    );
    expect(() => severalVents({ vents: [], netVolume: '40 L' })).toThrowError(fault('empty', 'vents'));
    const short = [{ ...round, length: '1 cm' }] as const;
    expect(() => severalVents({ vents: short, netVolume: '40 L', panelThickness: '18 mm' })).toThrowError(
      fault('inconsistent', 'vents[0].length'),
    );
  });

  it('say why when they fill the box', () => {
    const wide = { diameter: '20 cm', length: '1 m' } as const;
    expect(severalVents({ vents: [wide, round], volumeBeforeVent: '30 L' })).toMatchObject({
      ok: false,
      because: [{ code: 'vent-fills-box' }],
    });
  });
});

describe('standing waves', () => {
  it('gives the numbers of its example', () => {
    const [first] = standingWaves({ vent: round });
    expect(first!.frequency).toBeCloseTo(868.6, 1);
    expect(first!.Q).toBeCloseTo(6.6, 1);
  });

  it('come in order, near the multiples of the first, and less sharp', () => {
    const waves = standingWaves({ vent: { diameter: '40 mm', length: '50 cm' }, most: 4 });
    expect(waves.map(({ order }) => order)).toEqual([1, 2, 3, 4]);
    waves.forEach(({ order, frequency }) => {
      expect(frequency / (order * waves[0]!.frequency)).toBeCloseTo(1, 1);
    });
    expect(waves[3]!.Q).toBeLessThan(waves[0]!.Q);
  });

  it('are fewer where friction leaves none, and warn where waves travel across', () => {
    expect(standingWaves({ vent: { diameter: '0.1 mm', length: '50 cm' } })).toEqual([]);
    const wide = standingWaves({ vent: slot });
    expect(wide.at(-1)!.warnings.map(({ path }) => path)).toContain('k·width');
  });

  it('several alike have those of one', () => {
    const of = (count: number) => standingWaves({ vent: { ...round, count }, most: 1 })[0]!;
    expect(of(3).frequency / of(1).frequency).toBeCloseTo(1, 12);
    expect(of(3).Q / of(1).Q).toBeCloseTo(1, 9);
  });
});

it('the admittance of a vent is that of its mass at low frequency, flared or not, and of a slot', () => {
  const f = 5;
  const vents = [
    round,
    { ...round, count: 2 },
    { ...round, outerEnd: flared({ radius: '20 mm' }) },
    { ...slot, along: 'one' },
  ] as const;
  for (const vent of vents) {
    const [re, im] = [new Float64Array(1), new Float64Array(1)];
    compileVentAdmittance({ vent })(Float64Array.of(f), re, im);
    const lumped = 1 / (2 * Math.PI * f * acousticMass({ vent, frequency: si('frequency', f) }));
    // Friction at the walls adds some hundredths to the mass at 5 Hz.
    const ratio = -1 / (lumped * (-1 / im[0]!) * (1 + (re[0]! / im[0]!) ** 2));
    expect(ratio).toBeLessThan(-0.9);
    expect(ratio).toBeGreaterThan(-1);
  }
});

describe('sizes that fit to the last bit of their sum are taken', () => {
  const every = (from: number, to: number) => Array.from({ length: to - from }, (_, i) => from + i);
  const mm = (value: number) => `${value} mm` as const;

  it('a flange as wide as the tube with its wall, and the sharpest bend there is', () => {
    for (const d of every(20, 120)) {
      for (const w of every(1, 9)) {
        const vent = { diameter: mm(d), wall: mm(w), innerFlangeDiameter: mm(d + 2 * w), length: '20 cm' } as const;
        expect(effectiveLength({ vent })).toBeGreaterThan(0.2);
        const bend = { angle: '90 deg', centreLineRadius: mm(d + w) } as const;
        expect(effectiveLength({ vent: { diameter: mm(2 * d), wall: mm(w), length: '2 m', bend } })).toBeGreaterThan(2);
      }
    }
  });

  it('flares that take all of the length', () => {
    for (const inner of every(1, 40)) {
      for (const outer of every(1, 40)) {
        const ends = { innerEnd: flared({ radius: mm(inner) }), outerEnd: flared({ radius: mm(outer) }) };
        const vent = { diameter: '75 mm', length: mm(inner + outer), ...ends } as const;
        expect(effectiveLength({ vent })).toBeGreaterThan(0);
        const [re, im] = [new Float64Array(1), new Float64Array(1)];
        compileVentAdmittance({ vent })(Float64Array.of(40), re, im);
        expect(Number.isFinite(re[0]! + im[0]!)).toBe(true);
      }
    }
  });

  it('the length of a vent that is as long as its panel is found again', () => {
    for (const t of every(5, 60)) {
      const box = { netVolume: '40 L', panelThickness: mm(t) } as const;
      const { fb } = found({ vent: { diameter: '75 mm', length: mm(t) }, ...box });
      const again = lengthForTuning({ vent: { diameter: '75 mm' }, fb, ...box });
      expect(again.ok && again.length).toBeCloseTo(t / 1000, 12);
    }
  });
});

it('a vent too short for its bend is none through either door', () => {
  const vent = { diameter: '75 mm', bend: { angle: '90 deg', centreLineRadius: '15 cm' } } as const;
  expect(lengthForTuning({ vent, netVolume: '40 L', fb: '50 Hz' })).toMatchObject({
    because: [{ code: 'bend-too-long' }],
  });
  expect(compileLengthForTuning(vent)(0.04, 50)).toBeLessThanOrEqual(0);
  expect(compileLengthForTuning(vent)(0.04, 25)).toBeGreaterThan(0.236);
});

it('neighbours leave an end its flare, which takes its length and must not meet theirs', () => {
  const end = withNeighbours(flared({ radius: '20 mm' }), ['20 cm']);
  expect(end.flare).toMatchObject({ radius: 0.02 });
  const vent = { diameter: '75 mm', length: '15 mm', outerEnd: end } as const;
  expect(() => tuning({ vent, netVolume: '40 L' })).toThrowError(fault('inconsistent', 'vent.length'));
  const near = withNeighbours(flared({ radius: '20 mm' }), ['110 mm']);
  expect(() => near({ radius: 0.0375 }, 0)).toThrowError(fault('inconsistent', 'distance'));
});

describe('a vent as a line', () => {
  const air = standardAir;
  const vent = { diameter: '75 mm', length: '30 cm', outerEnd: flanged, innerEnd: unflanged } as const;
  const radius = 0.0375;
  const section = roundSection({ diameter: '75 mm' });
  const radiation = compileRadiation({ diameter: '75 mm', radiation: flangedRadiation });
  /** The mouth as an admittance, the inner end as one as well: 1/(jωρΔℓ/S). */
  const inverse = (f: Float64Array, re: Float64Array, im: Float64Array) => {
    radiation(f, { re, im });
    for (let i = 0; i < f.length; i++) {
      const [a, b] = [re[i]!, im[i]!];
      re[i] = a / (a * a + b * b);
      im[i] = -b / (a * a + b * b);
    }
  };
  const innerEnd = (f: Float64Array, re: Float64Array, im: Float64Array) => {
    for (let i = 0; i < f.length; i++) {
      const omega = 2 * Math.PI * f[i]!;
      const length = unflanged({ radius }, omega / air.speedOfSound);
      re[i] = 0;
      im[i] = -section.area / (omega * air.density * length);
    }
  };
  const shared: Numbered[] = [
    { kind: 'source', name: 'drive', nodes: ['drive', 'ground'] },
    part('resistor', 'R', ['drive', 'box'], 1e4),
  ];
  const whole = networkOf([...shared, listed('vent', ['box', 'ground'], compileVentAdmittance({ vent }))], {
    inner: { of: 'flow', element: 'vent' },
  });
  const apart = networkOf(
    [
      ...shared,
      listed('end', ['box', 'throat'], innerEnd),
      chained('line', ['throat', 'mouth'], compileLine({ section, length: '30 cm' })),
      listed('air', ['mouth', 'ground'], inverse),
    ],
    { inner: { of: 'flow', element: 'end' }, mouth: { of: 'flow', element: 'line' } },
  );
  const flows = (network: Network, frequencies: number[]) =>
    Object.values(byPlan(network, Float64Array.from(frequencies)));

  it('takes in what its end, its tube and its mouth take in as a chain', () => {
    const frequencies = [20, 40, 150, 500, 900];
    const [one] = flows(whole, frequencies);
    const [two] = flows(apart, frequencies);
    frequencies.forEach((_, i) => {
      const size = Math.hypot(one!.re[i]!, one!.im[i]!);
      expect(Math.hypot(one!.re[i]! - two!.re[i]!, one!.im[i]! - two!.im[i]!) / size).toBeLessThan(1e-10);
    });
  });

  it('sends out by its mouth more than it takes in, and turned round at its first standing wave', () => {
    const low = (0.5 * air.speedOfSound) / (2 * Math.PI * effectiveLength({ vent }));
    const first = standingWaves({ vent })[0]!.frequency;
    const [inner, mouth] = flows(apart, [low / 20, low, first]);
    const ratio = (i: number) =>
      (mouth!.re[i]! * inner!.re[i]! + mouth!.im[i]! * inner!.im[i]!) / (inner!.re[i]! ** 2 + inner!.im[i]! ** 2);
    expect(ratio(0)).toBeCloseTo(1, 3);
    expect(ratio(1)).toBeGreaterThan(1.09);
    expect(ratio(1)).toBeLessThan(1.15);
    expect(ratio(2)).toBeLessThan(-0.5);
  });
});

it('sides that are undefined make no slot', () => {
  const vent = { diameter: '75 mm', length: '15 cm', width: undefined, height: undefined } as const;
  expect(tuning({ vent, netVolume: '40 L', volumeBeforeVent: undefined })).toEqual(
    tuning({ vent: { diameter: '75 mm', length: '15 cm' }, netVolume: '40 L' }),
  );
});
