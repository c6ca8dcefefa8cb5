import { visible } from '@airspring/core/fault';
import { cautions } from '../record/cautions.js';
import type { ChangedDesign } from '../standing/whole.js';
import type { Step } from '../standing/work.js';
import type { Phrasing } from '../words/phrasing.js';

/** A step on a page, with the caution that is due at it. */
export interface PageStep {
  readonly says: string;
  readonly caution?: string;
}

const bare = (says: string): PageStep => ({ says });

/** Whether work is done on the panels, so that chips fall into the box. */
const sawn = ({ does }: Step): boolean => does === 'cut' || does === 'drill';

const measureFirst = bare(
  'Measure the impedance of the box as it stands, as these pages tell under "Measure it first", and keep the curve.',
);

/** What is done before a box is opened or sawn. */
const opening = (dusty: boolean): PageStep[] => [
  {
    says: 'Switch the amplifier off, and disconnect the box from it.',
    caution: cautions.mains,
  },
  bare(
    `Take the drivers out: note which wire is on which terminal, and loosen the screws crosswise. ${dusty ? 'Lay them face down on a soft cloth, in another room: chips and iron dust in the gap of a magnet end a driver.' : 'Lay them face down on a soft cloth.'}`,
  ),
];

const sweeping = bare(
  'Take the sawdust out of the box with a vacuum cleaner, and wipe the panels around the hole, inside and outside.',
);

/** What is done when all that is new stands. */
const closing = (vented: boolean, opened: boolean): PageStep[] => [
  ...(opened
    ? [
        {
          says: 'Let the glue set as long as its maker tells, with the box open: fumes that are shut in attack cones and surrounds.',
          caution: cautions.fumes,
        },
        bare(
          'Put the drivers back, each with a soft gasket under its frame and each wire on its own terminal. Tighten the screws crosswise.',
        ),
      ]
    : []),
  bare(
    `Look for leaks: press a cone in gently with spread fingers${vented ? ', while someone closes the vent with a flat board' : ''}. It must come back slowly. If it springs back at once, air leaks (common practice).`,
  ),
  bare('Measure the impedance again, as these pages tell under "Measure again".'),
];

const isPlug = ({ parts = [] }: Step): boolean => parts.some(({ board }) => board && 'plugs' in board);

/** What a step says on the page: parts are made as its drawings and solids have them. */
function saidOf(step: Step, say: Phrasing): string {
  if (step.does === 'print' && step.parts?.some(({ tube }) => tube))
    return 'Print the parts of the folder "print", as these pages tell under "Print". Join their pieces, and let the glue set.';
  if (isPlug(step))
    return 'Cut both discs of the plug, and glue the smaller one onto the middle of the other. Put a strip of closed-cell foam around it, push it into the vent, and screw its rim to the panel.';
  return visible(say.phrase(step.says));
}

const asSteps = (steps: readonly Step[], say: Phrasing): PageStep[] => {
  const said = steps.map((step) => ({
    says: saidOf(step, say),
    ...(isPlug(step) && { caution: cautions.dust }),
    ...(step.caution && step.caution !== 'mains' && { caution: cautions[step.caution] }),
  }));
  return [...new Map(said.map((step) => [step.says, step])).values()];
};

/** A caution stands at the first step that needs it alone. */
function once(steps: readonly PageStep[]): PageStep[] {
  const given = new Set<string>();
  return steps.map(({ says, caution }) => {
    if (caution === undefined || given.has(caution)) return { says };
    given.add(caution);
    return { says, caution };
  });
}

/** The work on a change in order, from the first measurement to the last. */
export function changeSteps({ steps, account }: ChangedDesign, say: Phrasing): PageStep[] {
  const before = steps.filter(({ does }) => does === 'measure' || does === 'buy');
  const out = steps.filter(({ does }) => does === 'take out');
  const saw = steps.filter(sawn);
  const after = steps.filter((step) => !before.includes(step) && !out.includes(step) && !sawn(step));
  const opened = steps.some((step) => ['take out', 'cut', 'drill', 'fit'].includes(step.does) && !isPlug(step));
  return once([
    measureFirst,
    ...asSteps(before, say),
    ...(opened ? opening(saw.length > 0) : []),
    ...asSteps(out, say),
    ...asSteps(saw, say),
    ...(saw.length > 0 ? [sweeping] : []),
    ...asSteps(after, say),
    ...closing(account.fb !== undefined, opened),
  ]);
}

/** The work on a set of tubes in order. `pipes` are the lengths of tubes that are cut from a pipe at hand, m. */
const listed = (texts: readonly string[]): string =>
  texts.length < 2 ? texts.join('') : `${texts.slice(0, -1).join(', ')} and ${texts.at(-1)}`;

export function setSteps(design: ChangedDesign, pipes: readonly number[], say: Phrasing): PageStep[] {
  const { steps } = design;
  const before = steps.filter(({ does }) => does === 'measure');
  const out = steps.filter(({ does }) => does === 'take out');
  const saw = steps.filter(({ does }) => does === 'drill');
  return once([
    measureFirst,
    bare(
      'Measure the clear distance behind the hole, from the inside of the panel. Each tube needs its own length, less the panel, plus one tube diameter.',
    ),
    ...asSteps(
      before.filter(({ ofTubes }) => !ofTubes),
      say,
    ),
    ...opening(saw.length > 0),
    ...asSteps(out, say),
    ...asSteps(saw, say),
    ...(saw.length > 0 ? [sweeping] : []),
    {
      says:
        pipes.length > 0
          ? `Cut the pipe square, to ${listed(pipes.map(say.length))}, and take off the burr. Print the flange and a collar for each pipe, and glue each collar over the outer end of its pipe, flush with it.`
          : 'Print the flange and the tubes of the folder "print", as these pages tell under "Print". Join the pieces of each tube, and let the glue set.',
      caution: cautions.fumes,
    },
    bare(
      'Lay a cord into the groove of a tube, with its ends cut square and glued to each other, and grease it. Push the tube into the loose flange until its rim rests: it must go in by hand, and not fall out when the flange is held up. Smooth its seat where it sticks.',
    ),
    bare(
      'Roughen the back of the flange and the panel under it. Put the tube through flange and hole, so that it holds the flange in the middle of the hole: it must turn freely. Mark the edge of the flange on the panel.',
    ),
    bare(
      'Spread glue on the back of the flange in a closed ring, away from its inner edge. Press it on at the mark, with the tube in it. Pull the tube out before the glue sets, and wipe off what wells out inside.',
    ),
    ...closing(true, true),
    bare(
      'To change the tuning, pull the tube out by its inside with two spread fingers, and push another one in. Keep the tubes that are not in use flat and cool, so that they stay round.',
    ),
  ]);
}
