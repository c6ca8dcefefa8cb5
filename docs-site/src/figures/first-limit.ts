import type { Design } from 'airspring';
import type { BriefFacts } from '../brief-facts.js';
import { limitInWords, list, say } from '../say.js';
import { axis } from './axis.js';
import type { Panel } from './sweep.js';
import { between, thirdOctaves } from './third-octaves.js';

/** The colour of the quantity that gives out, as in its own figure. */
const colours: Readonly<Record<string, string>> = {
  travel: 'var(--travel)',
  vent: 'var(--speed)',
  heat: 'var(--heat)',
};
const colourOf = (binding: string): string => colours[binding] ?? 'var(--amplifier)';

/** Stretches of one binding limit over the whole curve; they meet, so that the line has no gaps. */
function stretches({ curves: { frequencies, binding } }: Design) {
  const found: { from: number; to: number; binding: string }[] = [];
  binding.forEach((name, i) => {
    const f = frequencies[i]!;
    const last = found.at(-1);
    if (last?.binding === name) last.to = f;
    else {
      if (last) last.to = f;
      found.push({ from: f, to: f, binding: name });
    }
  });
  return found;
}

/** In which order limits bind over the band, from its lowest tone up. */
function orderOf({ name, loudness: { stretches: parts } }: Design): string {
  if (parts.length === 1)
    return `In ${name} ${limitInWords(parts[0]?.binding ?? '')} gives out first throughout the band.`;
  const said = parts.map(
    ({ to, binding }, i) =>
      `${limitInWords(binding)} ${i < parts.length - 1 ? `up to ${say('frequency', to, 'Hz')}` : 'above'}`,
  );
  return `In ${name} the first to give out in the band is ${list(said)}.`;
}

/** Greatest level of a steady sine, and which limit sets it. */
export function firstLimitPanel(designs: readonly Design[], { level }: BriefFacts): Panel {
  const title = 'What gives out first';
  const [first] = designs;
  const least = designs.map(
    ({ name, loudness }, i) =>
      `${name}${i === 0 ? ' can play' : ''}\u00a0${say('level', Math.round(loudness.level * 10) / 10, 'dB', 4)}`,
  );
  const label = `Anywhere in the band box ${list(least)}. ${first ? orderOf(first) : ''}`;
  const { domain, ticks } = axis(
    designs.flatMap(({ curves }) => curves.greatestLevel),
    5,
  );
  const words = first
    ? stretches(first).flatMap(({ from, to, binding }) => {
        const f = Math.sqrt(from * to);
        const y = between(first.curves.frequencies, first.curves.greatestLevel, f);
        return to / from < 1.25 || y === undefined ? [] : [{ f, y, text: binding, colour: colourOf(binding) }];
      })
    : [];
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
      values: design.curves.greatestLevel,
      stretches: stretches(design).map(({ from, to, binding }) => ({ from, to, colour: colourOf(binding) })),
    })),
    domain: [domain[0], domain[1] + 5] as const,
    ticks: ticks.filter((tick) => tick % 10 === 0),
    rule: { at: level, words: `wanted: ${say('level', level, 'dB')}` },
    words,
    note: 'The colour of the bold curve and the word beside it tell which limit is reached first. Steady sine, at one metre in half space.',
    data: thirdOctaves(designs, ({ curves }) => curves.greatestLevel, write),
  };
}
