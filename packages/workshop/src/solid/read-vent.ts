import { type Fault, refuse } from '@airspring/core/fault';
import { readFieldsInto } from '@airspring/core/quantity';
import { halfWidths, type Section } from './cross-section.js';
import { flareFaults } from './flare-faults.js';
import type { VentDrawing } from './vent-drawing.js';
import { ventSizeFaults } from './vent-size-faults.js';
import { roundVentShape, slotVentShape, type VentSolidInput } from './vent-solid-input.js';
import { usualNozzle, wholeLines } from './whole-lines.js';

/** Greatest distance of a flat from its curve, m. With it the volume of a vent is within 0.1 %. */
const usualFineness = 1e-5;
/** Usual wall of a printed vent before it is rounded up to whole lines, m (common practice). */
const usualWall = 3e-3;
/** Least usual thickness of a flange, m (common practice). */
const usualFlange = 4e-3;

/** Reads a vent. All faults are reported at once. */
export function readVent(input: VentSolidInput): VentDrawing {
  const faults: Fault[] = [];
  const slot = typeof input === 'object' && input !== null && ('width' in input || 'height' in input);
  const read = slot
    ? readFieldsInto(faults, '', input, slotVentShape)
    : readFieldsInto(faults, '', input, roundVentShape);
  refuse(faults);
  const fields = read!;
  const { nozzle = usualNozzle, fineness = usualFineness } = fields;
  const wall = fields.wall ?? wholeLines(usualWall, nozzle);
  const section: Section =
    'diameter' in fields
      ? { form: 'round', diameter: fields.diameter }
      : { form: 'rectangle', width: fields.width, height: fields.height };
  const { flange } = fields;
  const drawing: VentDrawing = {
    section,
    length: fields.length,
    wall,
    nozzle,
    ...(fields.outerFlare !== undefined && { outerFlare: fields.outerFlare }),
    ...(fields.innerFlare !== undefined && { innerFlare: fields.innerFlare }),
    ...(flange !== undefined && {
      flange: {
        reach: flange.reach ?? (flange.diameter === undefined ? 0 : flange.diameter / 2 - halfWidths(section)[0]),
        thickness: flange.thickness ?? Math.max(usualFlange, wall),
        ...(flange.screws !== undefined && { screws: flange.screws }),
      },
    }),
    bends: (fields.bends ?? []).map((bend) => ({ ...bend, roll: bend.roll ?? 0 })),
    fineness,
  };
  for (const end of ['outerFlare', 'innerFlare'] as const) {
    const flare = drawing[end];
    if (flare !== undefined) faults.push(...flareFaults(flare, end));
  }
  refuse(faults);
  faults.push(...ventSizeFaults(drawing, flange?.diameter !== undefined && flange.reach !== undefined));
  refuse(faults);
  return drawing;
}
