/** Pipes of textbooks that are open at both ends: no end corrections, and no walls that rub. */
import { standardAir } from '@airspring/core/air';
import { type Radiation, withoutLoss } from '@airspring/core/duct';
import { si } from '@airspring/core/quantity';
import { standingWaves } from '@airspring/core/vent';
import { printedChecks } from '../printed.js';
import print from './printed.json' with { type: 'json' };

const read = printedChecks('vent', print);
const nothing: Radiation = Object.assign((_o: unknown, _k: number, out: Float64Array) => void out.fill(0), {
  sources: ['own'],
});
for (const name of ['pipe', 'organ pipe', 'overtones'] as const) {
  read('standingWaves', name, ({ length, speed, order }) => {
    const vent = { diameter: '10 mm', length: si('length', length) } as const;
    const free = { innerRadiation: nothing, outerRadiation: nothing, walls: withoutLoss };
    const waves = standingWaves({ vent, ...free, most: order }, { ...standardAir, speedOfSound: si('speed', speed) });
    return waves[order - 1]?.frequency ?? Number.NaN;
  });
}
