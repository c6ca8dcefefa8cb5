import type { Design } from 'airspring';
import type { BriefFacts } from '../brief-facts.js';
import { list, say } from '../say.js';
import { axis } from './axis.js';
import type { Panel } from './sweep.js';
import { thirdOctaves } from './third-octaves.js';
import { atListener, whereWanted } from './where-wanted.js';

/** Level at one metre or at the listener, every box driven so that its flat part plays the wanted level. */
export function levelPanel(designs: readonly Design[], facts: BriefFacts): Panel {
  const { lowest, level, fall } = facts;
  const there = atListener(designs);
  const title = there ? 'Level at the listener' : 'Level at one metre';
  const levels = (design: Design) => whereWanted(design, design.curves.levelHalfSpace);
  const falls = designs.map(({ name, response }) => `${name} at ${say('frequency', response.cutoff, 'Hz')}`);
  const label = `With a drive that plays ${say('level', level, 'dB')} in the flat part, the level is ${say('level', fall, 'dB')} down in box ${list(falls)}; the brief asks for ${say('frequency', lowest, 'Hz')}.`;
  const fallen = level - fall;
  const { domain, ticks } = axis([...designs.flatMap(levels), level + 2], 5);
  return {
    id: 'level',
    title,
    label,
    colour: 'var(--level)',
    unit: 'dB',
    lines: designs.map((design) => ({ name: design.name, values: levels(design) })),
    domain,
    ticks: ticks.filter((tick) => tick % 10 === 0),
    rule: { at: fallen, words: `${say('level', fall, 'dB')} down` },
    note: `${there ? 'At the listener' : 'At one metre in half space'}; root mean square, relative to 20 µPa.`,
    data: thirdOctaves(designs, levels, (value) => value.toFixed(1)),
  };
}
