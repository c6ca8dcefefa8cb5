import { resolve } from 'node:path';
import { isInputError, visible } from '@airspring/core/fault';
import { unitsOf } from '../brief/units.js';
import { briefFields, briefJsonSchema, design } from '../design.js';
import type { BriefOptions } from '../kind/brief-options.js';
import type { Brief } from '../kind/standard.js';
import { printPage } from '../page/page.js';
import { changedDesignPage, retrofitPage } from '../page/retrofit-page.js';
import type { Answer } from '../record/answer.js';
import type { Design } from '../record/design-record.js';
import type { Progress } from '../search/search.js';
import { stands } from '../standing/read.js';
import { type Retrofit, retrofit } from '../standing/retrofit.js';
import { type TradeOffs, tradeOffs } from '../trade-offs.js';
import { changedDesignText } from '../words/changed-design-text.js';
import { fieldsText } from '../words/fields-text.js';
import { designText, reportText } from '../words/report-text.js';
import { retrofitText } from '../words/retrofit-text.js';
import { sketchText } from '../words/sketch.js';
import { tradeOffsText } from '../words/trade-offs-text.js';
import { help, readArguments } from './arguments.js';
import { readBriefFile } from './brief-file.js';
import type { Workshop } from './build.js';
import { build } from './build-folder.js';
import { asksForFlare, installedFlares, NO_FLARES } from './flares.js';
import { writePage } from './page-file.js';
import { type Played, play, type Transient } from './play.js';
import { playFigure } from './play-figure.js';
import { playData, playText } from './play-text.js';
import { isNoise } from './played-again.js';
import { playedBox } from './played-box.js';
import { asksForShape, installedShapes, NO_SHAPES, type ShapesOf } from './shapes.js';

const MET = 0;
const NOT_MET = 1;
const REFUSED = 2;
const UNREADABLE = 3;
const UNWRITTEN = 6;
const MISSING = 7;

/** The exit code of the command, and what it writes to each stream. */
export interface Ended {
  readonly status: typeof MET | typeof NOT_MET | typeof REFUSED | typeof UNREADABLE | typeof UNWRITTEN | typeof MISSING;
  readonly out: string;
  readonly error: string;
}

const told = (out: string): Ended => ({ status: MET, out, error: '' });
const refused = (lines: string): Ended => ({ status: REFUSED, out: '', error: `${lines}\n` });

/** What is made of a brief, or all faults of the brief, one on each line. */
async function madeOf<Made>(make: () => Made | Promise<Made>): Promise<Made | string> {
  try {
    return await make();
  } catch (error) {
    if (!isInputError(error)) throw error;
    return error.message;
  }
}

/** JSON that is safe to show in a terminal: it also escapes control characters that JSON allows, with the same meaning. */
const jsonText = (answer: Answer | Retrofit | TradeOffs | ReturnType<typeof playData>): string =>
  `${JSON.stringify(answer).replace(
    /[\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]/g,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
  )}\n`;

/** The boxes of an answer: those that meet the brief, or those of the nearest brief. */
const designsOf = (answer: Answer): readonly Design[] =>
  answer.ok ? answer.designs : (answer.nearest?.answer.designs ?? []);

/** The same answer with one of its boxes alone; or why it has none of this name. */
function onlyOf(answer: Answer | Retrofit, only: string): Answer | Retrofit | string {
  const called = <Named extends { readonly name: string }>(list: readonly Named[]) =>
    list.filter(({ name }) => name.toLowerCase() === only.toLowerCase());
  const none = (what: string, list: readonly { readonly name: string }[]) =>
    `there is no ${what} "${only}"; there ${list.length === 0 ? 'is none' : listed(list.map(({ name }) => name))}`;
  if (!('ok' in answer)) {
    const changed = called(answer.designs);
    return changed.length > 0 ? { ...answer, designs: changed } : none('design', answer.designs);
  }
  const designs = called(designsOf(answer));
  if (designs.length === 0) return none('box', designsOf(answer));
  if (answer.ok) return { ...answer, designs };
  const { nearest, ...rest } = answer;
  return nearest ? { ...rest, nearest: { ...nearest, answer: { ...nearest.answer, designs } } } : rest;
}

const listed = (names: readonly string[]): string => `${names.length === 1 ? 'is' : 'are'} ${names.join(', ')}`;

function printed(answer: Answer | Retrofit, brief: Brief, only: boolean): string {
  const units = unitsOf(brief);
  if (!('ok' in answer)) {
    const [design] = answer.designs;
    return only && design ? changedDesignText(answer, design.name, units) : retrofitText(answer, units);
  }
  const designs = designsOf(answer);
  const [first] = designs;
  const text = only && first ? designText(answer.title, first, units) : reportText(answer, units);
  return `${text}${designs.length > 0 ? `\n${sketchText(designs)}` : ''}`;
}

/** The page to print; `undefined` where there is no box. */
function pageFor(answer: Answer | Retrofit, brief: Brief, only: boolean): string | undefined {
  const units = unitsOf(brief);
  if (!('ok' in answer)) return only ? changedDesignPage(answer, units) : retrofitPage(answer, units);
  const designs = designsOf(answer);
  return designs.length > 0 ? printPage(answer.title, designs, units) : undefined;
}

/** What briefs may name that another package makes. */
type Named = Pick<BriefOptions, 'shapes' | 'flares'>;

/** The smallest boxes for some depths and levels. */
async function runTradeOffs(brief: unknown, json: boolean, progress: Progress, named: Named): Promise<Ended> {
  const front = await madeOf(() => tradeOffs(brief, { progress, ...named }));
  if (typeof front === 'string') return refused(front);
  const out = json ? jsonText(front) : tradeOffsText(front, unitsOf(brief as Brief));
  return { status: front.boxes.length > 0 ? MET : NOT_MET, out, error: '' };
}

