import type { Design } from '../record/design-record.js';
import { comparison } from './comparison.js';
import { paragraph, table } from './layout.js';

/** Less than this many points is as good as nothing. */
const NOTHING = 0.05;

/** What each wish at its limit costs: what the best box gains where it gives way a little. */
export function pricesText({ prices }: Design): string[] {
  if (prices === undefined) return [];
  if (prices.length === 0) return [paragraph('No wish is at its limit, so that none of them costs anything.')];
  const rows = [...prices]
    .sort((a, b) => b.gained - a.gained)
    .map((price) => {
      const words = price.gained < NOTHING ? [] : comparison(price.with, price.without);
      return [
        price.what,
        price.from,
        price.to,
        price.gained.toFixed(1),
        words.length > 0 ? words.join(', ') : 'next to nothing',
      ];
    });
  return [
    'WHAT EACH WISH COSTS',
    table('llrrl', [['wish', 'now', 'eased', 'points', 'the best box is then'], ...rows]),
    paragraph(
      'Each wish that is at its limit was eased by one step, alone, and the search was done again. The points are those that the best box of this leaning gains.',
    ),
  ];
}
