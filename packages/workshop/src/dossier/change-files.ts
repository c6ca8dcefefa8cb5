import { type Drawing, plateDrawing } from '../drawing/index.js';
import { stl, threeMf } from '../mesh/index.js';
import { changePrinting } from './change-printed.js';
import { doingSection, holesSection, measuringAgain, measuringFirst } from './changing.js';
import { type BuildFile, drawingFiles } from './file.js';
import { filesSection } from './files-section.js';
import { madeOf } from './made.js';
import { escaped, list, paragraph, section, table } from './markup.js';
import { REWIRING, wiringSection } from './measuring.js';
import { documentOf } from './page.js';
import { driverTable, playingSection } from './playing.js';
import { type Says, saysOf } from './says.js';
import { type SetPrinting, setPrinting } from './set-printing.js';
import { MEASURING } from './shopping.js';
import { slug } from './slug.js';
import { bentPanels } from './standing-panel.js';
import { type TubePrinting, tubePrinting } from './tube-printing.js';
import type { ChangeWork } from './work.js';

/** Files of all that is cut, and of the panels behind which a tube bends. */
async function cutFiles({ change, unit }: ChangeWork, set: SetPrinting | undefined): Promise<BuildFile[]> {
  const files: BuildFile[] = set ? await drawingFiles('holes/flange', set.face, { unit }) : [];
  if (!set) {
    for (const { what, form } of change.openings)
      files.push(
        ...(await drawingFiles(`holes/${slug(what)}`, plateDrawing({ name: `hole for the ${what}`, form }), { unit })),
      );
  }
  for (const plate of change.plates)
    files.push(...(await drawingFiles(`boards/${slug(plate.name)}`, plateDrawing(plate), { unit })));
  for (const { face, drawing } of bentPanels(change))
    files.push(...(await drawingFiles(`panels/${face}`, drawing, { unit })));
  return files;
}

/** Files of all that is printed: each part, and one archive of all parts. */
async function printedFiles(
  work: ChangeWork,
  tubes: readonly TubePrinting[],
  set: SetPrinting | undefined,
): Promise<BuildFile[]> {
  const parts = [
    ...(set ? [set.flange, ...(set.collar ? [set.collar] : []), ...set.tubes.flatMap((tube) => tube.parts)] : []),
    ...tubes.flatMap((tube) => tube.parts),
  ];
  if (parts.length === 0) return [];
  const files: BuildFile[] = parts.map(({ name, mesh }) => ({ path: `print/${slug(name)}.stl`, contents: stl(mesh) }));
  files.push({ path: 'print/all-parts.3mf', contents: await threeMf(parts) });
  const drawings: (readonly [string, Drawing])[] = [
    ...(set ? [['flange', set.head] as const, ...set.tubes.map(({ name, section: own }) => [name, own] as const)] : []),
    ...tubes.map(({ name, section: own }) => [name, own] as const),
  ];
  for (const [name, drawing] of drawings) files.push(...(await drawingFiles(`drawings/${slug(name)}`, drawing, work)));
  return files;
}

/** What to buy, from the numbers of what is made. */
function shopping(
  work: ChangeWork,
  tubes: readonly TubePrinting[],
  set: SetPrinting | undefined,
  says: Says,
): string[] {
  const plastic = [...tubes.map(({ mass }) => mass), ...(set ? [set.mass] : [])].reduce((sum, mass) => sum + mass, 0);
  const { change } = work;
  const cords = set && set.tubes.length * set.vent.cord.length;
  return [
    ...change.parts,
    ...(work.highPass?.buy === undefined ? [] : [work.highPass.buy]),
    ...(plastic > 0 ? [`about ${Math.ceil(plastic * 100) * 10} g of plastic for the printer, and glue for it`] : []),
    ...(set && cords !== undefined
      ? [
          `a round cord of soft rubber or foam, ${says(set.vent.cord.thickness)} thick, ${says(Math.ceil(cords * 100) / 100)} in all`,
          'a little silicone grease for the cords, and glue that holds plastic on the panel, such as epoxy',
        ]
      : []),
    ...(tubes.length > 0 ? ['glue that holds plastic on the panel and fills a gap, such as epoxy'] : []),
    ...(change.plates.length > 0 ? ['wood glue and screws for the boards'] : []),
    'a soft gasket for each driver that you take out',
    MEASURING,
  ];
}

function cover(work: ChangeWork, items: readonly string[], says: Says): string {
  const [head = [], ...rows] = work.change.compared;
  return `<div class="cover"><h1>${escaped(work.title)}</h1>
${paragraph(`${work.name}: everything to make of it.`)}
${paragraph(work.summary)}
${table(head, rows)}
${list((work.change.set?.tubes ?? []).map(({ mark, length, purpose }) => `Tube ${mark}, ${says(length)} long: ${purpose}`))}
</div>
${section(
  'Buy',
  `${list(items)}
${driverTable(work)}`,
  'on',
)}`;
}

/** Everything that a change of a box that stands is made from; `notes` says what cannot be made, and why. */
export async function filesToChangeFrom(
  work: ChangeWork,
  step: (what: string) => void,
): Promise<{ readonly files: readonly BuildFile[]; readonly notes: readonly string[] }> {
  const { change, tools } = work;
  const notes = [...change.notes];
  const says = saysOf(work);
  const kept = <Made>(made: Made | string): Made[] => {
    if (typeof made !== 'string') return [made];
    notes.push(made);
    return [];
  };
  const tubes = change.tubes.flatMap((tube) => {
    step('a tube as a solid');
    return kept(madeOf<TubePrinting>('The tube', () => tubePrinting(tube, tools, change.panelThickness), says));
  });
  const { set: asked } = change;
  if (asked) step('the set of tubes as solids');
  const [set] = asked
    ? kept(
        madeOf<SetPrinting>(
          'The set of tubes',
          () => setPrinting(asked, tools, change.panelThickness, work.unit),
          says,
        ),
      )
    : [];
  step('the files for the printer and the saw');
  const beside = [...(await printedFiles(work, tubes, set)), ...(await cutFiles(work, set))];
  const body = [
    cover(work, shopping(work, tubes, set, says), says),
    ...(notes.length > 0 ? [section('What these pages leave out', list(notes))] : []),
    measuringFirst(work),
    holesSection(work, set?.face, says),
    changePrinting(work, tubes, set, says),
    doingSection(work),
    ...(change.rewired ? [wiringSection(work, REWIRING)] : []),
    measuringAgain(work, says),
    playingSection(work),
    filesSection(beside.map(({ path }) => path)),
  ].join('\n');
  return {
    files: [{ path: 'build.html', contents: documentOf(`${work.title}: ${work.name}`, body) }, ...beside],
    notes,
  };
}
