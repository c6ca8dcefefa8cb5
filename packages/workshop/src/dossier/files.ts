import { NANOMETRE } from '@airspring/core/quantity';
import { sheetDrawing, toDxf } from '../drawing/index.js';
import { stl, threeMf } from '../mesh/index.js';
import { cutListCsv } from '../panel/index.js';
import { assemblingSection } from './assembling.js';
import { boxPicture } from './box-picture.js';
import { filesToChangeFrom } from './change-files.js';
import { boxFigure, cuttingSection, panelDrawing, sheetName, sheetPath } from './cutting.js';
import { type BuildFile, drawingFiles } from './file.js';
import { filesSection } from './files-section.js';
import type { WorkHole } from './hole.js';
import { madeOf } from './made.js';
import { escaped, list, paragraph, section, table } from './markup.js';
import { measuringSection, wiringSection } from './measuring.js';
import { documentOf } from './page.js';
import { driverTable, playingSection } from './playing.js';
import { printingSection } from './printed.js';
import { type Printing, printedFlange, printingOf } from './printing.js';
import { ringingOf, solidsOf } from './ringing.js';
import type { Ringing } from './ringing-record.js';
import { ringingSection } from './ringing-section.js';
import type { Sawing } from './sawing.js';
import { sawn as sawnOf } from './sawn.js';
import { type Says, saysOf } from './says.js';
import { shapedDrawings } from './shaped-boards.js';
import { shopping } from './shopping.js';
import { slug } from './slug.js';
import { type SmallPart, smallPartsOf } from './small-parts.js';
import { smallPartsSection } from './small-parts-section.js';
import { type Terminals, terminalsOf } from './terminals.js';
import type { ChangeWork, Work } from './work.js';

/** What a box is built from. */
export interface BuildFiles {
  /** The pages to read first, then the files that they name. */
  readonly files: readonly BuildFile[];
  /** What could not be made, and why, in sentences. */
  readonly notes: readonly string[];
}

/** Hears what is made next, in a few words. */
type Step = (what: string) => void;

function coverSection(
  work: Work,
  sawing: Sawing | undefined,
  printings: readonly Printing[],
  small: readonly SmallPart[],
  terminals: Terminals | undefined,
  says: Says,
): string {
  return `<div class="cover"><h1>${escaped(work.title)}</h1>
${paragraph(`${work.name}: everything to build it from.`)}
${paragraph(work.summary)}
${sawing ? boxFigure(sawing, work) : ''}${work.box ? boxPicture(work.box) : ''}
${table([], work.numbers)}
</div>
${section(
  'Buy',
  `${list(shopping(work, sawing, printings, small, terminals, says))}
${driverTable(work)}`,
  // Without a picture of the box the cover leaves room.
  sawing?.box || work.box?.prisms ? undefined : 'flows',
)}`;
}

/** Files of all that is sawn. */
async function sawnFiles(work: Work, sawing: Sawing, step: Step): Promise<BuildFile[]> {
  const files: BuildFile[] = [{ path: 'cut-list.csv', contents: cutListCsv(sawing.rows) }];
  for (const piece of sawing.box?.pieces ?? []) {
    step(`the drawing of the ${piece.name} panel`);
    files.push(...(await drawingFiles(`panels/${slug(piece.name)}`, panelDrawing(piece, sawing, work), work)));
  }
  step('the drawings of the sheets');
  for (const one of sawing.sheets) {
    const { nesting } = one;
    for (const [i, sheet] of nesting.sheets.entries()) {
      const drawing = sheetDrawing(sheet, {
        pieces: sawing.box?.pieces ?? [],
        boards: sawing.shaped.map(({ panel, cutouts }) => ({ board: panel, cutouts })),
        name: sheetName(nesting, i),
      });
      files.push(...(await drawingFiles(sheetPath(sawing, one, i), drawing, work)));
    }
  }
  return files;
}

/** Files of the panels of a box that is no cuboid. */
async function shapedFiles(work: Work, { shaped }: Sawing): Promise<BuildFile[]> {
  const files: BuildFile[] = [];
  for (const { path, drawing } of shapedDrawings(shaped, work))
    files.push(...(await drawingFiles(path, drawing, work)));
  return files;
}

/** Files of all that is printed. */
async function printedFiles(printings: readonly Printing[], step: Step): Promise<BuildFile[]> {
  const files: BuildFile[] = [];
  for (const [i, { parts }] of printings.entries()) {
    const folder = printings.length > 1 ? `vent-${i + 1}` : 'vent';
    step('the files for the printer');
    for (const { name, mesh } of parts) files.push({ path: `${folder}/${slug(name)}.stl`, contents: stl(mesh) });
    files.push({ path: `${folder}/${folder}.3mf`, contents: await threeMf(parts) });
  }
  return files;
}

/** Files of small parts: to print, and to cut. */
async function smallFiles(parts: readonly SmallPart[]): Promise<BuildFile[]> {
  const files: BuildFile[] = [];
  for (const { name, mesh, drawing } of parts) {
    const path = `small-parts/${name}`;
    if (mesh) files.push({ path: `${path}.stl`, contents: stl(mesh) });
    if (mesh) files.push({ path: `${path}.3mf`, contents: await threeMf([{ name, mesh }]) });
    if (drawing) files.push({ path: `${path}.dxf`, contents: await toDxf(drawing) });
  }
  return files;
}

