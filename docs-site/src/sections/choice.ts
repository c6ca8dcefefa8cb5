import type { Design } from 'airspring';
import type { BriefFacts } from '../brief-facts.js';
import { html, type Markup, table } from '../html.js';
import { list, say, tied } from '../say.js';

/** What the words of a leaning mean. */
const leanings: Readonly<Record<string, string>> = {
  balanced: 'weighs your wishes as the brief does',
  deeper: 'favours deep bass',
  louder: 'favours level',
  smaller: 'favours a small box',
  simpler: 'favours a short vent',
};

/** For whom a runner-up is the better box. */
const reasons: Readonly<Record<string, string>> = {
  deeper: 'Take it if the lowest tones matter most.',
  louder: 'Take it if it has to be loud.',
  smaller: 'Take it if the space matters most.',
  simpler: 'Take it if you want the least to make.',
};

/** The boxes beside each other. */
export function choice(designs: readonly Design[], { length, volume }: BriefFacts): Markup {
  const rows = designs.map((design): string[] => {
    const { name, box, vent, response, loudness, atWantedLevel, opening } = design;
    return [
      name,
      say('volume', box.outerVolume, volume),
      vent
        ? `${say('length', vent.diameter, length)} × ${say('length', vent.length, length)}${vent.bend ? ', bent' : ''}`
        : 'none',
      say('frequency', response.cutoff, 'Hz'),
      say('level', Math.round(loudness.level * 10) / 10, 'dB', 4),
      atWantedLevel.airSpeedPeak ? say('airSpeedPeak', atWantedLevel.airSpeedPeak.value, 'm/s') : 'none',
      opening ? say('level', opening.noise.quiet.level, 'dB') : 'none',
    ];
  });
  const words = designs.map(({ name, leaning, words: differences }) => {
    const against =
      differences.length > 0 ? ` Compared with ${designs[0]?.name}, it is ${tied(list(differences))}.` : '';
    const reason = differences.length > 0 && reasons[leaning];
    return html`<li><strong>${name}</strong> ${leanings[leaning] ?? leaning}.${against}${reason && ` ${reason}`}</li>`;
  });
  const [first] = designs;
  return html`
<section aria-labelledby="choice"><h2 id="choice">${designs.length === 1 ? 'The box that meets the brief' : `${capital(counted(designs.length))} boxes that meet the brief`}</h2>
${
  designs.length > 1 &&
  html`<p>Each box meets the whole brief, and none is better than another in every respect. The rest of this page describes box ${first?.name ?? 'A'} and compares the others with it.</p>`
}
<ul class="plain">${words}</ul>
${table('The boxes beside each other', ['box', 'outside', 'vent', 'cut-off', 'plays at least', 'peak air speed at most', 'quiet up to'], rows)}
</section>`;
}

const counted = (count: number): string => ['no', 'one', 'two', 'three', 'four', 'five'][count] ?? String(count);
const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);
