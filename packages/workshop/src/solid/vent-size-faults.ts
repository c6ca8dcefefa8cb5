import type { Fault } from '@airspring/core/fault';
import { NANOMETRE } from '@airspring/core/quantity';
import { faultOf, told } from '../words/told.js';
import { centreLine } from './centre-line.js';
import { halfWidths } from './cross-section.js';
import type { VentDrawing } from './vent-drawing.js';

/** Sizes of a vent that contradict each other. */
export function ventSizeFaults(drawing: VentDrawing, bothSizes: boolean): Fault[] {
  const { section, length, wall, nozzle, flange, bends, outerFlare, innerFlare, fineness } = drawing;
  const faults: Fault[] = [];
  const least = (path: string, got: number, than: number, what: string, remedy: string) => {
    if (got >= than - NANOMETRE) return;
    faults.push(faultOf({ code: 'inconsistent', path, got, expected: told`at least ${what}, ${than}`, remedy }));
  };
  least('wall', wall, nozzle, 'one line of the nozzle', 'Thicken the wall, or take a finer nozzle.');
  least('fineness', fineness, FINEST, 'a tenth of a micrometre', 'Coarsen it: no printer is so fine.');
  const [outer, inner] = [outerFlare?.depth ?? 0, innerFlare?.depth ?? 0];
  if (flange !== undefined) {
    const over = (outerFlare?.widening ?? 0) + wall;
    if (bothSizes) {
      faults.push({
        code: 'conflict',
        path: 'flange.reach',
        got: flange.reach,
        expected: 'either diameter or reach',
        remedy: 'Leave one of them out.',
      });
    } else
      least(
        'flange',
        flange.reach,
        over,
        `the widening of the flare and the wall beyond the duct`,
        'Widen the flange, or make the flare smaller.',
      );
    least('length', length, flange.thickness + inner, 'the flange and the inner flare', 'Lengthen the vent.');
  }
  const line = centreLine(length, bends);
  const halfWidth = Math.max(...halfWidths(section));
  bends.forEach(({ leg, centreLineRadius, roll }, i) => {
    const halfInPlane =
      section.form === 'round'
        ? halfWidth
        : (Math.abs(Math.cos(roll)) * section.width) / 2 + (Math.abs(Math.sin(roll)) * section.height) / 2;
    least(
      `bends[${i}].centreLineRadius`,
      centreLineRadius,
      halfInPlane + wall + NANOMETRE * 1e4,
      'half the outer width in the plane of the bend',
      'Bend it less sharply.',
    );
    if (i === 0)
      least(
        'bends[0].leg',
        leg,
        Math.max(outer, wall, flange?.thickness ?? 0),
        'the outer flare and the flange',
        'Lengthen the first leg.',
      );
  });
  const bent = line.arcs.at(-1)?.to ?? 0;
  const taken = bends.length === 0 ? outer + inner : bent + Math.max(inner, innerFlare === undefined ? 0 : wall);
  least(
    'length',
    length,
    taken,
    bends.length === 0 ? 'both flares' : 'the legs, the bends and the inner flare',
    'Lengthen the vent, or make its bends or flares smaller.',
  );
  return faults;
}

/** Least fineness, m. */
const FINEST = 1e-7;
