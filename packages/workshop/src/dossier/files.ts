import { sheetDrawing, toDxf } from '../drawing/index.js';
import { stl, threeMf } from '../mesh/index.js';
import { cutListCsv } from '../panel/index.js';
import { assemblingSection } from './assembling.js';
import { boxPicture } from './box-picture.js';
import { filesToChangeFrom } from './change-files.js';
import { playingAndFiles } from './cover.js';
import { boxFigure, cuttingSection, panelDrawing, sheetName, sheetPath } from './cutting.js';
import { type BuildFile, drawingFiles } from './file.js';
import type { WorkHole } from './hole.js';
import { madeOf } from './made.js';
import { escaped, list, paragraph, section, table } from './markup.js';
import { measuringSection, wiringSection } from './measuring.js';
import { documentOf } from './page.js';
import { printingSection } from './printed.js';
import { type Printing, printingOf } from './printing.js';
import { ringingOf, solidsOf } from './ringing.js';
import { ringingSection } from './ringing-section.js';
import type { Sawing } from './sawing.js';
import { sawn as sawnOf } from './sawn.js';
import { type Says, saysOf } from './says.js';
import { shapedDrawings } from './shaped-boards.js';
import { shopping } from './shopping.js';
import { slug } from './slug.js';
import { type SmallPart, smallPartsOf } from './small-parts.js';
import { smallPartsSection } from './small-parts-section.js';
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
  says: Says,
  paths: readonly string[],
): string {
  return `<div class="cover"><h1>${escaped(work.title)}</h1>
${paragraph(`${work.name}: everything to build it from.`)}
${paragraph(work.summary)}
${sawing ? boxFigure(sawing, work) : ''}${work.box ? boxPicture(work.box) : ''}
${table([], work.numbers)}
</div>
${section(
  'Buy',
  `${list(shopping(work, sawing, printings, small, says))}
${playingAndFiles(work, paths)}`,
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

/** A hole with the frame of the driver that lies around it. */
const framed = (hole: WorkHole, { drivers }: Work): WorkHole =>
  hole.what === 'driver' ? { ...hole, frame: drivers.outerDiameter } : hole;

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
  const small = smallPartsOf(
    { ...work, ...(work.box && { box: { ...work.box, solids: [...(work.box.solids ?? []), ...bars] } }) },
    says,
  );
  notes.push(...small.notes);
  const holes = small.parts.flatMap(({ hole }) => (hole ? [hole] : []));
  const box = work.box && { ...work.box, holes: [...work.box.holes.map((hole) => framed(hole, work)), ...holes] };
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
    coverSection(
      work,
      sawn,
      printings,
      small.parts,
      says,
      beside.map(({ path }) => path),
    ),
    ...(notes.length > 0 ? [section('What these pages leave out', list(notes), 'on')] : []),
    ...(sawn ? [cuttingSection(work, sawn, says)] : []),
    ...(sawn && ringing ? [ringingSection(work, ringing, says)] : []),
    ...(printings.length > 0 ? [printingSection(work, printings, says)] : []),
    ...(small.parts.length > 0 ? [smallPartsSection(work, small.parts)] : []),
    assemblingSection({ ...work, ...(box && { box }) }, sawn, brace, says),
    wiringSection(work),
    measuringSection(work),
  ].join('\n');
  return {
    files: [{ path: 'build.html', contents: documentOf(`${work.title}: ${work.name}`, body) }, ...beside],
    notes,
  };
}
