import { boardOf, type Design, type DesignVent } from 'airspring';
import type { BriefFacts } from '../brief-facts.js';
import { html, type Markup, table } from '../html.js';
import { list, say } from '../say.js';
import { filesToMake } from './build-files.js';
import { cautionsAbout, otherCautions } from './cautions.js';

/** What panels, glue and a saw take, m. */
const TIGHT = 0.003;

/** How the panels meet. */
function jointWords({ box: { joint, panelThickness } }: Design, mm: (value: number) => string): string {
  if (joint?.name === 'mitre')
    return 'with mitres: all edges are cut at 45°, and sizes are those of the outer surfaces.';
  const joints = joint ? `rabbets ${mm(panelThickness - joint.setback)} deep` : 'butt joints';
  return `with ${joints}: front and back cover the whole face, top and bottom run the full width, and the sides fit between them.`;
}

/** Panels, holes and the vent, with the cautions where saw, printer and hands come in. */
export function building(design: Design, designs: readonly Design[], facts: BriefFacts): Markup {
  const mm = (value: number) => say('length', value, facts.length, 4);
  const others = designs.filter((other) => other !== design);
  return html`
<section aria-labelledby="build"><h2 id="build">What to cut and print</h2>
<p>Panels of ${mm(design.box.panelThickness)} ${jointWords(design, mm)} Allow for the width of your saw cut and for the true thickness of your panels.</p>
${cautionsAbout(design, 'Dust')}
${panels(design, facts)}
${holes(design, facts)}
${design.vent && ventTable(design.vent, design.name, facts)}
${design.vent && tight(design.vent, facts)}
${cautionsAbout(design, 'Fumes')}
${cautionsAbout(design, 'Weight')}
${otherCautions(design, 'Hearing', 'Driver', 'Mains', 'Dust', 'Fumes', 'Weight')}
${filesToMake(
  'Everything to build a box from fits in one archive: pages to print, the cut list, panels and sheets as SVG and DXF, and the parts for the printer as STL and 3MF.',
  designs.map(({ name }) => ({ only: name, words: `box ${name}` })),
)}
${
  others.length > 0 &&
  html`<details><summary>Panels, holes and vents of ${list(others.map(({ name }) => name))}</summary>${others.map((other) => html`${panels(other, facts)}${holes(other, facts)}${other.vent && ventTable(other.vent, other.name, facts)}`)}</details>`
}
</section>`;
}

/** Where almost no length is left, a thicker panel uses it up. */
const tight = ({ spare }: DesignVent, { length }: BriefFacts): Markup | false =>
  spare < TIGHT &&
  html`<p>The vent has only ${say('length', spare, length, 2)} of length to spare. Measure your panels before you print, enter their thickness in the brief, and design again.</p>`;

function panels({ name, box }: Design, { length }: BriefFacts): Markup {
  const mm = (value: number) => say('length', value, length, 4);
  const rows = box.panels.map((panel) => [panel.name, panel.count, mm(panel.length), mm(panel.width)]);
  return table(
    `Cut list of box ${name}, panels ${mm(box.panelThickness)} thick`,
    ['panel', 'pieces', 'length', 'width'],
    rows,
  );
}

function holes({ name, box }: Design, { length }: BriefFacts): Markup {
  const mm = (value: number) => say('length', value, length, 4);
  const rows = box.holes.map((hole) => [
    hole.what,
    boardOf(hole),
    hole.form === 'circle' ? mm(hole.diameter) : hole.sides.map(mm).join(' × '),
    `${mm(hole.across)} from ${hole.from[0]}`,
    `${mm(hole.up)} from ${hole.from[1]}`,
  ]);
  return table(
    `Holes of box ${name}, to their centres on the outside, from the outer edges of the box`,
    ['for', 'face', box.holes.some(({ form }) => form === 'rectangle') ? 'size' : 'diameter', 'across', 'up or back'],
    rows,
  );
}

/** Pieces of a vent, each with what it is. */
function piecesOf({ pieces, bend }: DesignVent): [number, string][] {
  const [start, end] = bend ? [bend.firstLeg, bend.firstLeg + bend.arc] : [Number.POSITIVE_INFINITY, 0];
  let from = 0;
  return pieces.map((piece) => {
    const middle = from + piece / 2;
    from += piece;
    return [piece, middle > start && middle < end ? 'bent' : 'straight'];
  });
}

function ventTable(vent: DesignVent, name: string, { length }: BriefFacts): Markup {
  const mm = (value: number) => say('length', value, length, 4);
  const { bend } = vent;
  const rows: [string, string][] = [
    ['inner diameter', mm(vent.diameter)],
    ['outer diameter', mm(vent.outerDiameter)],
    ['flange on the outside', mm(vent.flangeDiameter)],
    ['length along the centre line, panel included', mm(vent.length)],
    ...(bend
      ? ([
          ['first straight part, panel included', mm(bend.firstLeg)],
          [`bend to the ${bend.towards}, centre-line radius`, mm(bend.radius)],
          ['second straight part', mm(bend.secondLeg)],
        ] as [string, string][])
      : []),
    [
      'pieces to print, in order from the outside',
      piecesOf(vent)
        .map(([piece, what]) => `${mm(piece)} ${what}`)
        .join(', '),
    ],
    ['clear space to keep in front of the inner end', mm(vent.clearance)],
    ['length that would still fit', say('length', vent.spare, length, 2)],
    ['tuning', say('frequency', vent.fb, 'Hz')],
  ];
  const count = vent.count === 1 ? 'The vent' : `Each of the ${vent.count} vents`;
  return table(`${count} of box ${name}`, ['part', 'size'], rows);
}
