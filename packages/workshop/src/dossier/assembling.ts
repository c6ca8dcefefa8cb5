import { list, paragraph, section, steps } from './markup.js';
import type { ChosenBrace } from './ringing.js';
import { airOf } from './ringing-section.js';
import { runsAlong } from './sawing.js';
import type { Says } from './says.js';
import type { Work, WorkBox, WorkHole, WorkStep } from './work.js';

/** How the boards of a slot go in: along the panels that are its other sides, or as a tube of their own. */
function slotStep(box: WorkBox, slot: WorkHole & { readonly form: 'rectangle' }, lengthText: Says): WorkStep {
  const along = runsAlong(box, slot);
  const clear = Math.min(...slot.sides) - (along ? 0 : 2 * box.boards[0]!.thickness);
  const spacers = `spacers sawn ${lengthText(clear)} wide, and pull them out before the glue sets`;
  return {
    says: `${along ? `Glue the boards of the slot in while the back is off. Keep them away from the panels beside them with ${spacers}.` : `Glue the boards of the slot to a tube around ${spacers}. Lead it through its opening, flush with the outside.`} Close every seam along it: a leak there mistunes the box.`,
  };
}

const BESIDE = { width: 'left panel', height: 'bottom', depth: 'front' } as const;

/** How a brace is held in its place while its glue sets. */
const spacersFor = ({ across, at }: ChosenBrace, { thickness }: WorkBox, lengthText: Says): string =>
  `, with glue on all its edges. Two spacers sawn ${lengthText(at - 1.5 * thickness)} long, between it and the inner side of the ${BESIDE[across]}, hold it in its place`;

/** The work in order, with what is checked on the way. */
function stepsFor(work: Work, box: WorkBox, brace: ChosenBrace | undefined, lengthText: Says): readonly WorkStep[] {
  const { cautions, vents, drivers } = work;
  const bent = vents.some(({ bend }) => bend !== undefined);
  const slot = box.holes.find(
    ({ what, form, board }) => board === undefined && what === 'vent' && form === 'rectangle',
  );
  const opens = vents.length > 0 || slot !== undefined;
  const many = vents.some(({ count }) => count > 1);
  const fitVent: WorkStep[] =
    vents.length === 0
      ? []
      : [
          {
            says: `Fit the ${many ? 'vents' : 'vent'}${bent ? ': join the pieces inside the box, since a bent tube does not go through its hole' : ''}. Glue it in airtight, and check that nothing stands in front of its inner end.`,
          },
        ];
  const fitSlot: WorkStep[] =
    slot?.form === 'rectangle' && box.boards.length > 0 ? [slotStep(box, slot, lengthText)] : [];
  return [
    {
      says: `Measure the board at several places. These pages are made for ${lengthText(box.thickness)}. If it differs by more than 0.3 mm, write the measured thickness into the brief and make the pages again.`,
    },
    { says: 'Cut the panels. Cut equal panels at one setting of the saw.', caution: cautions.dust },
    {
      says: 'Lay equal panels on each other: their edges must agree. Measure both diagonals of each panel: they must agree within 1 mm.',
    },
    ...(box.holes.length > 0
      ? [{ says: 'Mark the centres of the holes on the side that the drawings show. Cut the holes before gluing.' }]
      : []),
    {
      says: `Put the box together dry, without glue${brace ? ', with the brace in its place' : ''}. Every joint must close by hand, and the diagonals of the open side must agree within 1 mm.${brace ? ' Try whether driver and vent go past the brace.' : ''}`,
    },
    {
      says: `Glue all panels but the back${brace ? `, and the brace between them${spacersFor(brace, box, lengthText)}` : ''}. Clamp them evenly, and check the diagonals once more before the glue sets.`,
      caution: cautions.fumes,
    },
    ...fitVent,
    ...fitSlot,
    { says: 'Run a bead of glue or sealant along every inner seam.' },
    { says: 'Glue the back on. Let it set before you lift the box.', caution: cautions.weight },
    {
      says: `Fit ${drivers.count > 1 ? 'each driver' : 'the driver'} with a soft gasket under its frame. Tighten the screws crosswise.`,
    },
    {
      says: `Look for leaks: press the cone in gently with spread fingers${opens ? `, while someone closes the ${slot ? 'slot' : 'vent'} with a flat board` : ''}. It must come back slowly. If it springs back at once, air leaks (common practice).`,
    },
  ];
}

/** The work in order, to tick off, and what the kind of box asks for. */
export function assemblingSection(work: Work, brace: ChosenBrace | undefined, lengthText: Says): string {
  const { box, building, assumed } = work;
  const tasks = work.steps ?? (box ? stepsFor(work, box, brace, lengthText) : []);
  return section(
    'Put it together',
    [
      ...building.map(paragraph),
      ...(brace && box ? [paragraph(airOf(brace, box))] : []),
      steps(tasks),
      ...(assumed.length > 0 ? ['<h3>Assumed, because the brief does not say</h3>', list(assumed)] : []),
    ].join('\n'),
  );
}
