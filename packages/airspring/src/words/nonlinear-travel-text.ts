import { inWords, listOf } from '../kind/wording.js';
import type { NonlinearTravel } from '../record/nonlinear-travel.js';
import type { Played } from '../record/played.js';
import type { Phrasing } from './phrasing.js';

const leftOut = (ventLoss: boolean): string =>
  ventLoss
    ? 'The loss of the vent is counted. This leaves out harmonics, and that a curve may differ between outwards and inwards.'
    : 'This leaves out harmonics, the loss of a vent, and that a curve may differ between outwards and inwards.';

/** What the curves of a driver make of the greatest voltage, at the tones of the band. */
export function nonlinearTravelSentences(
  { curves, reach, travel, several, beyond, ventLoss }: NonlinearTravel,
  { amplifier }: Pick<Played, 'amplifier'>,
  say: Phrasing,
): string {
  const told = `By the ${curves.length > 1 ? 'curves' : 'curve'} of its ${listOf(curves)}, ${say.volts(amplifier.voltage)} rms`;
  const known = `${say.travel(reach)}, up to where ${curves.length > 1 ? 'both are' : 'it is'} known`;
  if (travel === undefined)
    return `${told} moves the cone beyond ${known}, at every tone of the band. ${leftOut(ventLoss)}`;
  const moves = `${told} moves the cone by at most ${say.travel(travel.value)}, at ${say.hertz(travel.frequency)} in the band. A linear driver would move by ${say.travel(travel.linear)} there.`;
  const ways = several
    ? `${range(several, say)} it can swing in ${inWords(several.travels.length)} ways, at ${say.hertz(several.frequency)} by ${several.travels.map(say.travel).join(' or ')}: which one depends on the tones before.`
    : 'At no tone can it swing in two ways.';
  const out = beyond ? ` ${range(beyond, say)} it goes beyond ${known}.` : '';
  return `${moves} ${ways}${out} ${leftOut(ventLoss)}`;
}

const range = ({ from, to }: { readonly from: number; readonly to: number }, say: Phrasing): string =>
  from === to ? `At ${say.hertz(from)}` : `Between ${say.hertz(from)} and ${say.hertz(to)}`;
