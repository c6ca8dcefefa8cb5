import { NANOMETRE } from '@airspring/core/quantity';
import type { Cutout } from '../panel/cutout.js';
import { airOf } from './brace-air.js';
import { braceAxes } from './brace-place.js';
import { markingText, turningText } from './elbow-mark.js';
import type { WorkHole } from './hole.js';
import { insideBoards, isInside } from './inside-boards.js';
import { list, paragraph, section, steps } from './markup.js';
import { POLES, RESISTANCE } from './measuring.js';
import { recessDiameter } from './recess-room.js';
import type { ChosenBrace } from './ringing-record.js';
import { runsAlong, type Sawing } from './sawing.js';
import { airText, roughly, type Says } from './says.js';
import { placeText, type Terminals } from './terminals.js';
import type { Work, WorkBox, WorkStep } from './work.js';

/** How the boards of a slot go in: along the panels that are its other sides, or as a tube of their own. */
function slotStep(box: WorkBox, slot: WorkHole & { readonly form: 'rectangle' }, lengthText: Says): WorkStep {
  const along = runsAlong(box, slot);
  const clear = Math.min(...slot.sides) - (along ? 0 : 2 * box.boards[0]!.thickness);
  const spacers = `spacers sawn ${lengthText(clear)} wide, and pull them out before the glue sets`;
  return {
    says: `${along ? `Glue the boards of the slot in while the ${closing(box)} is off. Keep them away from the panels beside them with ${spacers}.` : `Glue the boards of the slot to a tube around ${spacers}. Lead it through its opening, flush with the outside.`} Close every seam along it: a leak there mistunes the box.`,
  };
}

/** The panel that is glued on last. */
const closing = ({ closes }: WorkBox): string => (closes === undefined ? 'back' : `${closes} panel`);

/** The panel across the axis that the others are glued to first. */
function first({ boards, closes }: WorkBox): string {
  const other = boards
    .flatMap(({ panel }) => (panel ? [panel.name] : []))
    .slice(-2)
    .find((name) => name !== closes);
  return other === undefined ? 'a panel that they lie against' : `the ${other} panel`;
}

/** Holes that something closes. */
const CLOSED = new Set(['driver', 'radiator', 'terminals']);

const BESIDE = { width: 'left panel', height: 'bottom', depth: 'front' } as const;

/** How a brace is held in its place while its glue sets: off the panel before it, or off a board that stands between them. */
function spacersFor({ across, at }: ChosenBrace, box: WorkBox, lengthText: Says): string {
  const { thickness } = box;
  const axis = braceAxes.indexOf(across);
  const near = at - thickness / 2;
  const [board] = insideBoards(box)
    .filter((one) => one.axis === axis && one.greatest[axis]! <= near + NANOMETRE)
    .sort((one, other) => other.greatest[axis]! - one.greatest[axis]!);
  const from = board?.greatest[axis] ?? thickness;
  const before = board ? `the ${board.name} before it` : `the inner side of the ${BESIDE[across]}`;
  return `, with glue on all its edges. Two spacers sawn ${lengthText(near - from)} long, between it and ${before}, hold it in its place`;
}

const boardNames = (names: readonly string[]): string => [...new Set(names)].map((name) => `the ${name}`).join(' and ');

/** How the panels between two others become a ring, and where it stands. */
function ringText(box: WorkBox): string {
  if (box.boards.some(({ panel }) => panel?.opening)) {
    return `Tape the mitred edges of each layer together from outside, glue, and fold them to a ring. Build up from ${first(box)}: the ring of its layer on it, then the shelf that the pages list, then the ring of the next layer. Where a shelf lies under a smaller ring, that ring stands around its opening. Lay the ${closing(box)} on dry before the glue sets: it must lie flat.`;
  }
  const [bent, ...more] = box.boards.flatMap(({ panel }) => (panel ? [panel] : [])).slice(0, -2);
  const ring =
    bent?.bent && more.length === 0
      ? `Close the ${bent.name} panel to a ring, and let its seam set. Glue the ring on ${first(box)}, flush with its edge all around.`
      : `Tape the mitred edges together from outside, glue, and fold the ring of them around ${first(box)}.`;
  return `${ring} Lay the ${closing(box)} on dry before the glue sets: it must lie flat.`;
}

/** What is glued first, and which panel closes the box. */
function gluing(box: WorkBox, brace: ChosenBrace | undefined, inside: readonly string[], lengthText: Says): string {
  const between = [
    ...(inside.length > 0 ? [`${boardNames(inside)} in its place`] : []),
    ...(brace ? [`the brace between them${spacersFor(brace, box, lengthText)}`] : []),
  ];
  return `${between.length > 0 ? `, with ${between.join(' and ')}` : ''}. ${box.joints === undefined ? 'Clamp them evenly, and check the diagonals once more before the glue sets.' : ringText(box)}`;
}

