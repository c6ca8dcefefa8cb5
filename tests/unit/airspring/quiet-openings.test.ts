/** `vent.quiet` asks the same of the mouth of a line and of an aperiodic vent as of a tube. */
import { logarithmicGrid, si } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import { type VentSection, ventNoise } from '@airspring/core/vent';
import { expect, test } from 'vitest';
import pipe from '../../../packages/airspring/briefs/classroom-organ-pipe.json' with { type: 'json' };
import ghost from '../../../packages/airspring/briefs/ghost-train.json' with { type: 'json' };
import { bestBoxes } from '../../../packages/airspring/src/search/best.js';
import type { Box } from '../../../packages/airspring/src/search/box.js';
import { searchFor } from '../../arbitrary/brief.js';

const metres = (value: number) => si('length', value);
/** The mouth of a line: as wide as the box, of the section that the model has. */
const mouth = ({ point: [netVolume = 0, length = 1, width = 1] }: Box): VentSection => ({
  width: metres(width),
  height: metres(netVolume / length / width),
});
const felt = ({ point: [, , diameter = 0] }: Box): VentSection => ({ diameter: metres(diameter) });

for (const [name, written, section] of [
  ['a line', { ...pipe, line: { ...pipe.line, folds: 1 } }, mouth],
  ['an aperiodic vent', ghost, felt],
] as const) {
  const { lowest, highest } = written.wanted;
  const band = logarithmicGrid(Number.parseFloat(lowest), Number.parseFloat(highest), 40);
  const boxOf = (level: number) => {
    const brief = { ...written, wanted: { ...written.wanted, level: `${level} dB` }, vent: { quiet: true } };
    return bestBoxes(searchFor(brief), 1)[0];
  };
  /** The verdicts of the box at a level, at each tone of the band. */
  const verdicts = (box: Box, level: number) => {
    const system = box.variant.system(box.point);
    const { levelHalfSpace, airSpeedPeak } = respond(system, band);
    return [...band].map((f, i) => {
      const speed = airSpeedPeak![i]! * 10 ** ((level - levelHalfSpace[i]!) / 20);
      const input = { vent: section(box), frequency: si('frequency', f), airSpeedPeak: si('airSpeedPeak', speed) };
      return ventNoise(input, { air: system.air }).verdict;
    });
  };
  const wanted = Number.parseFloat(written.wanted.level);

  test(`${name} is quiet at the wanted level where that is asked for`, () => {
    const box = boxOf(wanted);
    expect(box).toBeDefined();
    expect(new Set(verdicts(box!, wanted))).toEqual(new Set(['quiet']));
    const wish = box!.variant.wishes.find(({ path }) => path === 'vent.quiet');
    expect(wish?.allowed).toBe(wanted);
    // What it does not promise: far louder it is no longer quiet.
    expect(new Set(verdicts(box!, wanted + 40))).not.toEqual(new Set(['quiet']));
  });
}
