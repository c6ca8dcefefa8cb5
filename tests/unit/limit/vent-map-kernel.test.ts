import { systemOf, ventedFamily } from '@airspring/core/enclosure';
import { ventMap } from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import { simdSweep } from '@airspring/core/simd';
import { expect, test } from 'vitest';
import { driver } from '../laws/boxes.js';

test('a map takes the kernel of its boxes, and its cells are equal to the last bit', () => {
  let count = 0;
  const simd = simdSweep();
  const sweepRows: typeof simd.sweepRows = (...of) => {
    count++;
    return simd.sweepRows(...of);
  };
  const family: typeof ventedFamily = {
    ...ventedFamily,
    compile: (topology) => ventedFamily.compile(topology, sweepRows),
  };
  const [plain, swept] = [ventedFamily, family].map((one) =>
    ventMap({
      box: (netVolume, fb) => systemOf(one, { drivers: driver, netVolume, fb, QL: 7, ventArea: '1 m²' }),
      netVolumes: [0.02, 0.04, 0.06].map((volume) => si('volume', volume)),
      tunings: [20, 30, 40].map((fb) => si('frequency', fb)),
      ...{ level: '96 dB', from: '30 Hz', to: '100 Hz', airSpeedPeak: '17 m/s', displaced: '2 L', wall: '3 mm' },
      space: {
        outer: { width: '480 mm', height: '420 mm', depth: '400 mm' },
        thickness: '18 mm',
        driver: { outerDiameter: '270 mm', cutoutDiameter: '240 mm', depth: '130 mm' },
      },
    }),
  );
  expect(count).toBe(9);
  expect(swept).toEqual(plain);
});
