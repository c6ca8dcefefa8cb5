import type { Design } from 'airspring';
import type { BriefFacts } from '../brief-facts.js';
import { limitInWords, list, say } from '../say.js';
import { axis } from './axis.js';
import { bindingWords, inColours } from './binding.js';
import type { Panel } from './sweep.js';
import { thirdOctaves } from './third-octaves.js';
import { atListener, whereWanted } from './where-wanted.js';

/** In which order limits bind over the band, from its lowest tone up. */
function orderOf({ name, loudness: { stretches: parts } }: Design): string {
  if (parts.length === 1)
    return `In ${name} ${limitInWords(parts[0]?.binding ?? '')} is the first limit throughout the band.`;
  const said = parts.map(
    ({ to, binding }, i) =>
      `${limitInWords(binding)} ${i < parts.length - 1 ? `up to ${say('frequency', to, 'Hz')}` : 'above'}`,
  );
  return `In ${name} the first limit reached in the band is ${list(said)}.`;
}

/** Greatest level of a steady sine, and which limit sets it. */
export function firstLimitPanel(designs: readonly Design[], { level }: BriefFacts): Panel {
  const title = 'What gives out first';
  const [first] = designs;
  const levels = (design: Design) => whereWanted(design, design.curves.greatestLevel);
  const least = designs.map(
    ({ name, loudness }, i) =>
      `${name}${i === 0 ? ' can play' : ''}\u00a0${say('level', Math.round(loudness.level * 10) / 10, 'dB', 4)}`,
  );
  const label = `Anywhere in the band box ${list(least)}. ${first ? orderOf(first) : ''}`;
  const { domain, ticks } = axis(designs.flatMap(levels), 5);
  const words = first ? bindingWords(first.curves.frequencies, levels(first), first.curves.binding) : [];
  const write = (value: number, { curves }: Design, f: number) => {
    const i = curves.frequencies.findIndex((each) => each >= f * (1 - 1e-9));
    return `${value.toFixed(1)} ${curves.binding[i] ?? ''}`;
  };
  return {
    id: 'first-limit',
    title,
    label,
    colour: 'var(--level)',
    unit: 'dB',
    lines: designs.map((design) => ({
      name: design.name,
      values: levels(design),
      stretches: inColours(design.curves.frequencies, design.curves.binding),
    })),
    domain: [domain[0], domain[1] + 5] as const,
    ticks: ticks.filter((tick) => tick % 10 === 0),
    rule: { at: level, words: `wanted: ${say('level', level, 'dB')}` },
    words,
    note: `The colour of the bold curve and the word beside it show which limit is reached first. Steady sine, ${atListener(designs) ? 'at the listener' : 'at one metre in half space'}.`,
    data: thirdOctaves(designs, levels, write),
  };
}
