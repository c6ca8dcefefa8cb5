import { visible } from '@airspring/core/fault';
import { readBrief } from './brief/read.js';
import { design } from './design.js';
import { type BriefOptions, completeOptions } from './kind/brief-options.js';
import { changeWorkOf } from './page/change-work.js';
import { workOf } from './page/work.js';
import type { Answer } from './record/answer.js';
import type { Design } from './record/design-record.js';
import type { Progress } from './search/search.js';
import { chosenOf } from './standing/chosen.js';
import { stands } from './standing/read.js';
import { workedOut } from './standing/retrofit.js';
import { phrasing } from './words/phrasing.js';

export interface ToBuildOptions extends BriefOptions {
  /**
   * What is built: the letter of a box; of a box that stands a change by its number or its name, a combination by its letter, a
   * set of tubes, as 'set 2', or one tube of it by its mark, as 'T2'. Default: the first box, or what the report says to do first.
   */
  readonly only?: string | undefined;
  readonly progress?: Progress | undefined;
}

/** What is built, as `@airspring/workshop/dossier` takes it; or why there is nothing to build, in one line. */
export type ToBuild =
  | {
      readonly ok: true;
      readonly title: string;
      /** 'Box A', 'Change 3, a wider vent', 'Set 2, …'. */
      readonly name: string;
      /** Whether every wish of a new box is met. */
      readonly met: boolean;
      readonly work: ReturnType<typeof workOf> | ReturnType<typeof changeWorkOf>;
    }
  | { readonly ok: false; readonly not: 'accepted' | 'met'; readonly line: string };

/** The box that is asked for, from those that meet the brief or the nearest one. */
function chosenBox(answer: Answer, only: string | undefined): Design | string {
  const designs = answer.ok ? answer.designs : (answer.nearest?.answer.designs ?? []);
  const found = only === undefined ? designs[0] : designs.find(({ name }) => name.toLowerCase() === only.toLowerCase());
  if (found) return found;
  if (designs.length === 0) return 'there is no box to build; airspring design tells why';
  return `there is no box "${only}"; there is ${designs.map(({ name }) => name).join(', ')}`;
}

/** What a change of a box that stands is built from. */
function changeToBuild(brief: unknown, only: string | undefined, options: BriefOptions): ToBuild {
  const worked = workedOut(brief, options);
  const chosen = chosenOf(worked, only);
  if (!('what' in chosen)) {
    const line = phrasing(worked.now.standing.job.units).phrase(chosen);
    return { ok: false, not: only === undefined ? 'met' : 'accepted', line: visible(line) };
  }
  const work = changeWorkOf(chosen, worked);
  return { ok: true, title: work.title, name: work.name, met: true, work };
}

/**
 * What to build from for a brief: a new box, or a change of a box that stands. `filesToBuildFrom` of `@airspring/workshop/dossier` makes
 * pages and files of its `work`. Both run in a browser and in a worker.
 *
 * @throws InputError with every fault of the brief at its path
 * @example const built = toBuild(brief, { only: 'set 2' }); if (built.ok) await filesToBuildFrom(built.work)
 */
export function toBuild(brief: unknown, { only, progress = () => {}, ...options }: ToBuildOptions = {}): ToBuild {
  if (stands(brief)) return changeToBuild(brief, only, options);
  const { kinds, models, alignments, shapes } = completeOptions(options);
  const answer = design(brief, { ...options, progress });
  const box = chosenBox(answer, only);
  if (typeof box === 'string') return { ok: false, not: answer.ok ? 'accepted' : 'met', line: box };
  const {
    called,
    box: { open = [] },
  } = box;
  if (open.length > 0) {
    const line = `no files are made for ${called}, since they are of boxes with six panels; its cut list is in the report of airspring design`;
    return { ok: false, not: 'accepted', line };
  }
  // A box of the nearest brief is built with what that brief changes, such as a wider printer.
  const built = answer.ok ? brief : (answer.nearest?.brief ?? brief);
  const work = workOf(box, readBrief(built, kinds, models, alignments, shapes));
  return { ok: true, title: work.title, name: work.name, met: answer.ok, work };
}
