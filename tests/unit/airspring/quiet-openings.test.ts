/** `vent.quiet` asks the same of the mouth of a line and of an aperiodic vent as of a tube. */
import { greatestLevel } from '@airspring/core/limit';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import { type VentSection, ventNoise } from '@airspring/core/vent';
import { expect, test } from 'vitest';
import pipe from '../../../packages/airspring/briefs/classroom-organ-pipe.json' with { type: 'json' };
import ghost from '../../../packages/airspring/briefs/ghost-train.json' with { type: 'json' };
import { readBrief } from '../../../packages/airspring/src/brief/read.js';
import { aperiodic } from '../../../packages/airspring/src/kind/aperiodic.js';
import { foldedLine } from '../../../packages/airspring/src/kind/line.js';
import { standard } from '../../../packages/airspring/src/kind/standard.js';
import { bestBoxes } from '../../../packages/airspring/src/search/best.js';
import { searchFor } from '../../arbitrary/brief.js';

const metres = (value: number) => si('length', value);

for (const [name, kind, written, point, section] of [
  // 8 L of air in a line of 1.6 m that is 0.2 m wide: 25 mm deep.
  ['a line', foldedLine, pipe, [0.008, 1.6, 0.2], { width: metres(0.2), height: metres(0.025) }],
  ['an aperiodic vent', aperiodic, ghost, [0.02, 9000, 0.09], { diameter: metres(0.09) }],
] as const) {
  const jobOf = (quiet: boolean) => readBrief({ ...written, vent: { quiet } }, standard);
  const variantOf = (quiet: boolean) => {
    const job = jobOf(quiet);
    return kind.variants(job, job.choices[0]!)[0]!;
  };

  test(`${name} is quiet up to its limits, at the lowest tone and above, and not much beyond`, () => {
    const variant = variantOf(true);
    const system = variant.system([...point]);
    const own = variant.limits([...point]).filter((limit) => limit.name === 'quiet vent');
    const grid = logarithmicGrid(Number.parseFloat(written.wanted.lowest), 150, 12);
    const drives = greatestLevel(system, own, grid).driveVoltageRms;
    const verdict = (i: number, factor: number) => {
      const frequency = si('frequency', grid[i]!);
      const drive = { driveVoltageRms: si('voltageRms', factor * drives[i]!) };
      const airSpeedPeak = si('airSpeedPeak', respond(system, [frequency], drive).airSpeedPeak![0]!);
      const vent: VentSection = section;
      return ventNoise({ vent, frequency, airSpeedPeak }, { air: system.air }).verdict;
    };
    grid.forEach((_, i) => {
      expect(verdict(i, 0.999)).toBe('quiet');
    });
    expect(verdict(0, 1.001)).toBe('doubtful');
  });

  test(`${name} has the wish where it is asked for alone`, () => {
    const paths = (quiet: boolean) => variantOf(quiet).wishes.map(({ path }) => path);
    expect(paths(true)).toContain('vent.quiet');
    expect(paths(false)).not.toContain('vent.quiet');
  });
}

test('a box with an aperiodic vent that is asked to be quiet is so at the wanted level', () => {
  const [box] = bestBoxes(searchFor({ ...ghost, vent: { quiet: true } }), 1);
  const system = box!.variant.system(box!.point);
  const band = logarithmicGrid(Number.parseFloat(ghost.wanted.lowest), Number.parseFloat(ghost.wanted.highest), 40);
  const { levelHalfSpace, airSpeedPeak } = respond(system, band);
  band.forEach((f, i) => {
    const up = 10 ** ((Number.parseFloat(ghost.wanted.level) - levelHalfSpace[i]!) / 20);
    const vent = { diameter: metres(box!.point[2]!) };
    const speed = si('airSpeedPeak', up * airSpeedPeak![i]!);
    const frequency = si('frequency', f);
    expect(ventNoise({ vent, frequency, airSpeedPeak: speed }, { air: system.air }).verdict).toBe('quiet');
  });
});
