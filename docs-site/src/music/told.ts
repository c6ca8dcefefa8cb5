import { greatestCoilRise } from '@airspring/core/limit';
import { widths } from '../example/figure-markup.js';
import { html, table } from '../html.js';
import { tied } from '../say.js';
import { type BoxAccount, boxAccount, type Kept } from './account.js';
import { clock } from './clock.js';
import type { Heard } from './heard.js';
import { frequencyOf, noteName } from './notes.js';
import { drawTimeline } from './timeline-figure.js';
import {
  capital,
  limitSentence,
  lumpedSentence,
  mayBe,
  noiseSentence,
  nounOf,
  often,
  seconds,
  worstSentence,
} from './words.js';

/** Notes of a table at most. */
const NOTES = 8;

/** What the page says of a piece in two boxes at a drive. Texts are plain, tables and pictures are markup. */
export interface MusicTold {
  readonly accounts: readonly BoxAccount[];
  readonly first: string;
  readonly second: string;
  readonly label: string;
  readonly picture: (place: keyof typeof widths) => string;
  readonly limits: () => string;
  readonly notes: () => string;
  /** Nothing was played: there is no level. */
  readonly silent: boolean;
}

const isSilent = ({ boxes }: Heard): boolean => boxes.every(({ peak }) => peak.voltage?.every((value) => value === 0));

/** What a box does with a piece, as a pure function of what was heard and of the drive, V rms for a sine of full scale. */
export function musicTold(heard: Heard, drive: number): MusicTold {
  const accounts = heard.boxes.map((box) => boxAccount(box, drive, heard));
  const [a, b] = accounts as [BoxAccount, BoxAccount | undefined];
  const silent = isSilent(heard);
  const label = silent ? 'Nothing moves.' : labelOf(accounts);
  return {
    accounts,
    first: tied(silent ? 'The recording is silent: nothing moves, and nothing is heard.' : noiseSentence(a)),
    second: tied(
      silent || !b
        ? ''
        : `${worstSentence(a)}${capital(b.called)} then plays ${b.level.toFixed(0)} dB. ${noiseSentence(b)}`,
    ),
    label: tied(label),
    picture: (place) => drawTimeline(heard, accounts, drive, widths[place], label),
    limits: () => limitsTable(accounts),
    notes: () => notesTable(accounts),
    silent,
  };
}

function labelOf(accounts: readonly BoxAccount[]): string {
  return accounts
    .map((account, i) => {
      const { airSpeed, travel, rise } = account;
      const air = airSpeed === undefined ? '' : `moves the air in its vent at up to ${airSpeed.toFixed(1)} m/s and `;
      const most = rise ? Math.max(...rise) : 0;
      const ends = most > greatestCoilRise ? `, more than the ${greatestCoilRise} K up to which the model holds` : '';
      const warm = rise ? `; its coil warms up by ${most.toFixed(0)} K${ends}` : '';
      return `${'AB'[i]} ${air}${air ? 'its' : 'moves its'} cone by up to ${(1000 * travel).toFixed(1)} mm${warm}. ${limitSentence(account)}${lumpedSentence(account)}`;
    })
    .join(' ');
}

function limitsTable(accounts: readonly BoxAccount[]): string {
  const all = accounts.map(({ limits, noise }) => [...(noise ? [noise.quiet, noise.noisy] : []), ...limits]);
  const names = [...new Set(all.flatMap((each) => each.map(({ name }) => name)))];
  const passed = ({ mostUsed, mostAt, times, passedFor }: Kept) =>
    times === 0
      ? `kept; ${(100 * mostUsed).toFixed(0)} % at ${clock(mostAt)}`
      : `${often(times)}, ${seconds(passedFor)}; ${(100 * mostUsed).toFixed(0)} % at ${clock(mostAt)}`;
  const rows = names.map((name) => [
    nounOf(name),
    ...all.flatMap((each) => {
      const kept = each.find((one) => one.name === name);
      return kept ? [tied(passed(kept)), tied(mayBe(kept))] : ['–', '–'];
    }),
  ]);
  const heads = ['limit', ...accounts.flatMap((_, i) => [`${'AB'[i]} passes it`, `${'AB'[i]} may be`])];
  return table(
    `How often each limit is passed: A is ${accounts[0]?.called}${accounts[1] ? `, B is ${accounts[1].called}` : ''}`,
    heads,
    rows,
    'rows',
  ).markup;
}

function notesTable(accounts: readonly BoxAccount[]): string {
  const all = accounts.map(({ noise }) => noise?.notes ?? []);
  const semitones = [...new Set(all.flatMap((notes) => notes.map(({ semitone }) => semitone)))].slice(0, NOTES);
  if (semitones.length === 0) return html`<p>Neither vent is heard on any note.</p>`.markup;
  const heads = ['note', ...accounts.flatMap((_, i) => [`${'AB'[i]} maybe`, `${'AB'[i]} noisy`])];
  const rows = [...semitones]
    .sort((a, b) => a - b)
    .map((semitone) => [
      tied(`${noteName(semitone)}, ${frequencyOf(semitone).toFixed(1)} Hz`),
      ...all.flatMap((notes) => {
        const { doubtful = 0, noisy = 0 } = notes.find((note) => note.semitone === semitone) ?? {};
        return [doubtful, noisy].map((time) => time.toFixed(1));
      }),
    ]);
  return table('For how many seconds a vent may be heard, and is noisy', heads, rows).markup;
}