/** How the panels are cut, by what these pages have of them. */
function cuttingText(sawing: Sawing | undefined): string {
  if (sawing === undefined) return 'Cut the panels.';
  const { sheets, unnested } = sawing;
  const bySheets = 'along the numbered lines of the sheets in their order';
  if (unnested.length === 0) return `Cut the panels, ${bySheets}.`;
  return sheets.length === 0
    ? 'Cut the panels by the cut list.'
    : `Cut the panels: those that lie on sheets ${bySheets}, the others by the cut list.`;
}

/** What the drawings of the panels have. */
const cutoutsOf = ({ box, shaped }: Sawing): readonly Cutout[] =>
  [...(box?.pieces ?? []), ...shaped].flatMap(({ cutouts }) => cutouts);

/** The holes in the panels, in order: what is routed while the middle of a hole still stands, the holes, and their inner edges. */
function holing(
  work: Work,
  box: WorkBox,
  sawing: Sawing | undefined,
  [marking, cutting]: readonly [marking: string, cutting: string],
  lengthText: Says,
): WorkStep[] {
  const { drivers, cautions, tools } = work;
  const count = box.holes.filter((hole) => hole.what === 'driver' && !isInside(hole)).length;
  // What is drawn has room.
  const drawn = sawing && cutoutsOf(sawing).filter(({ part }) => part === 'driver');
  const recess = drawn ? drawn.some((one) => one.recess) && tools.recess : tools.recess;
  const roundOver = drawn ? drawn.some((one) => one.roundOver) && tools.roundOver : tools.roundOver;
  if (count === 0 || (!recess && !roundOver)) return [{ says: `${marking} ${cutting}`, caution: cautions.dust }];
  const each = count > 1 ? 'each driver' : 'the driver';
  const stepped: WorkStep[] = recess
    ? [
        {
          says: `Rout the recess for ${each} from outside, ${lengthText(recessDiameter(drivers.outerDiameter))} wide and ${lengthText(recess)} deep, before its hole is cut: there the router still finds the middle. Try it in a piece of scrap first: the frame must go in by hand, and lie flush. ${count > 1 ? 'The drivers then stand' : 'The driver then stands'} that much deeper, which takes about ${airText(work, (count * Math.PI * drivers.cutoutDiameter ** 2 * recess) / 4)} of air that the tuning does not count.`,
          caution: cautions.dust,
        },
      ]
    : [];
  const rounded: WorkStep[] = roundOver
    ? [
        {
          says: `Then round over the inner edge of the hole of ${each} with a radius of ${lengthText(roundOver)}, so that air gets behind the cone.${drawn?.some(({ bolts }) => bolts) ? '' : ' Keep to full thickness where the screws of the frame go in.'}`,
          caution: cautions.dust,
        },
      ]
    : [];
  return recess
    ? [{ says: marking }, ...stepped, { says: cutting, caution: cautions.dust }, ...rounded]
    : [{ says: `${marking} ${cutting}`, caution: cautions.dust }, ...rounded];
}

