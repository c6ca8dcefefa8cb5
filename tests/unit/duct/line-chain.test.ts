import {
  alongWalls,
  compileLine,
  compileOpenLine,
  compileRadiation,
  compileSteppedLine,
  conicalProfile,
  exponentialProfile,
  flanged,
  flangedRadiation,
  flared,
  flaredProfile,
  lineConstants,
  mutualLength,
  pistonRadiation,
  profileMass,
  rectangularPiston,
  roundSection,
  slitSection,
  smallOpening,
  unflanged,
  unflangedRadiation,
  withNeighbours,
} from '@airspring/core/duct';
import { describe, expect, it } from 'vitest';

const fault = (code: string, path: string) =>
  expect.objectContaining({ faults: expect.arrayContaining([expect.objectContaining({ code, path })]) });
const radiated = (radiation: typeof pistonRadiation, k: number) => {
  const out = new Float64Array(2);
  radiation({ radius: 0.05 }, k, out);
  return out;
};
const taper = { innerDiameter: '60 mm', outerDiameter: '90 mm', length: '15 cm' } as const;

describe('the numbers of the examples', () => {
  it('sections and lines', () => {
    expect(roundSection({ diameter: '75 mm' }).area).toBeCloseTo(0.004418, 6);
    expect(slitSection({ width: '300 mm', height: '20 mm' }).area).toBeCloseTo(0.006, 12);
    const { attenuation } = lineConstants({ section: roundSection({ diameter: '75 mm' }), frequency: '40 Hz' });
    expect(attenuation).toBeCloseTo(0.00502, 5);
  });

  it('radiation', () => {
    expect(radiated(pistonRadiation, 20)[0]).toBeCloseTo(0.4232752, 7);
    expect(radiated(unflangedRadiation, 10)[0]).toBeCloseTo(0.0597, 4);
    expect(radiated(flangedRadiation, 10)[1]).toBeCloseTo(0.38151, 5);
    expect(radiated(smallOpening(flanged, 2 * Math.PI), 2)[0]).toBeCloseTo(0.005, 10);
  });

  it('ends', () => {
    expect(rectangularPiston({ radius: 0.05, aspect: 10 }, 0)).toBeCloseTo(0.031478, 6);
    expect(alongWalls('one')({ radius: 0.05, aspect: 10 }, 0)).toBeCloseTo(0.0512, 4);
    expect(mutualLength({ diameter: '75 mm', distance: '100 mm' })).toBeCloseTo(0.0073, 4);
    expect(withNeighbours(flanged, ['100 mm'])({ radius: 0.0375 }, 0)).toBeCloseTo(0.0381, 4);
    expect(flared({ radius: '20 mm' })({ radius: 0.0375 }, 0)).toBeCloseTo(0.0233, 5);
  });

  it('profiles', () => {
    expect(conicalProfile(taper).radius(0.075)).toBeCloseTo(0.0375, 12);
    expect(exponentialProfile(taper).radius(0.075)).toBeCloseTo(0.03674, 5);
    expect(flaredProfile({ diameter: '70 mm', length: '20 cm', outerFlare: '20 mm' }).radius(0.2)).toBeCloseTo(
      0.055,
      8,
    );
    expect(profileMass(conicalProfile(taper)).effectiveLength).toBeCloseTo(0.1, 10);
  });
});

describe('refusals, all faults at once', () => {
  it.each([
    ['a section', () => slitSection({ width: '0 mm', height: '-1 mm' }), 'not-positive', 'section.height'],
    [
      'a line',
      () => compileLine({ section: roundSection({ diameter: '75 mm' }), length: '0 m' }),
      'not-positive',
      'line.length',
    ],
    [
      'a column',
      () => compileRadiation({ diameter: '0 m', radiation: pistonRadiation }),
      'not-positive',
      'radiation.diameter',
    ],
    ['a solid angle', () => smallOpening(flanged, 0), 'not-positive', 'solidAngle'],
    ['openings that overlap', () => mutualLength({ diameter: '75 mm', distance: '70 mm' }), 'inconsistent', 'distance'],
    [
      'a neighbour that overlaps',
      () => withNeighbours(flanged, ['70 mm'])({ radius: 0.04 }, 0),
      'inconsistent',
      'distance',
    ],
    ['a second distance', () => withNeighbours(flanged, ['70 mm', '0 mm']), 'not-positive', 'distances.1'],
    ['a flare', () => flared({ radius: '0 mm' }), 'not-positive', 'flare.radius'],
    [
      'flares beyond the length',
      () => flaredProfile({ diameter: '1 cm', length: '1 cm', innerFlare: '2 cm' }),
      'inconsistent',
      'profile.length',
    ],
    ['steps', () => compileSteppedLine(conicalProfile(taper), 0), 'out-of-range', 'steps'],
  ] as const)('%s', (_, run, code, path) => {
    expect(run).toThrowError(fault(code, path));
  });

  it('a profile without a radius', () => {
    const profile = (radius: number) => ({ radius: () => radius, length: 0.1, joints: [], sources: ['own'] });
    expect(() => profileMass(profile(0))).toThrowError(fault('not-positive', 'profile'));
    expect(() => compileSteppedLine(profile(Number.NaN))).toThrowError(fault('not-finite', 'profile'));
  });
});

