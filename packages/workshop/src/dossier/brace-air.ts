import { inUnit } from '@airspring/core/quantity';
import { insideBoards } from './inside-boards.js';
import type { ChosenBrace } from './ringing-record.js';
import { airText } from './says.js';
import type { Work, WorkBox } from './work.js';

/** Steps of a volume as it is written into a brief. */
const FINE = { L: 10, 'ft³': 1e3, 'in³': 1 } as const;

const percent = (part: number): string => `${(100 * part).toFixed(1)} %`;

/** What a brace takes from the air, and what that does where the design does not count it. */
export function airOf({ volume, across, at }: ChosenBrace, box: WorkBox, work: Pick<Work, 'volumeUnit'>): string {
  const needed = Math.ceil(volume * 1e4) / 1e4;
  const told = (cubicMetres: number) => airText(work, cubicMetres);
  const chamber = box.chambers?.find((one) => one.across === across && at > one.from && at < one.to);
  const { bracing: kept = 0, netVolume: air } = chamber ?? box;
  const takes = `The brace takes ${told(needed)} of air${chamber ? ` from the ${chamber.name}` : ''}`;
  if (needed <= kept + 1e-9) return `${takes}, which the design keeps free for bracing.`;
  const keeps = `, and the design keeps ${kept > 0 ? `only ${told(kept)}` : 'none'} free for it${chamber ? ' there' : ''}.`;
  if (needed - kept >= air)
    return `${takes}${keeps} That is all of the air there: leave the brace out, or make the box larger.`;
  const [section, field] = chamber?.bracingIn ?? ['space', 'bracing'];
  const unit = work.volumeUnit ?? 'L';
  const asked = `${Math.ceil(inUnit('volume', volume, unit) * FINE[unit] - 1e-9) / FINE[unit]} ${unit}`;
  const written = `Write "${field}": "${asked}" into the "${section}" of the brief, and make these pages again.`;
  // A narrower place moves a resonance of a line by no more than the part of its air that it takes (the quotient of Rayleigh).
  if (chamber === undefined && insideBoards(box).length > 0)
    return `${takes}${keeps} It makes the line narrower where it stands. That moves the resonances of the line by up to ${percent((needed - kept) / air)}. ${written}`;
  const what = chamber
    ? `${chamber.vented ? 'tuning' : 'resonance'} of the ${chamber.name}`
    : 'tuning, or the resonance of a closed box,';
  const raised = `That raises the ${what} by up to ${percent(Math.sqrt(air / (air - needed + kept)) - 1)}.`;
  return `${takes}${keeps} ${raised} ${written}`;
}
