import { type Drawing, plateDrawing, toSvg } from '../drawing/index.js';
import { markingText, turningText } from './elbow-mark.js';
import { impedanceFigure } from './impedance-figure.js';
import { caution, figure, list, paragraph, section, steps, table } from './markup.js';
import { howToMeasure, spotsTable } from './measuring.js';
import type { Says } from './says.js';
import { bentPanels } from './standing-panel.js';
import type { ChangeWork } from './work.js';

/** A drawing on a page, to a scale that stands at it. */
export const drawn = (
  { unit }: Pick<ChangeWork, 'unit'>,
  drawing: Drawing,
  words: string,
  height: `${number} mm` = '110 mm',
): string => figure(toSvg(drawing, { width: '178 mm', height, unit }), words);

/** The box as it stands, to be measured before anything is changed. */
export function measuringFirst({ change, cautions }: ChangeWork): string {
  const { before, now, byEye, byEyeCautions } = change;
  return section(
    'Measure it first',
    [
      ...now.map(paragraph),
      paragraph(before.text),
      figure(
        impedanceFigure({ impedance: before }, 'The impedance that the box should have as it stands'),
        'The impedance that the box should have as it stands. Draw what you measure on it.',
      ),
      spotsTable(before, before.frequencies.at(-1) ?? 0, 'computed'),
      howToMeasure(
        cautions,
        'Compare the frequencies with the table. If the dip between two peaks is more than 5 % away, write it into the brief as standing.measured.tuning, and make these pages again before you cut or print.',
      ),
      ...(byEye.length > 0
        ? [
            '<h3>The tuning by eye, without a meter</h3>',
            ...byEyeCautions.map((text) => caution(text)),
            steps(byEye.map((says) => ({ says }))),
          ]
        : []),
    ].join('\n'),
  );
}

/** Holes in the panels, and flat parts to cut. */
export function holesSection(
  { change, cautions, tools, unit }: ChangeWork,
  face: Drawing | undefined,
  says: Says,
): string {
  const { openings, plates } = change;
  if (openings.length + plates.length === 0 && face === undefined) return '';
  const sizeOf = (form: (typeof openings)[number]['form']) =>
    'diameter' in form ? `⌀ ${says(form.diameter)}` : `${says(form.width)} × ${says(form.height)}`;
  const holes = openings.map(({ what, count, form, how }) => [`${count}\u00a0×`, what, sizeOf(form), how]);
  const cut = plates.map(({ name, count, form, hole, thickness, use }) => [
    `${count}\u00a0×`,
    name,
    `${sizeOf(form)}${hole === undefined ? '' : `, hole ⌀ ${says(hole)}`}`,
    says(thickness),
    use,
  ]);
  return section(
    openings.length > 0 ? 'Holes and boards' : plates.length > 0 ? 'Boards' : 'Where the flange lies',
    [
      ...(openings.length + plates.length > 0 ? [caution(cautions.dust)] : []),
      ...(openings.length > 0 ? [table(['', 'hole', 'size', 'how'], holes)] : []),
      ...(plates.length > 0
        ? [
            table(['', 'board', 'size', 'thick', 'what for'], cut),
            paragraph(
              `Cut them from ${tools.board ?? 'board as thick as the panels'}. The files hold each of them as SVG and DXF.`,
            ),
          ]
        : []),
      paragraph(
        'Drawings stand at the scale that is told. To measure on one, print it without fitting it to the page; only one at 1 : 1 is a template.',
      ),
      ...(face ? [drawn({ unit }, face, 'The hole, and the edge of the flange that covers it.', '160 mm')] : []),
      ...openings
        .filter(() => face === undefined)
        .map(({ what, form }) =>
          drawn({ unit }, plateDrawing({ name: `hole for the ${what}`, form }), `The hole for the ${what}.`, '160 mm'),
        ),
      ...plates.map((plate) => drawn({ unit }, plateDrawing(plate), `${plate.use}.`, '90 mm')),
    ].join('\n'),
  );
}

/** Which way the arms of bent tubes point, on the panels that they begin in. */
function bendsTold({ change, unit }: Pick<ChangeWork, 'change' | 'unit'>): string[] {
  const panels = bentPanels(change);
  if (panels.length === 0) return [];
  const tubes = change.tubes.map(({ stands, ...tube }) => ({ ...tube, behind: stands !== 'in the hole' }));
  const further = tubes.some(({ bend, ofBox }) => bend && ofBox.count > 1);
  const beside = `${panels.length > 1 ? 'Drawings show the panels' : 'The drawing shows the panel'} from outside, with the holes of the changed box.${further ? ' A further hole is not on it, since you choose its place.' : ''}`;
  return [
    paragraph(
      `${tubes.some(({ bend, behind }) => bend && !behind) ? `${markingText(tubes.length > 1)} ` : ''}${turningText(tubes)}${beside}`,
    ),
    ...panels.map(({ face, drawing }) => drawn({ unit }, drawing, `The ${face} panel.`)),
  ];
}

/** The work in order, to tick off. */
export const doingSection = ({ steps: tasks = [], assumed, building, change, unit }: ChangeWork): string =>
  section(
    'What to do, in order',
    [
      ...building.map(paragraph),
      ...bendsTold({ change, unit }),
      steps(tasks),
      ...(assumed.length > 0 ? ['<h3>Assumed, because the brief does not say</h3>', list(assumed)] : []),
    ].join('\n'),
  );

/** The impedance of the changed box; of a set that of each tube. */
export function measuringAgain(work: ChangeWork, says: Says): string {
  const { impedance, change } = work;
  const last = impedance.frequencies.at(-1) ?? 0;
  const tubes = change.set?.tubes ?? [];
  return section(
    'Measure again',
    [
      paragraph(impedance.text),
      figure(
        impedanceFigure(work, 'The impedance that the changed box should have'),
        `The impedance that the changed box should have${tubes.length > 0 ? ` with the tube ${tubes[0]!.mark}, ${says(tubes[0]!.length)} long` : ''}. Draw what you measure on it.`,
      ),
      ...(tubes.length > 0
        ? tubes.map(
            ({ mark, length, impedance: own }) =>
              `<h3>With the tube ${mark}, ${says(length)} long</h3>${spotsTable(own, last)}`,
          )
        : [spotsTable(impedance, last)]),
      paragraph(
        'Measure as before the change. A dip that is too high means a tube that is too short, or less air than assumed. One that is too low means the opposite. Peaks that are lower than these, at the right frequencies, tell of a leak: look at the new joints first.',
      ),
    ].join('\n'),
  );
}
