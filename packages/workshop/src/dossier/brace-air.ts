import { format } from '@airspring/core/quantity';
import { insideBoards } from './inside-boards.js';
import type { ChosenBrace } from './ringing.js';
import type { WorkBox } from './work.js';

const litres = (volume: number): string => format('volume', volume, 'L', 2);
const percent = (part: number): string => `${(100 * part).toFixed(1)} %`;

/** What a brace takes from the air, and what that does where the design does not count it. */
export function airOf({ volume, across, at }: ChosenBrace, box: WorkBox): string {
  const { bracing = 0, netVolume, chambers = [] } = box;
  const needed = Math.ceil(volume * 1e4) / 1e4;
  const chamber = chambers.find((one) => one.across === across && at > one.from && at < one.to);
  const kept = chamber?.braced === false ? 0 : bracing;
  const takes = `The brace takes ${litres(needed)} of air${chamber ? ` from the ${chamber.name}` : ''}`;
  if (needed <= kept + 1e-9) return `${takes}, which the design keeps free for bracing.`;
  const air = chamber?.netVolume ?? netVolume;
  const keeps = `, and the design keeps ${kept > 0 ? `only ${litres(kept)}` : 'none'} free for it${chamber?.braced === false ? ' there' : ''}.`;
  if (needed - kept >= air)
    return `${takes}${keeps} That is all of the air there: leave the brace out, or make the box larger.`;
  const written = `Write "bracing": "${(1e3 * needed).toFixed(1)} L" into the "space" of the brief, and make these pages again.`;
  // A narrower place moves a resonance of a line by no more than the part of its air that it takes (the quotient of Rayleigh).
  if (chamber === undefined && insideBoards(box).length > 0)
    return `${takes}${keeps} It makes the line narrower where it stands. That moves the resonances of the line by up to ${percent((needed - kept) / air)}. ${written}`;
  const what = chamber
    ? `${chamber.vented ? 'tuning' : 'resonance'} of the ${chamber.name}`
    : 'tuning, or the resonance of a closed box,';
  const raised = `That raises the ${what} by up to ${percent(Math.sqrt(air / (air - needed + kept)) - 1)}.`;
  const other = chambers.find(({ braced }) => braced);
  const remedy =
    chamber?.braced === false && other
      ? `The "bracing" of the brief is counted in the ${other.name} alone: "at" in "brace" can move the brace there, if there is room.`
      : written;
  return `${takes}${keeps} ${raised} ${remedy}`;
}
