import { isInputError } from '@airspring/core/fault';
import { type ToBuildOptions, toBuild } from '../to-build.js';

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

/** What the work is at, in a few words. */
type Step = (what: string) => void;

/**
 * The files to build from: one box of a brief, or a change of a box that stands. The command and a page make the same, since both
 * call this; no file of it needs Node. `step` hears what is made next.
 */
export async function filesToBuild(
  brief: unknown,
  {
    step,
    load = workshop,
    ...options
  }: ToBuildOptions & { readonly step?: Step | undefined; readonly load?: Workshop | undefined } = {},
): Promise<FilesToBuild> {
  const library = await loaded(load);
  if (library === undefined)
    return { ok: false, not: 'installed', line: `what to build from is made by another package: ${INSTALL}` };
  try {
    step?.('the design');
    const built = toBuild(brief, options);
    if (!built.ok) return built;
    const { title, name, met, work } = built;
    return { ok: true, title, name, met, ...(await library.filesToBuildFrom(work, { step })) };
  } catch (error) {
    if (!isInputError(error)) throw error;
    return { ok: false, not: 'accepted', line: error.message };
  }
}
