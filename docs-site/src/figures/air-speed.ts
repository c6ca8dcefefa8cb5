import { noiseOnsets, onsetSpeed } from '@airspring/core/vent';
import type { Design } from 'airspring';
import type { BriefFacts } from '../brief-facts.js';
import { list, say } from '../say.js';
import { axis } from './axis.js';
import type { Panel } from './sweep.js';
import { thirdOctaves } from './third-octaves.js';

const speeds = ({ curves }: Design): readonly number[] => curves.airSpeedPeak ?? [];

/** The lowest published onset of noise in a vent, tone by tone. */
const lowestOnset = ({ vent, curves }: Design, { air }: BriefFacts): readonly number[] | undefined =>
  vent &&
  curves.frequencies.map((f) =>
    Math.min(...noiseOnsets.map(({ at }) => onsetSpeed(at({ radius: vent.diameter / 2 }, air), f, air))),
  );

/** Mean speed of the air in the vent at the same drive; nothing where no box has a vent. */
export function airSpeedPanel(all: readonly Design[], facts: BriefFacts): Panel | undefined {
  const [first] = all;
  const guide = first && lowestOnset(first, facts);
  const designs = all.filter(({ curves }) => curves.airSpeedPeak !== undefined);
  if (designs.length === 0) return undefined;
  const { level, airSpeedPeak } = facts;
  const title = 'Air speed in the vent';
  const greatest = designs.flatMap(({ name, atWantedLevel: { airSpeedPeak: at } }) =>
    at === undefined ? [] : [`${name}\u00a0${say('airSpeedPeak', at.value, 'm/s')}`],
  );
  const label = `At ${say('level', level, 'dB')} throughout the band, the greatest air speed, peak, is: box ${list(greatest)}; the brief allows ${say('airSpeedPeak', airSpeedPeak, 'm/s')}. The curves are for one drive, that of the level curve.`;
  const { domain, ticks } = axis([0, airSpeedPeak * 1.08, ...designs.flatMap(speeds)], 2);
  return {
    id: 'air-speed',
    title,
    label,
    colour: 'var(--speed)',
    unit: 'm/s',
    lines: designs.map((design) => ({ name: design.name, values: speeds(design) })),
    domain,
    ticks: ticks.filter((tick) => tick % (domain[1] > 20 ? 4 : 2) === 0),
    rule: { at: airSpeedPeak, words: `the brief: ${say('airSpeedPeak', airSpeedPeak, 'm/s')} peak` },
    guide,
    note: `Mean over the section, peak in time.${guide ? ` Dotted curve: the lowest published onset of noise in the vent of box ${first?.name}.` : ''}`,
    data: thirdOctaves(designs, speeds, (value) => value.toFixed(2)),
  };
}
