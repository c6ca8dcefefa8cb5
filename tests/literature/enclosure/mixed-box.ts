/** The boxes of mixed-box.py as ours. All drivers are invented. */
import { type Air, standardAir } from '@airspring/core/air';
import { type Driver, lr2Inductor } from '@airspring/core/driver';
import { type MixedBoxSpec, mixedBox, type System, type VentedChamberInput } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import fixture from './mixed-box.json' with { type: 'json' };

export { fixture };
export const air: Air = {
  ...standardAir,
  density: si('density', fixture.air.density),
  speedOfSound: si('speed', fixture.air.speedOfSound),
};
const { R2, L2, ...wide } = fixture.drivers.wide;
const eddy = lr2Inductor({ R2: si('resistance', R2), L2: si('inductance', L2) });
const drivers = { ...fixture.drivers, wide: { ...wide, coil: eddy } } as unknown as Readonly<
  Record<'low' | 'wide' | 'small', Driver>
>;
export const { low, small } = drivers;
const sourceResistance = si('resistance', fixture.sourceResistance);
const vented = fixture.vented as unknown as VentedChamberInput;
const closed = { ...fixture.closed, netVolume: si('volume', fixture.closed.netVolume) };

/** 'low' across the terminals; 'wide' and 'small' in series beside it. */
export const boxes: Readonly<Record<keyof typeof fixture.cases, System<MixedBoxSpec>>> = {
  // Made anew each time it is asked for, so that what is checked is what is made.
  get 'one volume'() {
    return mixedBox(
      {
        drivers: {
          parallel: [
            { name: 'low', driver: low },
            {
              series: [
                { name: 'wide', driver: drivers.wide },
                { name: 'small', driver: small },
              ],
            },
          ],
        },
        chambers: { main: vented },
        sourceResistance,
      },
      air,
    );
  },
  get 'two volumes'() {
    return mixedBox(
      {
        drivers: {
          parallel: [
            { name: 'low', driver: low, chamber: 'main' },
            {
              series: [
                { name: 'wide', driver: drivers.wide, chamber: 'upper' },
                { name: 'small', driver: small, chamber: 'upper' },
              ],
            },
          ],
        },
        chambers: { main: vented, upper: closed },
        sourceResistance,
      },
      air,
    );
  },
};
export const caseNames = Object.keys(fixture.cases) as (keyof typeof fixture.cases)[];