/** Plays a recording through a box of a brief. */
async function runPlay(
  { recording, json, only, peak, svg, simulation }: Extract<ReturnType<typeof readArguments>, { what: 'play' }>,
  brief: unknown,
  standing: string,
  {
    progress,
    load,
    named,
  }: { readonly progress: Progress; readonly load: Transient | undefined; readonly named: Named },
): Promise<Ended> {
  const box = await madeOf(() => playedBox(brief, only, progress, named));
  if (typeof box === 'string') return refused(visible(box));
  if (!box.ok) return { status: NOT_MET, out: `${box.lines.join('\n')}\n`, error: '' };
  const played = await madeOf(() => play(box, recording, standing, { peak, simulation, progress, load }));
  if (typeof played === 'string') return refused(visible(played));
  if ('not' in played) {
    const status = { installed: MISSING, readable: UNREADABLE, accepted: REFUSED } as const;
    return { ...refused(played.line), status: status[played.not] };
  }
  const out = json ? jsonText(playData(played)) : playText(played, unitsOf(brief as Brief));
  const status = isKept(played) ? MET : NOT_MET;
  if (svg === undefined) return { status, out, error: '' };
  const why = writePage(resolve(standing, svg), playFigure(played));
  if (why === undefined) return { status, out, error: '' };
  return { status: UNWRITTEN, out, error: `airspring: ${visible(svg)}: the figure cannot be written: ${why}\n` };
}

/** Writes everything that a box of a brief is built from. */
async function runBuild(
  { only, into }: Extract<ReturnType<typeof readArguments>, { what: 'build' }>,
  brief: unknown,
  standing: string,
  {
    progress,
    load,
    named,
  }: { readonly progress: Progress; readonly load: Workshop | undefined; readonly named: Named },
): Promise<Ended> {
  const built = await build(brief, { only, into, standing, progress, load, ...named });
  if (built.ok) return { status: built.met ? MET : NOT_MET, out: `${built.lines.join('\n')}\n`, error: '' };
  const status = { installed: MISSING, accepted: REFUSED, written: UNWRITTEN, met: NOT_MET } as const;
  return { ...refused(built.not === 'accepted' ? built.line : `airspring: ${built.line}`), status: status[built.not] };
}

/** Whether every limit is kept. */
const isKept = ({ account }: Played): boolean => account.limits.every((one) => one.times === 0 || isNoise(one));

/** Runs the command with its arguments; `standing` is the folder of the user. `load` loads the packages for recordings, for the pages to build from, and for shapes. */
export async function run(
  words: readonly string[],
  standing: string,
  progress: Progress = () => {},
  load: { readonly transient?: Transient; readonly workshop?: Workshop; readonly shapes?: ShapesOf } = {},
): Promise<Ended> {
  const asked = readArguments(words);
  if (asked.what === 'refused') return refused(`${visible(asked.line)}; see airspring --help`);
  if (asked.what === 'help') return told(help);
  if (asked.what === 'fields')
    return told(fieldsText(briefFields({ shapes: (await installedShapes(load.shapes)) ?? [] })));
  if (asked.what === 'schema') {
    const shapes = (await installedShapes(load.shapes)) ?? [];
    return told(`${JSON.stringify(briefJsonSchema({ shapes }), null, 2)}\n`);
  }
  const file = readBriefFile(resolve(standing, asked.path), visible(asked.path));
  if (!file.ok) return { ...refused(file.line), status: file.unreadable ? UNREADABLE : REFUSED };
  const shapes = asksForShape(file.brief) ? await installedShapes(load.shapes) : [];
  if (shapes === undefined) return { ...refused(NO_SHAPES), status: MISSING };
  const flares = asksForFlare(file.brief) ? await installedFlares() : undefined;
  if (flares === 'missing') return { ...refused(NO_FLARES), status: MISSING };
  const named: Named = { shapes, flares };
  if (asked.what === 'play') return runPlay(asked, file.brief, standing, { progress, load: load.transient, named });
  if (asked.what === 'build') return runBuild(asked, file.brief, standing, { progress, load: load.workshop, named });
  const { scatter, prices } = asked;
  const ofNewBox = { scatter, prices, 'trade-offs': asked.tradeOffs };
  const [unfit] = Object.entries(ofNewBox).filter(([, chosen]) => chosen);
  if (unfit && stands(file.brief)) return refused(`--${unfit[0]} is for briefs about a new box`);
  if (asked.tradeOffs) return runTradeOffs(file.brief, asked.json, progress, named);
  const whole = await madeOf<Answer | Retrofit>(() =>
    stands(file.brief) ? retrofit(file.brief) : design(file.brief, { progress, scatter, prices, ...named }),
  );
  if (typeof whole === 'string') return refused(whole);
  const answer = asked.only === undefined ? whole : onlyOf(whole, asked.only);
  if (typeof answer === 'string') return refused(visible(answer));
  const brief = file.brief as Brief;
  const out = asked.json ? jsonText(answer) : printed(answer, brief, asked.only !== undefined);
  const status = !('ok' in answer) || answer.ok ? MET : NOT_MET;
  if (asked.html === undefined) return { status, out, error: '' };
  const page = pageFor(answer, brief, asked.only !== undefined);
  if (page === undefined) return { status, out, error: 'airspring: no page was written, since there is no box\n' };
  const why = writePage(resolve(standing, asked.html), page);
  if (why === undefined) return { status, out, error: '' };
  return { status: UNWRITTEN, out, error: `airspring: ${visible(asked.html)}: the page cannot be written: ${why}\n` };
}
