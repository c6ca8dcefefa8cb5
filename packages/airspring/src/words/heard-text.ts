import { inWords } from '../kind/wording.js';
import type { HeardTold, JoinedTold, PlayedAt } from '../record/heard-told.js';
import type { Played } from '../record/played.js';
import { paragraph, table } from './layout.js';
import type { Phrasing } from './phrasing.js';

const signed = (gain: number): string => `${gain < 0 ? '−' : '+'}${Math.abs(gain).toFixed(1)} dB`;

/** Where the box stands. */
function standsText({ walls }: HeardTold, say: Phrasing): string {
  if (walls.length === 0) return 'in free air';
  if (walls.every((wall) => wall === 0)) {
    return walls.length === 1 ? 'on a floor (half space)' : `where ${inWords(walls.length)} walls meet`;
  }
  const each = walls.map((wall) => (wall === 0 ? 'touching it' : say.length(wall))).join(', ');
  return `near ${inWords(walls.length)} ${walls.length === 1 ? 'wall' : 'walls at right angles'} (from the drivers: ${each})`;
}

/** The room, where it is closed. */
function roomText({ room }: HeardTold, say: Phrasing): string[] {
  if (room === undefined) return [];
  const { volume, leakCorner, pressureBelow, firstMode } = room;
  const leak = leakCorner === undefined ? '' : ` It leaks below ${say.hertz(leakCorner)}.`;
  const mode =
    firstMode === undefined
      ? 'A real room departs from this by many decibels from half its first mode upwards.'
      : `Its first mode is at ${say.hertz(firstMode)}: from half of that upwards a real room departs from this by many decibels.`;
  return [
    paragraph(
      `The closed room holds ${say.cubicMetres(volume)} of air. Below ${say.hertz(pressureBelow)} its even pressure is the greater part of what is heard.${leak} ${mode}`,
    ),
  ];
}

/** How the box and the main speakers add. */
function mainsText(mains: JoinedTold | undefined, say: Phrasing): string[] {
  if (mains === undefined) return [];
  const { crossover, crossing, best, shortfallAsItIs } = mains;
  const phase =
    crossing === undefined
      ? `Box and main speakers do not cross near ${say.edge(crossover)}.`
      : `Box and main speakers are equally loud at ${say.hertz(crossing.frequency)}, where the box is ${degrees(crossing.phaseDifference)}.`;
  const [who, delay] =
    best.boxDelay > best.mainDelay ? ['the box', best.boxDelay] : (['the main speakers', best.mainDelay] as const);
  const polarity = best.polarity === 'normal' ? 'as they are' : 'the other way round';
  return [
    paragraph(
      `Main speakers, with filters of Linkwitz and Riley of fourth order at ${say.edge(crossover)}, in a free field: ${phase} They add best with the main speakers wired ${polarity} and ${who} delayed by ${(1e3 * delay).toFixed(2)} ms. Within an octave of the crossover the sum then stays ${best.shortfall.toFixed(1)} dB below both in phase, as a mean; if nothing is done, ${shortfallAsItIs.toFixed(1)} dB. Start there, and measure at the listener.`,
    ),
  ];
}

function degrees(radians: number): string {
  const angle = Math.round((Math.abs(radians) * 180) / Math.PI);
  return angle === 0 ? 'in phase' : `${angle}° ${radians < 0 ? 'behind' : 'ahead'}`;
}

/** What the box does at the listener, beside 1 m in half space. */
export function heardBlocks(
  { heard, loudness }: Pick<Played, 'heard'> & { readonly loudness: Pick<Played['loudness'], 'givesOut'> },
  say: Phrasing,
): string[] {
  if (heard === undefined) return [];
  const { distance, gains, listener, oneMetre, wantedAt } = heard;
  const row = (what: string, { level, frequency, binding, cutoff, endOfSearch }: PlayedAt): string[] => [
    what,
    cutoff === undefined ? 'nowhere' : say.reach(cutoff, endOfSearch),
    say.decibels(level),
    say.hertz(frequency),
    loudness.givesOut[binding] ?? binding,
  ];
  const judged = wantedAt === 'listener' ? 'at the listener' : 'at 1 m in half space';
  const reflect =
    heard.walls.length > 0
      ? ' Walls reflect all and are far wider than a wavelength; furniture and people are left out.'
      : '';
  return [
    'AT THE LISTENER',
    paragraph(
      `The box stands ${standsText(heard, say)}, and the listener is ${say.metres(distance)} away. Against 1 m in half space the level is ${gains.map(({ frequency, gain }) => `${signed(gain)} at ${say.edge(frequency)}`).join(', ')}.${reflect} The wants of this brief are judged ${judged}.`,
    ),
    table('lrrrl', [
      ['', 'response', 'level', 'least at', 'first limit reached'],
      row('at the listener', listener),
      row('at 1 m, half space', oneMetre),
    ]),
    ...roomText(heard, say),
    ...mainsText(heard.mains, say),
  ];
}
