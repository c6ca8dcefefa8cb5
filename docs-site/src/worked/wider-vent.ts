import { format, si } from '@airspring/core/quantity';
import { airSpeedCustoms, compileLengthForTuning } from '@airspring/core/vent';
import { answers, inputs, speedOf, ventOf } from '../../examples/wider-vent.js';
import { worked } from '../example/worked.js';
import { axisOf } from '../figures/axis.js';

const diameters = Array.from({ length: 81 }, (_, i) => 60 + i);
const x = { domain: [60, 140], ticks: [60, 80, 100, 120, 140], words: 'inner diameter, mm' } as const;
type Box = Parameters<typeof answers>[0];
const each = (box: Box, of: (box: Box) => number): number[] =>
  diameters.map((diameter) => of({ ...box, diameter: si('length', diameter / 1e3) }));
/** The kernel for each diameter: the curve is drawn anew in every frame of a drag. */
const lengthsAt = diameters.map((diameter) =>
  compileLengthForTuning({ diameter: si('length', diameter / 1e3), wall: '3 mm' }),
);
const data = (box: Box) => ({
  heads: ['diameter', 'length', 'air speed'],
  rows: diameters
    .filter((diameter) => diameter % 10 === 0)
    .map((diameter) => {
      const { length, speed } = answers({ ...box, diameter: si('length', diameter / 1e3) });
      return [`${diameter} mm`, length, speed];
    }),
});
const mm = (length: number) => format('length', length, 'mm').replace(' ', '\u00a0');

export default worked({
  inputs,
  answers: (values) => {
    const texts = answers(values);
    const said = `A vent of ${mm(values.diameter)} needs ${texts.length}, and ${texts.fits} straight; its air moves at ${texts.speed}.`;
    return { ...texts, said };
  },
  figures: {
    length: {
      title: 'Length of the vent',
      chart: (box) => {
        const lengths = lengthsAt.map((lengthFor) => lengthFor(box.netVolume, box.fb) * 1e3);
        const now = ventOf(box);
        const { length, wideLength } = answers(box);
        const wide = { ...box, diameter: si('length', box.diameter * Math.SQRT2) };
        const second = ventOf(wide);
        // Beyond the end of the axis there is nothing to mark.
        const seen = second.ok && wide.diameter * 1e3 <= x.domain[1];
        const depth = Math.cbrt(box.netVolume) * 1e3;
        return {
          label: `A vent of ${mm(box.diameter)} must be ${length} long to tune the box; one √2 times as wide, with twice the section, ${answers(box).wideLength}.`,
          x,
          y: axisOf(0, Math.max(...lengths, depth), 'mm'),
          traces: [{ name: 'length', x: diameters, y: lengths, colour: 'var(--length)', thick: true }],
          rules: [{ at: depth, words: `depth of a cubic box: ${answers(box).depth}`, under: true }],
          marks: [
            {
              name: 'wide',
              x: (seen ? wide : box).diameter * 1e3,
              y: seen ? second.length * 1e3 : now.ok ? now.length * 1e3 : 0,
              words: seen ? `twice the section: ${wideLength}` : '',
              colour: 'var(--length)',
              dot: true,
              side: 'left',
            },
            {
              name: 'now',
              x: box.diameter * 1e3,
              y: now.ok ? now.length * 1e3 : 0,
              words: length,
              colour: 'var(--length)',
              dot: true,
              side: 'left',
            },
          ],
        };
      },
      data,
    },
    speed: {
      title: 'Air speed in the vent',
      note: 'Mean over the section, peak in time.',
      chart: (box) => {
        const speeds = each(box, speedOf);
        const { speed } = answers(box);
        const { strict, usual } = airSpeedCustoms;
        return {
          label: `For 96 dB at the tuning the air in a vent of ${mm(box.diameter)} moves at no more than ${speed}.`,
          x,
          y: axisOf(0, Math.max(...speeds, usual.airSpeedPeak), 'm/s'),
          traces: [{ name: 'speed', x: diameters, y: speeds, colour: 'var(--speed)', thick: true }],
          rules: [
            { at: usual.airSpeedPeak, words: 'usual rule of thumb' },
            { at: strict.airSpeedPeak, words: 'stricter rule of thumb' },
          ],
          marks: [
            {
              name: 'now',
              x: box.diameter * 1e3,
              y: speedOf(box),
              words: speed,
              colour: 'var(--speed)',
              dot: true,
              side: 'right',
            },
          ],
        };
      },
      data,
    },
  },
});
