import { type Air, standardAir } from '@airspring/core/air';
import { type EndCorrection, finiteFlange, flanged, type Opening, rectangularPiston } from '@airspring/core/duct';
import { refuse, type Warning } from '@airspring/core/fault';
import {
  type Area,
  type Frequency,
  type Length,
  type LengthInput,
  notNegative,
  readFields,
  si,
  type VolumeInput,
} from '@airspring/core/quantity';
import { tuning } from '@airspring/core/vent';
import { faultOf, told } from '../words/told.js';
import { airwayOf } from './airway.js';
import { type Section, sectionArea } from './cross-section.js';
import type { Flare } from './flare.js';
import { flareEnd } from './flare-end.js';
import type { VentSolid } from './vent-solid.js';

export interface PrintedTuningInput {
  readonly vent: VentSolid;
  /** Air volume of the box with the vent in place. */
  readonly netVolume: VolumeInput;
  /** Length of a hole of the same section in front of it, as of a tube that is glued behind its panel; default none. */
  readonly ahead?: LengthInput | undefined;
  /** End correction of the outer end without its flare; default core's, for an end flush with the panel. */
  readonly outerEnd?: EndCorrection | undefined;
  /** End correction of the inner end without its flare; default core's. */
  readonly innerEnd?: EndCorrection | undefined;
}

/** To which frequency a vent tunes a box as it is drawn, and as its solid is. */
export interface PrintedTuning {
  readonly drawn: Frequency;
  readonly printed: Frequency;
  /** Of the printed tuning from the drawn one, over the drawn one. */
  readonly difference: number;
  /** Narrowest clear area of the solid. */
  readonly narrowest: Area;
  /** Length of a straight duct of the drawn section with the air of the solid, ends included. */
  readonly effectiveLength: Length;
  readonly warnings: readonly Warning[];
}

/**
 * The tuning of a printed vent beside that of its drawing. Clear areas are measured on the solid; the air at its ends is that of
 * the drawing, for which core's end corrections are used, or {@link flareEnd} for flares that core does not know.
 *
 * $$ f_{printed} = f_{drawn}\sqrt{\frac{\ell}{\ell + S\,(I_{printed} - I_{drawn})}},\qquad I = \sum \frac{h}{S_i} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $\ell$ | `effectiveLength` | m | length of the drawing with its ends, at its tuning |
 * | $S$ | `vent` | m² | area of the drawing in its straight part |
 * | $S_i, h$ | `vent` | m², m | areas of slices, and their distance, see `airwayOf` |
 *
 * @validity as core's `tuning`. Slices in a flare are too light by themselves, but the same in solid and drawing.
 * @neglects what the plastic does after printing: shrinkage, roughness, bores that turn out too small
 * @throws InputError as core's `tuning`, and `inconsistent` for a solid that is closed or is not that of its drawing
 * @source rayleigh1896 secs. 303-307
 * @example printedTuning({ vent, netVolume: '40 L' }).difference // 1e-6: the printed part has the tuning that was asked for
 */
export function printedTuning(input: PrintedTuningInput, air: Air = standardAir): PrintedTuning {
  const { vent, netVolume } = input;
  const { section, length, wall, outerFlare, innerFlare } = vent.drawing;
  const ahead = input.ahead === undefined ? 0 : readFields('', { ahead: input.ahead }, aheadShape).ahead;
  const whole = length + ahead;
  const round = section.form === 'round';
  const outer = input.outerEnd ?? (round ? flanged : rectangularPiston);
  const inner = input.innerEnd ?? (round ? finiteFlange : freeSlot);
  const ends = { outerEnd: flaredEnd(section, outerFlare, outer), innerEnd: flaredEnd(section, innerFlare, inner) };
  const drawn = tuning(
    {
      vent: round
        ? { diameter: metres(section.diameter), length: metres(whole), wall: metres(wall), ...ends }
        : {
            width: metres(section.width),
            height: metres(section.height),
            length: metres(whole),
            wall: metres(wall),
            ...ends,
          },
      netVolume,
    },
    air,
  );
  if (!drawn.ok) throw new Error(drawn.because[0]!.text);
  const { areas, drawn: asDrawn } = airwayOf(vent);
  const area = round ? (Math.PI * section.diameter ** 2) / 4 : section.width * section.height;
  const step = length / areas.length;
  const closed = areas.findIndex((own) => !(own > 0));
  if (closed >= 0)
    refuse([
      faultOf({
        code: 'inconsistent',
        path: 'vent.mesh',
        got: told`no air at ${(closed + 0.5) * step} along its centre line`,
        expected: told`a duct of ${length}, as in the drawing`,
        remedy: 'Give a solid with the drawing that it was made of.',
      }),
    ]);
  const longer = area * step * areas.reduce((sum, own, i) => sum + 1 / own - 1 / asDrawn[i]!, 0);
  const effectiveLength = drawn.effectiveLength + longer;
  const printed = drawn.fb * Math.sqrt(drawn.effectiveLength / effectiveLength);
  return {
    drawn: drawn.fb,
    printed: si('frequency', printed),
    difference: printed / drawn.fb - 1,
    narrowest: si('area', Math.min(...areas)),
    effectiveLength: metres(effectiveLength),
    warnings: drawn.warnings,
  };
}

const aheadShape = { ahead: notNegative('length') };

/** The end of a slot in free air, as core estimates it. */
const freeSlot: EndCorrection = Object.assign(
  (...of: Parameters<EndCorrection>) => (0.6133 / (8 / (3 * Math.PI))) * rectangularPiston(...of),
  { sources: rectangularPiston.sources, estimate: 'the free end of a slot is scaled like that of a round tube' },
);

function flaredEnd(section: Section, flare: Flare | undefined, end: EndCorrection): EndCorrection {
  if (flare === undefined) return end;
  return section.form === 'round'
    ? (flare.endCorrection?.(end) ?? flareEnd(flare, end))
    : Object.assign((_: Opening, k: number) => flaredSlot(section, flare, end, k), {
        sources: end.sources,
        estimate: 'the air in the flare of a slot is divided by planes, which makes it up to a fifth too light',
      });
}

/** Steps in which the air in the flare of a slot is divided. */
const STEPS = 200;

/** End correction of a slot whose flare is part of its length, by plane slices and the end of its mouth. */
function flaredSlot(section: Section & { form: 'rectangle' }, flare: Flare, end: EndCorrection, k: number): number {
  let sum = 0;
  for (let i = 0; i < STEPS; i++) {
    const [from, to] = [flare.curve(i / STEPS)[0], flare.curve((i + 1) / STEPS)[0]];
    sum += (to - from) / sectionArea(section, flare.curve((i + 0.5) / STEPS)[1]);
  }
  const [w, h] = [section.width + 2 * flare.widening, section.height + 2 * flare.widening];
  const mouth = { radius: Math.sqrt((w * h) / Math.PI), aspect: Math.max(w / h, h / w) };
  return sectionArea(section) * (sum + end(mouth, k) / (w * h)) - flare.depth;
}

const metres = (value: number) => si('length', value);
