import { standardAir } from '@airspring/core/air';
import { si } from '@airspring/core/quantity';
import { roomModes } from '@airspring/core/room';
import { insideBoards } from './inside-boards.js';
import { listed } from './listed.js';
import type { Says } from './says.js';
import type { Work, WorkBox } from './work.js';

const EDGES = ['depth', 'width', 'height'] as const;
/** Waves whose frequencies differ by less are heard as one. */
const TOGETHER = 1.03;

/** The lowest standing waves of the air in a cuboid, in a sentence; empty where a board divides the air or the box is no cuboid. */
export function standingWaves(box: WorkBox, band: NonNullable<Work['band']>, says: Says): string[] {
  const boards = insideBoards(box).length + (box.placed ?? []).length;
  if (box.joints !== undefined || boards > 0) return [];
  const inner = EDGES.map((edge) => si('length', box.outer[edge] - 2 * box.thickness));
  const [length, width, height] = inner as [(typeof inner)[0], (typeof inner)[0], (typeof inner)[0]];
  // No mode but the first of each axis can be the lowest.
  const upTo = si('frequency', (1.1 * standardAir.speedOfSound) / (2 * Math.max(...inner)));
  const modes = roomModes({ length, width, height, upTo });
  const { frequency } = modes[0]!;
  const along = modes.filter((mode) => mode.frequency < TOGETHER * frequency);
  const where = along.map(({ order }) => {
    const axis = order.findIndex((count) => count > 0);
    return `the ${EDGES[axis]} of ${says(inner[axis]!)}`;
  });
  const hertz = `${Math.round(frequency)} Hz`;
  const waves =
    along.length > 1
      ? `standing waves, at ${hertz}, are those along ${listed(where)}: they nearly coincide, which unlike edges avoid`
      : `standing wave, at ${hertz}, is that along ${where[0]}`;
  const advice =
    frequency > band.to
      ? 'The band of the brief ends below that.'
      : 'It lies in the band of the brief: a layer of felt or fibre on one of the walls that it runs between damps it (common practice), clear of the vent.';
  return [`The air inside resonates too. Its lowest ${waves}. ${advice}`];
}
