import { type RankedVent, rankedVents } from '../standing/ranked-vents.js';
import type { Retrofit } from '../standing/retrofit.js';
import { heading, paragraph, table } from './layout.js';
import type { Phrasing } from './phrasing.js';

/** dB, the last digit of a level. */
const TOLD = 0.1;

/** The choices that are listed, the best first: those that stay quiet up to a higher level than the vent that stands. */
export const listedVents = (answer: Retrofit): readonly RankedVent[] =>
  rankedVents(answer).filter(({ louder }) => louder >= TOLD);

/** How far each stays quiet, how much louder that is than now, and how far its sound falls behind, dB, with the band of published losses. */
export function rankedNumbers({ quiet, louder, account }: RankedVent): [string, string, string, string] {
  const { low, nominal, high } = account.compression!;
  return [
    quiet.toFixed(1),
    `${louder < 0 ? '−' : '+'}${Math.abs(louder).toFixed(1)}`,
    nominal.toFixed(1),
    `${low.toFixed(1)} to ${high.toFixed(1)}`,
  ];
}

/** A choice by its name, with what it changes: 'number 3: two tubes'. */
export const rankedName = ({ what, name, change }: RankedVent): string =>
  `${what === 'change' ? 'number' : what} ${name}${change === undefined ? '' : `: ${change}`}`;

export const rankedMeaning = ({ asked }: Retrofit, say: Phrasing): string =>
  `Ranked by the level up to which the vent stays below every published onset of noise, then by what it loses. Louder: how much louder the box plays than now before its vent may be heard. Behind: how far the sound falls behind at ${say.decibels(asked.level)} because the vent loses pressure, with the range of published losses.`;

/** What keeps the vent quiet up to the highest level, the best choice first; empty where it is quiet already. */
export function rankedText(answer: Retrofit, say: Phrasing): string[] {
  const ranked = listedVents(answer);
  if (ranked.length === 0) return [];
  const rows = ranked.map((one) => [...rankedNumbers(one), rankedName(one)]);
  return [
    heading('Which vent stays quiet up to the highest level', '-'),
    paragraph(rankedMeaning(answer, say)),
    table('rrrrl', [['quiet', 'louder', 'behind', '', 'choice'], ['dB', 'dB', 'dB', 'dB', ''], ...rows]),
  ];
}
