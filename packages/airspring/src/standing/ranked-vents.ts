import type { Account } from './account.js';
import { markedSets } from './marked-tubes.js';
import type { Retrofit } from './retrofit.js';
import { numbered } from './row.js';

/** What can be done about a vent that chuffs, and how much louder the box then plays before its vent may be heard. */
export interface RankedVent {
  readonly what: 'change' | 'design' | 'tube';
  /** As reports name it: the number of a change, the letter of a design, the mark of a tube. */
  readonly name: string;
  /** The change as a noun; left out where the name says enough. */
  readonly change?: string;
  /** The level up to which the vent is quiet by every published onset, dB, and how much louder that is than as it stands. */
  readonly quiet: number;
  readonly louder: number;
  /** Its compression tells how far the sound then falls behind. */
  readonly account: Account;
}

/** Levels are told to a tenth. */
const told = (level: number): number => Math.round(10 * level);

/** The quietest first; of vents that are quiet up to the same level the one that loses less. */
const order = (a: RankedVent, b: RankedVent): number =>
  told(b.quiet) - told(a.quiet) || a.account.compression!.nominal - b.account.compression!.nominal;

/**
 * Every change, combination and tube that leaves the box a vent, the quietest first, and of equally quiet ones the one that loses
 * least; nothing where the vent as it stands is quiet at the wanted level.
 *
 * @example rankedVents(retrofit(brief))[0]?.louder
 */
export function rankedVents({ asked, now, rows, designs, tubeSets }: Retrofit): readonly RankedVent[] {
  const before = now.account.noise?.quiet.level;
  if (before === undefined || before >= asked.level) return [];
  const ranked = (account: Account, named: Pick<RankedVent, 'what' | 'name' | 'change'>): RankedVent[] => {
    const quiet = account.noise?.quiet.level;
    return quiet === undefined ? [] : [{ ...named, quiet, louder: quiet - before, account }];
  };
  return [
    ...numbered(rows).flatMap(([number, { account, box, change }]) =>
      box.level === undefined ? ranked(account, { what: 'change', name: String(number), change }) : [],
    ),
    ...designs.flatMap(({ name, account }) => ranked(account, { what: 'design', name })),
    ...markedSets(tubeSets).flatMap(({ proposed }) =>
      proposed.flatMap(({ mark, option }) => ranked(option.account, { what: 'tube', name: mark })),
    ),
  ].sort(order);
}
