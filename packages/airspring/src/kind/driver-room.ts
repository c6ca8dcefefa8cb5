import { compileLongestVent, type Layout } from '@airspring/core/space';

/** Far thinner than anything that is built: where it finds no place, the drivers have none. */
const THREAD = { outerDiameter: 1e-6, flangeDiameter: 1e-6, clearance: 0, bendRadius: 1e-6 };

/** Compiles whether inner edges leave room for the drivers alone. */
export function compileDriverRoom(layout: Omit<Layout, 'vent'>) {
  const longest = compileLongestVent({
    ...layout,
    edgeMargin: layout.edgeMargin,
    vent: { count: 1, faces: [5], bend: false, walls: 0 },
  });
  const out = new Float64Array(2);
  return (width: number, height: number, depth: number): boolean => {
    longest(width, height, depth, THREAD, out);
    return (out[0] as number) > 0;
  };
}
