import { si } from '@airspring/core/quantity';
import { innerSize, netVolume, outerSize, sizeForNetVolume } from '@airspring/core/space';
import * as fc from 'fast-check';
import { expect } from 'vitest';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { test } from '../../arbitrary/property.js';
import { sizeArbitrary, thicknessArbitrary } from '../../arbitrary/space.js';

const size = sizeArbitrary(0.15, 1.2);
const thickness = thicknessArbitrary(0.003, 0.04);
const rule = fc.constantFrom('width' as const, 'height' as const, 'depth' as const, 'proportional' as const);

test.prop([size, thickness])('outer and inner size undo each other', (inner, t) => {
  const back = innerSize({ outer: outerSize({ inner, thickness: t }), thickness: t });
  for (const edge of ['width', 'height', 'depth'] as const) expect(back[edge]).toBeCloseTo(inner[edge], 12);
});

test.prop([size, thickness, rule, fc.double({ min: 1e-4, max: 0.5, noNaN: true })])(
  'a box made for a net volume has it, with all that stands inside',
  (outer, t, shape, litres) => {
    const contents = {
      driver: { displacedVolume: si('volume', 0.002), count: 2 },
      vent: { outerDiameter: si('length', 0.08), lengthInside: si('length', 0.3) },
      bracing: { fraction: 0.05, volume: si('volume', 0.001) },
    };
    const made = sizeForNetVolume({ outer, thickness: t, contents, shape, netVolume: si('volume', litres) });
    const result = netVolume({ outer: made, thickness: t, contents });
    expect(result.ok).toBe(true);
    if (result.ok) expect(Math.abs(result.netVolume / litres - 1)).toBeLessThan(1e-9);
  },
);

const any = (least: number, most: number) =>
  fc.double({ min: Math.log(least), max: Math.log(most), noNaN: true }).map(Math.exp);
const length = any(1.1e-6, 0.9e3).map((x) => si('length', x));
const volume = any(1.1e-9, 0.9e4).map((x) => si('volume', x));
const anySize = fc.record({ width: length, height: length, depth: length });

test.prop([anySize, length, rule, volume, length, any(1e-9, 0.999)], { numRuns: fuzzRuns })(
  'no accepted size ends in NaN or another error',
  (outer, thin, shape, net, tube, fraction) => {
    const contents = {
      driver: { cutoutDiameter: tube, depthInside: thin },
      vent: { outerDiameter: tube, lengthInside: thin },
      bracing: { fraction, volume: net },
    };
    const calls = [
      () => innerSize({ outer, thickness: thin }),
      () => outerSize({ inner: outer, thickness: thin }),
      () => netVolume({ outer, thickness: thin, contents }),
      () => netVolume({ outer, thickness: si('length', 1e-6) }),
      () => sizeForNetVolume({ outer, thickness: thin, contents, shape, netVolume: net }),
      () => sizeForNetVolume({ outer, thickness: si('length', 1e-6), shape, netVolume: net }),
    ];
    for (const call of calls) {
      try {
        expect(JSON.stringify(call())).not.toMatch(/null|NaN/);
      } catch (error) {
        expect((error as { code?: string }).code).toBe('airspring-input');
      }
    }
  },
);
