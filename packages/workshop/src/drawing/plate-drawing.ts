import { told, UNIT, UNITS } from '../words/told.js';
import { type Callout, capital, type Dimension, type Drawing, line, rectangle, type Shape } from './drawing.js';

/** A flat part, or a hole in a panel, m. */
export interface Plate {
  readonly name: string;
  /** A disc, or a rectangle. */
  readonly form: { readonly diameter: number } | { readonly width: number; readonly height: number };
  /** A round hole in its middle. */
  readonly hole?: number;
  /** Round lines around its middle along which nothing is cut, each with what it is for. */
  readonly marked?: readonly { readonly diameter: number; readonly what: string }[];
  readonly thickness?: number;
}

/**
 * A flat part to cut, or a hole to cut in a panel, from above with its sizes. Its middle is the origin.
 *
 * @example toSvg(plateDrawing({ name: 'guide board', form: { width: 0.14, height: 0.14 }, hole: 0.057 }))
 */
export function plateDrawing({ name, form, hole, marked = [], thickness }: Plate): Drawing {
  const round = 'diameter' in form;
  const [width, height] = round ? [form.diameter, form.diameter] : [form.width, form.height];
  const circle = (diameter: number, purpose: Shape['purpose']): Shape => ({
    purpose,
    form: 'circle',
    centre: [0, 0],
    radius: diameter / 2,
  });
  const widest = Math.max(width, height, ...marked.map(({ diameter }) => diameter));
  const arm = Math.min(widest / 2 + 0.004, 0.03);
  const size = round ? told`⌀ ${form.diameter} ${UNIT}` : told`${width} × ${height} ${UNIT}`;
  const sides: Dimension[] = round
    ? []
    : [
        { kind: 'overall', along: 'x', ends: [-width / 2, width / 2], beside: -height / 2, side: 'below', row: 0 },
        { kind: 'overall', along: 'y', ends: [-height / 2, height / 2], beside: -width / 2, side: 'left', row: 0 },
      ];
  const circles = [
    ...(round ? [{ diameter: form.diameter, what: 'cut' }] : []),
    ...(hole === undefined ? [] : [{ diameter: hole, what: 'hole' }]),
    ...marked,
  ];
  // Each line leaves its circle at a height of its own.
  const callouts = circles.map(({ diameter, what }, i): Callout => {
    const angle = 0.5 - 0.3 * i;
    const at = [(diameter / 2) * Math.cos(angle), (diameter / 2) * Math.sin(angle)] as const;
    return { at, text: told`${what} ⌀ ${diameter}` };
  });
  return {
    title: told`${capital(name)}: ${size}`,
    subtitle: told`${thickness === undefined ? '' : told`${thickness} ${UNIT} thick; `}seen from the face; lengths in ${UNITS}`,
    description: told`The ${name}, ${size}${hole === undefined ? '' : told`, with a hole of ${hole} ${UNIT} in its middle`}.`,
    shapes: [
      round ? circle(form.diameter, 'cut') : rectangle('cut', [-width / 2, -height / 2], width, height),
      ...(hole === undefined ? [] : [circle(hole, 'cut')]),
      ...marked.map(({ diameter }) => circle(diameter, 'note')),
      line('centre', [-arm, 0], [arm, 0]),
      line('centre', [0, -arm], [0, arm]),
    ],
    dimensions: sides,
    labels: [],
    callouts,
  };
}