/** The work in order, with what is checked on the way. */
function stepsFor(
  work: Work,
  box: WorkBox,
  sawing: Sawing | undefined,
  brace: ChosenBrace | undefined,
  cup: Terminals | undefined,
  lengthText: Says,
): readonly WorkStep[] {
  const { cautions, vents, drivers, tools, filled = [] } = work;
  const shaped = box.joints !== undefined;
  const agree = roughly(work.unit, 1e-3);
  /** Whether drawings of panels have holes. */
  const drawn = sawing !== undefined && cutoutsOf(sawing).length > 0;
  const inPanels = box.holes.filter((hole) => !isInside(hole));
  const bent = vents.some(({ bend }) => bend !== undefined);
  const slot = inPanels.find(({ what, form }) => what === 'vent' && form === 'rectangle');
  /** What someone closes with a flat board where air shall be shut in. */
  const opening = slot ? 'slot' : inPanels.find(({ what }) => !CLOSED.has(what))?.what;
  const many = vents.reduce((sum, { count }) => sum + count, 0) > 1;
  /** Drivers in a board inside are reached through a panel that is screwed on. */
  const within = box.holes.some((hole) => hole.what === 'driver' && isInside(hole));
  const inside = slot || box.joints !== undefined ? [] : box.boards.map(({ name }) => name);
  const last = within ? 'the panel that is screwed on' : `the ${closing(box)}`;
  const fitVent: WorkStep[] =
    vents.length === 0
      ? []
      : [
          ...(bent ? [{ says: markingText(many) }] : []),
          {
            says: `Fit the ${many ? 'vents' : 'vent'}${bent ? ', since a bent tube does not go through its hole: the piece with the flange from outside, the others from inside, glued together with the line unbroken' : ''}. ${bent ? `${turningText(vents, drawn)}Prop the ${many ? 'arms' : 'arm'} there until the glue has set. ` : ''}Glue ${many ? 'them' : 'it'} in airtight, and check that nothing stands in front of ${many ? 'an' : 'its'} inner end.`,
            caution: cautions.fumes,
          },
        ];
  const fitSlot: WorkStep[] =
    slot?.form === 'rectangle' && box.boards.length > 0 ? [slotStep(box, slot, lengthText)] : [];
  const each = drivers.count > 1 ? 'each driver' : 'the driver';
  const cable: WorkStep = {
    says: `Join a cable to the terminals, + to +, long enough to come out of the hole of ${drivers.count > 1 ? 'a' : 'the'} driver. Lead it in through the hole for the terminals${within ? ', and through a tight, sealed hole in any board before the driver' : ''}. Seal the cup, and screw it on.`,
  };
  const poles: WorkStep = { says: `Join the cable to ${each} as shown under "Wiring". ${POLES}` };
  const fitDriver: WorkStep = {
    says: `Fit ${each}${within ? ' in its board' : ''} with a soft gasket under its frame. ${tools.bolts ? 'Screw it through the holes of its bolts, and tighten' : 'Tighten'} the screws crosswise.${tools.bolts ? ' Where no drawing shows these holes, mark them through the frame.' : ''}`,
  };
  const pilots: WorkStep[] =
    tools.bolts || !box.holes.some(({ what }) => what === 'driver')
      ? []
      : [
          {
            says: `The brief tells no bolts, so the frame of ${each} is its own template: lay ${drivers.count > 1 ? 'each' : 'the'} driver into its hole, where it must go in by hand. Mark the middle of each hole in its frame, and take it out. Drill a pilot hole at each mark, about two thirds as wide as the screw, so that the board does not split (common practice).`,
            caution: cautions.dust,
          },
        ];
  const leaks: WorkStep = {
    says: `Look for leaks${within ? ' of the chamber behind the cone' : ''}: press the cone in gently with spread fingers${opening ? `, while someone closes the ${opening} with a flat board` : ''}. It must come back slowly. If it springs back at once, air leaks (common practice).`,
  };
  const terminals =
    cup === undefined || cup.hole
      ? ''
      : `Cut one of ${lengthText(cup.sizes.hole)} for the terminals as well, ${placeText(cup, lengthText)}.`;
  const marking = `Mark the centres of the holes ${drawn ? `on the side that the drawings show${sawing.listed.length > 0 ? ', and of those that no drawing shows as listed under "Holes"' : ''}` : 'as listed under "Holes", on the outer side'}.`;
  return [
    {
      says: `Measure the board at several places. These pages are made for ${lengthText(box.thickness)}. If it differs by more than ${roughly(work.unit, 3e-4)}, write the measured thickness into the brief and make the pages again.`,
    },
    { says: cuttingText(sawing), caution: cautions.dust },
    {
      says: `Lay equal panels on each other: their edges must agree. Measure both diagonals of each ${shaped ? 'rectangular ' : ''}panel: they must agree within ${agree}.`,
    },
    ...(box.holes.length > 0
      ? holing(work, box, sawing, [marking, `Cut the holes before gluing. ${terminals}`.trim()], lengthText)
      : terminals === ''
        ? []
        : [{ says: terminals, caution: cautions.dust }]),
    ...pilots,
    {
      says: `Put the box together dry, without glue${brace ? ', with the brace in its place' : ''}. Every joint must close by hand, and ${shaped ? `the ${closing(box)} must lie on all edges around the open side` : `the diagonals of the open side must agree within ${agree}`}.${brace ? ` Try whether the driver${opening ? ` and the ${opening}` : ''} go${opening ? '' : 'es'} past the brace.` : ''}`,
    },
    {
      says: `Glue all panels but ${last}${gluing(box, brace, inside, lengthText)}`,
      caution: cautions.fumes,
    },
    { says: 'Run a bead of glue or sealant along every inner seam.' },
    ...fitVent,
    ...fitSlot,
    ...filled.map((part) => ({
      says: `Fill the ${part}, as told above${part === 'vent' ? '' : ', and keep the filling away from the cone'}.`,
    })),
    ...(within
      ? [
          cable,
          poles,
          fitDriver,
          leaks,
          {
            says: 'Lay a seal of foam tape under the last panel, and screw it on. Do not glue it.',
            caution: cautions.weight,
          },
        ]
      : [
          {
            says: `Glue the ${closing(box)} on. Seal its seams from inside, through the hole of ${drivers.count > 1 ? 'a' : 'the'} driver. Let it set, with all holes open, before you lift the box or fit a driver: fumes that are shut in attack cones and surrounds.`,
            caution: cautions.weight,
          },
          cable,
          poles,
          fitDriver,
          leaks,
        ]),
    { says: RESISTANCE },
  ];
}

/** The work in order, to tick off, and what the kind of box asks for. */
export function assemblingSection(
  work: Work,
  sawing: Sawing | undefined,
  brace: ChosenBrace | undefined,
  cup: Terminals | undefined,
  lengthText: Says,
): string {
  const { box, building, assumed } = work;
  const tasks = work.steps ?? (box ? stepsFor(work, box, sawing, brace, cup, lengthText) : []);
  return section(
    'Put it together',
    [
      ...building.map(paragraph),
      ...(brace && box ? [paragraph(airOf(brace, box, work))] : []),
      steps(tasks),
      ...(assumed.length > 0 ? ['<h3>Assumed, because the brief does not say</h3>', list(assumed)] : []),
    ].join('\n'),
    'flows',
  );
}
