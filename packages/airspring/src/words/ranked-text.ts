import { rankedVents } from '../standing/ranked-vents.js';
import type { Retrofit } from '../standing/retrofit.js';
import { heading, paragraph, table } from './layout.js';
import type { Phrasing } from './phrasing.js';

/** So many choices are listed: those farther down are hardly better than the vent that stands. */
const LISTED = 10;

/** What keeps the vent quiet up to the highest level, the best choice first; empty where it is quiet already. */
export function rankedText(answer: Retrofit, say: Phrasing): string[] {
  const ranked = rankedVents(answer).slice(0, LISTED);
  if (ranked.length === 0) return [];
  const rows = ranked.map(({ what, name, change, quiet, louder, account }) => {
    const { low, nominal, high } = account.compression!;
    return [
      quiet.toFixed(1),
      `${louder < 0 ? '−' : '+'}${Math.abs(louder).toFixed(1)}`,
      nominal.toFixed(1),
      `${low.toFixed(1)} to ${high.toFixed(1)}`,
      `${what === 'change' ? 'number' : what} ${name}${change === undefined ? '' : `: ${change}`}`,
    ];
  });
  return [
    heading('Which vent stays quiet up to the highest level', '-'),
    paragraph(
      `Ranked by the level up to which the vent stays below every published onset of noise, then by what it loses. Louder: how much louder the box plays than now before its vent may be heard. Behind: how far the sound falls behind at ${say.decibels(answer.asked.level)} since the vent loses, with the band of published losses.`,
    ),
    table('rrrrl', [['quiet', 'louder', 'behind', '', 'choice'], ['dB', 'dB', 'dB', 'dB', ''], ...rows]),
  ];
}