describe('warnings', () => {
  it('says where waves travel across, and where a slit is too square', () => {
    const round = roundSection({ diameter: '100 mm' });
    expect(lineConstants({ section: round, frequency: '2000 Hz' }).warnings).toEqual([]);
    expect(lineConstants({ section: round, frequency: '2100 Hz' }).warnings[0]?.path).toBe('k·width');
    const square = slitSection({ width: '60 mm', height: '50 mm' });
    expect(lineConstants({ section: square, frequency: '50 Hz' }).warnings[0]?.path).toBe('width/height');
  });

  it('says where a profile opens more than 45°', () => {
    expect(profileMass(conicalProfile(taper)).warnings).toEqual([]);
    const quarter = flaredProfile({ diameter: '70 mm', length: '20 cm', outerFlare: '20 mm' });
    expect(profileMass(quarter).warnings[0]?.path).toBe('profile');
  });

  it('a flare is known for the flush end alone', () => {
    expect(flared({ radius: '2 cm' }).estimate).toBeUndefined();
    expect(flared({ radius: '2 cm', end: unflanged }).estimate).toBeDefined();
  });
});

it('an open line of any number of frequencies is that of one at a time', () => {
  const end = { opening: { radius: 0.0375 }, radiation: flangedRadiation };
  const chain = compileLine({ section: roundSection({ diameter: '75 mm' }), length: '15 cm' });
  const kernel = compileOpenLine({ chain, inner: end, outer: end });
  const f = Float64Array.from({ length: 150 }, (_, i) => 10 + 7 * i);
  const [re, im, a, b] = [new Float64Array(150), new Float64Array(150), new Float64Array(1), new Float64Array(1)];
  kernel(f, re, im);
  for (const i of [0, 63, 64, 149]) {
    kernel(f.subarray(i, i + 1), a, b);
    expect([a[0], b[0]]).toEqual([re[i], im[i]]);
  }
});

describe('sizes that fit to the last bit of their sum', () => {
  it('two flares that take all of the length meet in one joint', () => {
    for (let inner = 1; inner < 100; inner++) {
      for (let outer = 1; outer < 100; outer++) {
        const flares = { innerFlare: `${inner} mm`, outerFlare: `${outer} mm` } as const;
        const both = flaredProfile({ diameter: '70 mm', length: `${inner + outer} mm`, ...flares });
        expect(both.joints).toHaveLength(1);
      }
    }
    const three = flaredProfile({ diameter: '70 mm', length: '30 mm', innerFlare: '10 mm', outerFlare: '20 mm' });
    expect(profileMass(three).narrowestDiameter).toBeCloseTo(0.07, 12);
  });
  it('a wall of 45° is within the range', () => {
    for (const rise of [10, 15, 20, 25, 30, 35]) {
      const cone = { innerDiameter: '60 mm', outerDiameter: `${60 + 2 * rise} mm`, length: `${rise} mm` } as const;
      expect(profileMass(conicalProfile(cone)).warnings).toEqual([]);
    }
  });
  it('of two waists the narrower is found, wherever it is', () => {
    for (const turned of [false, true]) {
      for (const place of [0.03, 0.05, 0.12, 0.17]) {
        const waist = (x: number, at: number, depth: number) => depth * Math.exp(-(((x - at) / 0.008) ** 2));
        const radius = (x: number) => 0.03 - waist(x, place, 0.012) - waist(x, 0.09, 0.006);
        const profile = {
          radius: (x: number) => radius(turned ? 0.2 - x : x),
          length: 0.2,
          joints: [],
          sources: ['own'],
        };
        expect(profileMass(profile).narrowestDiameter).toBeCloseTo(0.036, 4);
      }
    }
  });
  it('a profile without a length, or with joints out of order or outside it, is refused by name', () => {
    const tube = (length: number, joints: number[]) => ({ radius: () => 0.03, length, joints, sources: ['own'] });
    expect(() => profileMass(tube(0.1, [0.06, 0.05]))).toThrowError(fault('unsorted', 'profile.joints[1]'));
    expect(() => profileMass(tube(0.1, [0.2]))).toThrowError(fault('unsorted', 'profile.joints[0]'));
    for (const length of [0, -1]) {
      expect(() => profileMass(tube(length, []))).toThrowError(fault('not-positive', 'profile.length'));
      expect(() => compileSteppedLine(tube(length, []))).toThrowError(fault('not-positive', 'profile.length'));
    }
    expect(() => compileSteppedLine(tube(Number.NaN, []))).toThrowError(fault('not-finite', 'profile.length'));
  });
});
