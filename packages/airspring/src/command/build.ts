import { isInputError } from '@airspring/core/fault';
import type { ShapeChoice } from '@airspring/core/space';
import { readBrief } from '../brief/read.js';
import { design } from '../design.js';
import { completeOptions } from '../kind/brief-options.js';
import { workOf } from '../page/work.js';
import type { Answer } from '../record/answer.js';
import type { Design } from '../record/design-record.js';
import type { Progress } from '../search/search.js';
import { stands } from '../standing/read.js';

/** What the command loads where it builds. */
const workshop = () => import('@airspring/workshop/dossier');
export type Workshop = typeof workshop;

const INSTALL = 'npm install @airspring/workshop';

type Files = Awaited<ReturnType<Awaited<ReturnType<Workshop>>['filesToBuildFrom']>>;

/** The files, or why there are none: one line, and whose fault it is. */
export type FilesToBuild =
  | ({ readonly ok: true; readonly title: string; readonly name: string; readonly met: boolean } & Files)
  | { readonly ok: false; readonly not: 'installed' | 'accepted' | 'met'; readonly line: string };

/** The package for it, or `undefined` where it is not installed. */
async function loaded(load: Workshop): Promise<Awaited<ReturnType<Workshop>> | undefined> {
  try {
    return await load();
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    if (code === 'ERR_MODULE_NOT_FOUND' && message.includes('@airspring/workshop')) return undefined;
    throw error;
  }
}

/** The box that is asked for, from those that meet the brief or the nearest one. */
function chosen(answer: Answer, only: string | undefined): Design | string {
  const designs = answer.ok ? answer.designs : (answer.nearest?.answer.designs ?? []);
  const found = only === undefined ? designs[0] : designs.find(({ name }) => name.toLowerCase() === only.toLowerCase());
  if (found) return found;
  if (designs.length === 0) return 'there is no box to build; airspring design tells why';
  return `there is no box "${only}"; there is ${designs.map(({ name }) => name).join(', ')}`;
}

/** What the work is at, in a few words. */
type Step = (what: string) => void;

/**
 * The files to build one box of a brief from. The command and a page make the same, since both call this; no file of it needs
 * Node. `step` hears what is made next.
 */
export async function filesToBuild(
  brief: unknown,
  {
    only,
    progress,
    step,
    load = workshop,
    shapes = [],
  }: {
    readonly only?: string | undefined;
    readonly progress?: Progress | undefined;
    readonly step?: Step | undefined;
    readonly load?: Workshop | undefined;
    readonly shapes?: readonly ShapeChoice[];
  } = {},
): Promise<FilesToBuild> {
  if (stands(brief)) {
    return {
      ok: false,
      not: 'accepted',
      line: 'build is for briefs about a new box; for an existing box use airspring design --html',
    };
  }
  const library = await loaded(load);
  if (library === undefined)
    return { ok: false, not: 'installed', line: `what to build from is made by another package: ${INSTALL}` };
  try {
    const { kinds, models, alignments } = completeOptions({ shapes });
    const job = readBrief(brief, kinds, models, alignments, shapes);
    step?.('the design');
    const answer = design(brief, { ...(progress && { progress }), shapes });
    const box = chosen(answer, only);
    if (typeof box === 'string') return { ok: false, not: answer.ok ? 'accepted' : 'met', line: box };
    const made = await library.filesToBuildFrom(workOf(box, job), { step });
    return { ok: true, title: answer.title, name: `Box ${box.name}`, met: answer.ok, ...made };
  } catch (error) {
    if (!isInputError(error)) throw error;
    return { ok: false, not: 'accepted', line: error.message };
  }
}
