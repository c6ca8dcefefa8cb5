import type { Design } from 'airspring';
import type { BriefFacts } from '../brief-facts.js';
import { list, say } from '../say.js';
import { axis } from './axis.js';
import type { Figure } from './figure.js';
import { drawFrame } from './frame.js';
import { thirdOctaves } from './third-octaves.js';

const speeds = ({ curves }: Design): readonly number[] => curves.airSpeedPeak ?? [];

/** Mean speed of the air in the vent at the same drive; nothing where no box has a vent. */
export function airSpeedFigure(all: readonly Design[], facts: BriefFacts): Figure | undefined {
  const designs = all.filter(({ curves }) => curves.airSpeedPeak !== undefined);
  if (designs.length === 0) return undefined;
  const { lowest, highest, level, airSpeedPeak } = facts;
  const title = 'Air speed in the vent';
  const greatest = designs.flatMap(({ name, atWantedLevel: { airSpeedPeak: at } }) =>
    at === undefined ? [] : [`${name}\u00a0${say('airSpeedPeak', at.value, 'm/s')}`],
  );
  const label = `Held at ${say('level', level, 'dB')} throughout the band, the air moves at most: box ${list(greatest)}; the brief allows ${say('airSpeedPeak', airSpeedPeak, 'm/s')}. The curves are for one drive, that of the level figure.`;
  const { domain, ticks } = axis([0, airSpeedPeak * 1.08, ...designs.flatMap(speeds)], 2);
  const frame = {
    label: `${title}: ${label}`,
    colour: 'var(--speed)',
    unit: 'm/s',
    frequencies: designs[0]?.curves.frequencies ?? [],
    lines: designs.map((design) => ({ name: design.name, values: speeds(design) })),
    domain,
    ticks: ticks.filter((tick) => tick % (domain[1] > 20 ? 4 : 2) === 0),
    band: [lowest, highest] as const,
    rule: { at: airSpeedPeak, words: `the brief: ${say('airSpeedPeak', airSpeedPeak, 'm/s')}`, under: true },
  };
  return {
    id: 'air-speed',
    title,
    label,
    note: 'Mean over the section, peak in time.',
    draw: (width) => drawFrame(frame, width),
    data: thirdOctaves(designs, speeds, (value) => value.toFixed(2)),
  };
}