/** The vent that a hole is for: its tube passes, and no wider one does. */
const ventIn = (hole: WorkHole, vents: Work['vents']) =>
  hole.form === 'circle'
    ? vents
        .filter(({ outerDiameter }) => outerDiameter <= hole.diameter + NANOMETRE)
        .reduce<Work['vents'][number] | undefined>(
          (widest, one) => (widest && widest.outerDiameter >= one.outerDiameter ? widest : one),
          undefined,
        )
    : undefined;

/** A hole with the frame or the flange that lies around it. */
function framed(hole: WorkHole, { drivers, vents, tools }: Work): WorkHole {
  if (hole.what === 'driver') return { ...hole, frame: drivers.outerDiameter };
  const vent = hole.what === 'vent' ? ventIn(hole, vents) : undefined;
  return vent ? { ...hole, frame: printedFlange(vent, tools) } : hole;
}

/** The panels that ring, with the hole for the terminals among those that something is cut into. */
const holedBy = (ringing: Ringing, terminals: Terminals | undefined): Ringing =>
  ringing.panels
    ? {
        ...ringing,
        panels: ringing.panels.map((panel) => (panel.face === terminals?.hole?.face ? { ...panel, cut: true } : panel)),
      }
    : ringing;

const isChange = (work: Work): work is ChangeWork => work.change !== undefined;

/**
 * Everything that a box is built from: one set of pages to print, the cut list, drawings of panels and sheets as SVG and DXF, and the
 * parts for the printer as STL and 3MF. Of a change to a box that stands: its pages, its tubes, flanges and boards. What cannot be made is told
 * in `notes`, and the rest is made all the same. `step` hears what is made next.
 *
 * @validity boxes with round vents; slots are boards, and are in the cut list
 * @throws InputError for sizes that contradict each other
 * @example (await filesToBuildFrom(workOf(design, job))).files[0].path // 'build.html'
 */
export async function filesToBuildFrom(
  work: Work,
  { step = () => {} }: { readonly step?: ((what: string) => void) | undefined } = {},
): Promise<BuildFiles> {
  if (isChange(work)) return filesToChangeFrom(work, step);
  const notes: string[] = [];
  const says = saysOf(work);
  const ringing = work.box && ringingOf(work.box, work.tools);
  const brace = work.tools.brace && ringing?.brace;
  if (work.tools.brace && brace === undefined) notes.push(`No brace is cut: ${ringing?.because ?? 'there is no box'}.`);
  const bars = work.box && brace ? solidsOf(brace, work.box) : [];
  const closed = work.box && { ...work.box, holes: work.box.holes.map((hole) => framed(hole, work)) };
  const filled = closed && { ...closed, solids: [...(closed.solids ?? []), ...bars] };
  const small = smallPartsOf({ ...work, ...(filled && { box: filled }) }, says);
  notes.push(...small.notes);
  const printedCup = small.parts.find((part) => part.mesh && part.terminals)?.terminals;
  const terminals = printedCup ?? (filled && terminalsOf(work, filled));
  const box = closed && {
    ...closed,
    holes: [...closed.holes, ...(terminals?.hole ? [terminals.hole] : [])],
  };
  const sawn = box && sawnOf(box, work.tools, brace ? [brace.input] : [], notes, says);
  const printings = work.vents.flatMap((vent): Printing[] => {
    step('the vent as a solid');
    const printing = madeOf<Printing>(
      'The vent',
      () => printingOf(vent, work.tools, vent.netVolume ?? work.box?.netVolume),
      says,
    );
    if (typeof printing !== 'string') return [printing];
    notes.push(printing);
    return [];
  });
  const beside = [
    ...(sawn ? await sawnFiles(work, sawn, step) : []),
    ...(sawn ? await shapedFiles(work, sawn) : []),
    ...(await printedFiles(printings, step)),
    ...(await smallFiles(small.parts)),
  ];
  const body = [
    coverSection(work, sawn, printings, small.parts, terminals, says),
    ...(notes.length > 0 ? [section('What these pages leave out', list(notes), 'on')] : []),
    ...(sawn ? [cuttingSection(work, sawn, says)] : []),
    ...(sawn && ringing ? [ringingSection(work, holedBy(ringing, terminals), says)] : []),
    ...(printings.length > 0 ? [printingSection(work, printings, says)] : []),
    ...(small.parts.length > 0 ? [smallPartsSection(work, small.parts, says)] : []),
    wiringSection(work),
    assemblingSection({ ...work, ...(box && { box }) }, sawn, brace, terminals, says),
    measuringSection(work),
    playingSection(work),
    filesSection(beside.map(({ path }) => path)),
  ].join('\n');
  return {
    files: [{ path: 'build.html', contents: documentOf(`${work.title}: ${work.name}`, body) }, ...beside],
    notes,
  };
}
