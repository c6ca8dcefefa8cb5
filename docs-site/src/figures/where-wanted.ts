import type { Design } from 'airspring';

/** Whether the brief of these designs wants its level at the listener. */
export const atListener = ([first]: readonly Design[]): boolean => first?.heard?.wantedAt === 'listener';

/** Said after a level that the brief limits. */
export const placeWords = (design: Design): string => (atListener([design]) ? ' at the listener' : '');

/** A curve of levels at one metre in half space, where the brief wants its level. */
export const whereWanted = ({ heard }: Design, levels: readonly number[]): readonly number[] =>
  heard?.wantedAt === 'listener' ? levels.map((level, i) => level + heard.gainOfCurves[i]!) : levels;
