import { standardAir } from '../../packages/core/src/air/index.js';
import { quasiThirdOrder, solveAlignment } from '../../packages/core/src/alignment/index.js';
import { walkToShape } from '../../packages/core/src/alignment/roots.js';
import { shapedBox } from '../../packages/core/src/alignment/shaped-box.js';
import { boxUnknowns } from '../../packages/core/src/alignment/unknowns.js';
import { driver } from '../../packages/core/src/driver/index.js';
import { ventedBox, ventedFamily } from '../../packages/core/src/enclosure/index.js';
import { ventMap } from '../../packages/core/src/limit/index.js';
import { logarithmicGrid, si } from '../../packages/core/src/quantity/index.js';
import { compileAtLevel } from '../../packages/core/src/response/index.js';
import { compileBuilds, normal, within } from '../../packages/core/src/tolerance/index.js';
import { ventLoss } from '../../packages/core/src/vent/index.js';
import { COMPILING, runRow } from '../measure.js';

/** An invented ten-inch driver without a coil, so that the alignment is met exactly. Its numbers stand in design.py as well. */
const one = driver({ Sd: '330 cm²', Mms: '72 g', Cms: '0.39 mm/N', Rms: '3.4 kg/s', Re: '5.6 ohm', Bl: '14 N/A' });
const input = { drivers: one, QL: 7 };
const spec = ventedFamily.read({ ...input, netVolume: '40 L', fb: '30 Hz' });
const box = shapedBox(ventedFamily, spec, standardAir)!;
const sought = boxUnknowns(ventedFamily.unknowns ?? [], spec, standardAir);
const start = [...sought.map(({ starts }) => Math.log(starts[0]!)), 3];
const { target } = quasiThirdOrder;
const walk = walkToShape(target as Exclude<typeof target, object>, box, spec, sought);
const system = ventedBox(spec);
const grid = logarithmicGrid(10, 200, 200);
const loss = ventLoss({ vent: { diameter: '75 mm', length: '25 cm' } }).nominal;
const builds = compileBuilds(
  system,
  { Cms: normal(0.08), Bl: normal(0.03), Cab: within(0.03), vent: within(0.05) },
  grid,
);
const steps = Array.from({ length: 100 }, (_, i) => i);

await runRow({
  alignment: () => ({ call: () => walk.rootAt(walk.place(start, undefined)!, undefined) }),
  'alignment-whole': () => ({ call: () => solveAlignment(quasiThirdOrder, ventedFamily, input), warming: COMPILING }),
  builds: () => ({ call: () => builds(7, 0, 10_000) }),
  compression: () => ({
    call: () => {
      const lossy = ventedBox({ ...spec, ventArea: si('area', 0.0044) });
      const kernel = compileAtLevel(lossy, grid);
      return steps.map((i) => kernel.at(loss, 0.1 * 1.07 ** i));
    },
  }),
  map: () => ({
    call: () =>
      ventMap({
        box: (netVolume, fb) => ventedBox({ drivers: one, netVolume, fb, QL: 7, ventArea: si('area', 1) }),
        netVolumes: steps.map((i) => si('volume', 0.01 + 0.0006 * i)),
        tunings: steps.map((i) => si('frequency', 16 + 0.5 * i)),
        level: si('level', 96),
        from: si('frequency', 30),
        to: si('frequency', 100),
        airSpeedPeak: si('speed', 17),
        space: {
          outer: { width: '480 mm', height: '420 mm', depth: '400 mm' },
          thickness: '18 mm',
          driver: { outerDiameter: '270 mm', cutoutDiameter: '240 mm', depth: '130 mm' },
        },
        displaced: '2 L',
        wall: '3 mm',
      }),
  }),
});
