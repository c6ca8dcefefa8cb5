/** What a vent loses, by its shape: more of what loses never loses less, and the same vent twice over loses the same. */
import { standardAir } from '@airspring/core/air';
import { bendLoss, flanged, turbulentWall } from '@airspring/core/duct';
import { isInputError } from '@airspring/core/fault';
import { flowLossLaws } from '@airspring/core/laws';
import { si } from '@airspring/core/quantity';
import { ventLoss } from '@airspring/core/vent';
import { expect } from 'vitest';
import { fc, test } from '../../arbitrary/property.js';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const metres = (value: number) => si('length', value);
const radians = (value: number) => si('angle', value);
const bendsOf = (input: Parameters<typeof ventLoss>[0]) => ventLoss(input).parts.find(({ part }) => part === 'bends')!;

test.prop([between(0.01, 0.1), between(0.5, 4), between(0.1, 6), between(1, 3)])(
  'a slot that is wider bends alike: it is several narrow ones beside each other',
  (height, ratio, angle, wider) => {
    const bend = { angle: radians(angle), centreLineRadius: metres(ratio * height) };
    const [one, other] = [5, 5 * wider].map((width) =>
      bendsOf({ vent: { width: metres(width * height), height: metres(height), length: metres(1), bend } }),
    );
    expect(other!.nominal).toBeCloseTo(one!.nominal, 12);
    expect(one!.nominal).toBeCloseTo(bendLoss({ ...bend, diameter: metres(height) }), 12);
  },
);

test.prop([between(0.5, 5), between(0.01, 5), between(0.01, 5)])(
  'a bend that turns farther never loses less, with a radius and without',
  (ratio, one, other) => {
    const [least, most] = [Math.min(one, other), Math.max(one, other)];
    for (const radius of [{ centreLineRadius: metres(0.1 * ratio) }, {}]) {
      const [less, more] = [least, most].map((turns) =>
        bendLoss({ diameter: '100 mm', angle: radians(turns * 2), ...radius }),
      );
      expect(more).toBeGreaterThanOrEqual(less! * (1 - 1e-12));
    }
  },
);

test.prop([between(1e-4, 0.2), between(1e-4, 0.2), between(0.1, 60), between(5, 200)])(
  'rougher walls never lose less, and where the formula ends they are refused',
  (one, other, speed, frequency) => {
    const lost = (ratio: number): number | 'refused' => {
      try {
        const { nominal } = ventLoss({ vent: { diameter: '100 mm', length: '50 cm' }, roughness: metres(0.1 * ratio) });
        return nominal.resistance(speed, frequency, standardAir);
      } catch (error) {
        expect(isInputError(error) && error.faults[0]!.path).toBe('roughness');
        return 'refused';
      }
    };
    const [less, more] = [lost(Math.min(one, other)), lost(Math.max(one, other))];
    if (Math.max(one, other) > 0.051) expect(more).toBe('refused');
    if (less !== 'refused' && more !== 'refused') expect(more).toBeGreaterThanOrEqual(less * (1 - 1e-12));
  },
);

test.prop([between(0.001, 0.3), between(0.5, 20), between(0.002, 0.05)])(
  'what walls and ends lose obeys the laws of a loss in the narrowest tube as in the widest',
  (diameter, slenderness, roughness) => {
    const vent = { diameter: metres(diameter), length: metres(slenderness * diameter) };
    const walls = turbulentWall({ ...vent, roughness: metres(roughness * diameter) });
    const { low, nominal, high } = ventLoss({ vent, roughness: metres(roughness * diameter) });
    for (const loss of [walls, low, nominal, high])
      expect(flowLossLaws(loss).filter(({ holds }) => !holds)).toEqual([]);
  },
);

test.prop([between(0.02, 0.3), between(0, 0.01)])(
  'an inner end flush with a wall loses what the outer end does',
  (diameter, wall) => {
    const vent = { diameter: metres(diameter), length: metres(1), wall: metres(wall > 1e-6 ? wall : 0) };
    const [inner, outer] = ventLoss({ vent: { ...vent, innerEnd: flanged } }).parts;
    expect(inner).toEqual({ ...outer, part: 'inner end' });
    const [free] = ventLoss({ vent }).parts;
    expect(free!.nominal).toBeGreaterThanOrEqual(inner!.nominal);
  },
);
