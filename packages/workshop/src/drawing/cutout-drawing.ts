import type { Length } from '@airspring/core/quantity';
import { boltsOf, type Cutout, type Form } from '../panel/cutout.js';
import { told, type Words } from '../words/told.js';
import { type Callout, line, type Purpose, roundedRectangle, type Shape } from './drawing.js';

const formShape = (purpose: Purpose, at: readonly [number, number], form: Form): Shape =>
  'diameter' in form
    ? { purpose, form: 'circle', centre: at, radius: form.diameter / 2 }
    : roundedRectangle(purpose, at, form.width, form.height, form.cornerRadius);

const wider = (form: Form, by: number): Form =>
  'diameter' in form
    ? ({ diameter: form.diameter + 2 * by } as Form)
    : ({ width: form.width + 2 * by, height: form.height + 2 * by, cornerRadius: form.cornerRadius + by } as Form);

/** What a cutout is in a drawing. */
export function cutoutShapes({ across, up, opening, recess, bolts, roundOver }: Cutout): Shape[] {
  const at = [across, up] as const;
  const shapes: Shape[] = [];
  if (recess) shapes.push({ ...formShape('pocket', at, recess.form), filled: 'tint' });
  // The recess is a ring: nothing is left where the opening is.
  if (opening) shapes.push({ ...formShape('cut', at, opening), ...(recess && { filled: 'solid' }) });
  if (opening && roundOver) shapes.push(formShape('inside', at, wider(opening, roundOver)));
  if (bolts) {
    shapes.push({ purpose: 'centre', form: 'circle', centre: at, radius: bolts.diameter / 2 });
    for (const [x, y] of boltsOf(bolts))
      shapes.push({ purpose: 'drill', form: 'circle', centre: [across + x, up + y], radius: bolts.hole / 2 });
  }
  return shapes;
}

/** Diameter of what lies around a cutout, where its edge is shown: in a recess it is the edge of that. */
const shownCover = ({ cover, recess }: Cutout): Length | undefined => (recess ? undefined : cover);

/** What is drawn of a cutout without being cut: two short lines across its middle, and the edge of what lies around it. */
export function cutoutNotes(cutout: Cutout): Shape[] {
  const { across, up, opening, recess } = cutout;
  const cover = shownCover(cutout);
  const form = opening ?? recess?.form;
  const half =
    form === undefined
      ? 0.01
      : Math.min(0.012, ('diameter' in form ? form.diameter : Math.min(form.width, form.height)) / 4);
  return [
    line('centre', [across - half, up], [across + half, up]),
    line('centre', [across, up - half], [across, up + half]),
    ...(cover === undefined ? [] : [formShape('note', [across, up], { diameter: cover })]),
  ];
}

const formWords = (form: Form): Words =>
  'diameter' in form
    ? told`⌀ ${form.diameter}`
    : told`${form.width} × ${form.height}${form.cornerRadius > 0 ? told`, corners R ${form.cornerRadius}` : ''}`;

/** What is written beside a cutout: its sizes, and how deep what does not go through is cut. */
export function cutoutCallouts({
  cutouts,
  thickness,
}: {
  readonly cutouts: readonly Cutout[];
  readonly thickness: number;
}): Callout[] {
  return cutouts.flatMap((cutout) => {
    const { part, across, up, opening, recess, bolts, roundOver } = cutout;
    const cover = shownCover(cutout);
    const reach = (form: Form) => ('diameter' in form ? form.diameter / 2 : form.width / 2);
    const made: { text: Words; reach: number }[] = [];
    if (opening) made.push({ text: told`${part}: ${formWords(opening)} through`, reach: reach(opening) });
    if (recess)
      made.push({
        text: told`recess ${formWords(recess.form)}, ${recess.depth} deep of ${thickness}`,
        reach: reach(recess.form),
      });
    if (bolts)
      made.push({
        text: told`${String(bolts.count)} × ⌀ ${bolts.hole} on ⌀ ${bolts.diameter}`,
        reach: bolts.diameter / 2,
      });
    if (roundOver && opening)
      made.push({ text: told`inner edge rounded, R ${roundOver}`, reach: reach(opening) + roundOver });
    if (cover !== undefined) {
      const what = part === 'driver' || part === 'radiator' ? 'frame' : 'flange';
      made.push({ text: told`its ${what}: ⌀ ${cover}, not cut`, reach: cover / 2 });
    }
    return made.map(({ text, reach: radius }, i) => {
      // Lines leave the circles at different heights, so that each is seen to end on its own.
      const angle = ((made.length - 1) / 2 - i) * 0.35;
      return { at: [across + radius * Math.cos(angle), up + radius * Math.sin(angle)], text };
    });
  });
}
