import type { Design, DesignVent } from '../answer.js';
import { cautions } from './cautions.js';
import { caution, paragraph, table } from './layout.js';
import { inWords, type Sayings } from './sayings.js';

/** A caution of this design at the step where it is due; nothing where the design does not carry it. */
export const cautionOf = (design: Design, text: string): string[] =>
  design.cautions.includes(text) ? [caution(text)] : [];

/** The drivers of a design: how many, and how they are wired. */
export function driversText({ name, count, series, parallel, isobaric }: Design['drivers']): string {
  const wired = [
    ...(series > 1 ? [`${inWords(series)} in series`] : []),
    ...(parallel > 1 ? [`${inWords(parallel)} in parallel`] : []),
    ...(isobaric ? ['in isobaric pairs'] : []),
  ];
  return `${inWords(count)} "${name}"${wired.length > 0 ? ` (${wired.join(', ')})` : ''}`;
}

/** Panels to cut and holes to make in them. */
export function cutList({ box, drivers }: Design, say: Sayings): string[] {
  const panels = box.panels.map(({ name, count, length, width }) => [`${count} ×`, name, say.sizes([length, width])]);
  const holes = box.holes.map(({ what, face, diameter, across, up, from }) => [
    what,
    face,
    say.length(diameter),
    `${say.length(across)} from ${from[0]}, ${say.length(up)} from ${from[1]}`,
  ]);
  return [
    paragraph(
      `Cut from ${say.length(box.panelThickness)} board. Front and back cover the whole box; top and bottom lie between front and back; the sides fill what is left. Put the back on last.`,
    ),
    table('rlr', panels),
    paragraph('Holes, their centres measured on the outside of the panel, left and right as seen from the front:'),
    table('llrl', [['hole', 'panel', 'diameter', 'centre'], ...holes]),
    paragraph(
      `The box is ${say.sizes(box.inner)} inside; ${say.volume(box.netVolume)} of air are left beside driver, vent and bracing. Each driver is ${say.length(drivers.outerDiameter)} wide outside. Not listed: screws, seals, a hole for the cable (seal it), and the braces.`,
    ),
  ];
}

/** Way of a bent vent from the panel inwards. */
function bendText({ bend, face }: DesignVent, say: Sayings): string {
  if (bend === undefined) return 'It runs straight.';
  const then = bend.secondLeg > 0 ? `, then ${say.length(bend.secondLeg)} straight` : '';
  return `From the ${face} it runs ${say.length(bend.firstLeg)} straight, turns towards the ${bend.towards} in an elbow of 90° (radius ${say.length(bend.radius)}, ${say.length(bend.arc)} along the centre line)${then}. The bent tube does not pass its hole: join it inside, before the back goes on.`;
}

/** The vent: what to print, and where it goes. */
export function ventText(vent: DesignVent | undefined, say: Sayings): string[] {
  if (vent === undefined) return [paragraph('The box is closed: no vent, and every joint airtight.')];
  const { count, diameter, outerDiameter, flangeDiameter, length, fb, face, pieces, clearance, spare } = vent;
  const many = count > 1;
  const size = `${say.length(diameter)} inner diameter, ${say.length(outerDiameter)} outer, flange ${say.length(flangeDiameter)}`;
  const printed =
    pieces.length > 1
      ? `Print ${many ? 'each' : 'it'} in ${inWords(pieces.length)} pieces, from the flange inwards: ${pieces.map(say.bareLength).join(', ')} ${say.lengthUnit}.`
      : `Print ${many ? 'each' : 'it'} in one piece.`;
  const room = `Keep ${say.length(clearance)} of free air in front of its inner end; ${say.length(spare)} more length would still fit.`;
  return [
    paragraph(
      `${many ? `${inWords(count)} tubes, each` : 'one tube'} of ${size}; ${say.length(length)} long on the centre line, counted from the outside of the ${face} panel. ${many ? 'Together they tune' : 'It tunes'} the box to ${say.hertz(fb)}. ${bendText(vent, say)} ${printed} ${room}`.replace(
        /^./,
        (letter) => letter.toUpperCase(),
      ),
    ),
  ];
}

/** Everything that the saw and the printer need, with its cautions. */
export const buildText = (design: Design, say: Sayings): string[] => [
  ...cutList(design, say),
  ...cautionOf(design, cautions.dust),
  ...cautionOf(design, cautions.weight),
  ...ventText(design.vent, say),
  ...cautionOf(design, cautions.fumes),
];
