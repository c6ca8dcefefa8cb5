import type { EndCorrection, Opening } from '../duct/index.js';
import type { Warning } from '../fault/index.js';
import type { VentGeometry } from './vent-geometry.js';

/** Warns of an end that is too wide for its formula at k or only an estimate, and of a bend that is too tight. */
export function ventWarnings(vent: VentGeometry, k: number): Warning[] {
  const { inner, outer, innerEnd, outerEnd, bendRatio } = vent;
  const warnings = [
    ...endWarnings('vent.innerEnd', innerEnd, inner, k),
    ...endWarnings('vent.outerEnd', outerEnd, outer, k),
  ];
  if (bendRatio < 3) {
    const expected =
      'a centre-line radius of at least 1.5 diameters, because a tighter bend acts shorter than its centre line';
    warnings.push({ code: 'outside-validity', path: 'vent.bend.centreLineRadius', got: bendRatio, expected });
  }
  return warnings;
}

function endWarnings(path: string, end: EndCorrection, { radius }: Opening, k: number): Warning[] {
  const warnings: Warning[] = [];
  const judge = (got: number, greatest: number, what = 'ka') => {
    if (got > greatest)
      warnings.push({ code: 'outside-validity', path, got, expected: `${what} of at most ${greatest}` });
  };
  const { flare, greatestKa = Number.POSITIVE_INFINITY, greatestK = Number.POSITIVE_INFINITY, estimate } = end;
  if (flare === undefined) judge(k * radius, greatestKa);
  else judge(k * (radius + flare.radius), 0.5);
  judge(k, greatestK, 'a wave number (in rad/m, limited by the distance to its neighbours)');
  if (estimate !== undefined)
    warnings.push({
      code: 'outside-validity',
      path,
      got: k * radius,
      expected: `a known end correction; this is an estimate, because ${estimate}`,
    });
  return warnings;
}
