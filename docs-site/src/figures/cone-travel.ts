import type { Design } from 'airspring';
import type { BriefFacts } from '../brief-facts.js';
import { list, say } from '../say.js';
import { axis } from './axis.js';
import type { Panel } from './sweep.js';
import { thirdOctaves } from './third-octaves.js';

/** Travel of the cone at the same drive. */
export function coneTravelPanel(designs: readonly Design[], { level, drivers }: BriefFacts): Panel {
  const title = 'Cone travel';
  const Xmax = Math.min(...designs.map(({ drivers: { name } }) => drivers.get(name)?.Xmax ?? Number.POSITIVE_INFINITY));
  const greatest = designs.map(
    ({ name, atWantedLevel: { displacementPeak: at } }) => `${name}\u00a0${say('length', at.value, 'mm')}`,
  );
  const label = `At ${say('level', level, 'dB')} throughout the band, the greatest travel one way is: box ${list(greatest)}; its limit is ${say('length', Xmax, 'mm', 2)}. The curves are for one drive, that of the level curve.`;
  const mm = (values: readonly number[]) => values.map((value) => value * 1e3);
  const { domain, ticks } = axis(
    [0, Xmax * 1.08e3, ...designs.flatMap(({ curves }) => mm(curves.displacementPeak))],
    2,
  );
  return {
    id: 'travel',
    title,
    label,
    colour: 'var(--travel)',
    unit: 'mm',
    lines: designs.map(({ name, curves }) => ({ name, values: mm(curves.displacementPeak) })),
    domain,
    ticks,
    rule: { at: Xmax * 1e3, words: `Xmax ${say('length', Xmax, 'mm', 2)}` },
    note: 'Peak, one way. The dip lies at the tuning, where the vent makes nearly all the sound.',
    data: thirdOctaves(
      designs,
      ({ curves }) => mm(curves.displacementPeak),
      (value) => value.toFixed(2),
    ),
  };
}
