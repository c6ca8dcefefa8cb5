import type { TradeOffs } from '../trade-offs.js';
import { heading, paragraph, table } from './layout.js';
import { type Phrasing, phrasing, type Units } from './phrasing.js';
import { printable } from './printable.js';

function boxesText({ boxes }: TradeOffs, say: Phrasing): string[] {
  const rows = boxes.map(({ lowest, level, volume, outer, netVolume, drivers: { count, index }, kind }) => [
    say.edge(lowest),
    say.decibels(level),
    say.volume(volume),
    outer.map(say.bareLength).join(' × '),
    say.volume(netVolume),
    `${count > 1 ? `${count} × ` : ''}#${index + 1}`,
    kind,
  ]);
  const names = new Map(boxes.map(({ drivers: { index, name } }) => [index, name]));
  const head = ['from', 'level', 'outside', `edges, ${say.lengthUnit}`, 'air', 'driver', 'box'];
  return [
    paragraph(
      'The smallest box for each depth and level, with every other wish of the brief met. A box is left out where another one is at least as deep, as loud and as small.',
    ),
    table('rrrrrll', [head, ...rows]),
    table(
      'll',
      [...names].sort(([a], [b]) => a - b).map(([index, name]) => [`#${index + 1}`, `"${name}"`]),
    ),
    paragraph(
      'From: the lowest frequency that the box plays at this level, where the brief wants it, within every limit. Air: the net volume.',
    ),
  ];
}

/**
 * The trade-off between volume, depth and level as printed text, at most 80 columns wide.
 *
 * @example tradeOffsText(await tradeOffs(brief), { length: 'mm' })
 */
export function tradeOffsText(given: TradeOffs, units: Units = {}): string {
  const front = printable(given);
  const say = phrasing(units);
  const tried = `Tried were bands from ${front.lowest.map(say.edge).join(', ')}, and levels of ${front.levels.map(say.decibels).join(', ')}.`;
  const blocks =
    front.boxes.length > 0
      ? boxesText(front, say)
      : [
          paragraph(
            'No box that meets the other wishes of the brief plays any of these levels from any of these frequencies.',
          ),
        ];
  return `${[heading(front.title, '='), ...blocks, paragraph(tried)].join('\n\n')}\n`;
}
