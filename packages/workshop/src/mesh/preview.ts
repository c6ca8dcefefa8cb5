import { decimalText } from '@airspring/core/quantity';
import { inDepthOrder } from './depth-order.js';
import { doubleAreaOf, type Mesh } from './mesh.js';
import { visibleOf } from './visible-triangles.js';

/** From where a solid is seen, and how large its picture is. */
export interface View {
  /** Angle about z from the x axis to the viewer, rad; default 0.6. */
  readonly azimuth?: number | undefined;
  /** Angle of the viewer above the bed, rad; default 0.5. Below zero the solid is seen from below. */
  readonly elevation?: number | undefined;
  /** Longest edge of the picture; default 480. */
  readonly size?: number | undefined;
  /** What the picture shows, in words, for those who do not see it. */
  readonly title: string;
}

/** Light from the upper left of the viewer: right, up, towards the viewer. */
const light = [-0.45, 0.62, 0.64] as const;
/** Greys of faces turned away from the light and towards it. They stand out from white paper and from a dark page. */
const [dark, bright] = [92, 232];
const SHADES = 24;

/**
 * A picture of a solid as SVG: a parallel projection in which nearer faces cover those behind them, shaded by one light. It is
 * exact at any size, and the same solid gives the same text. Its greys suit light and dark pages.
 *
 * @validity solids without a fault of `meshFaults`; the text grows with the triangles that are seen, so give a solid of a
 *   fineness of about a millimetre
 * @source parallel projection; the order of depth by a binary partition of space (fuchs1980)
 * @example preview(ventSolid({ ...vent, fineness: '0.5 mm' }).mesh, { title: 'The vent' })
 */
export function preview(mesh: Mesh, { azimuth = 0.6, elevation = 0.5, size = 480, title }: View): string {
  const seen = projected(mesh, azimuth, elevation);
  const [least, greatest] = [0, 1]
    .map((axis) => boundsOf(seen, axis))
    .reduce<[number[], number[]]>(
      ([low, high], [a, b]) => [
        [...low, a],
        [...high, b],
      ],
      [[], []],
    );
  const [width, height] = [greatest[0]! - least[0]!, greatest[1]! - least[1]!];
  const scale = (size - 2 * MARGIN) / Math.max(width, height);
  const x = (value: number) => decimalText((value - least[0]!) * scale + MARGIN, 4);
  const y = (value: number) => decimalText((greatest[1]! - value) * scale + MARGIN, 4);
  const runs: { shade: number; path: string }[] = [];
  for (const { points, source } of inDepthOrder(visibleOf(seen))) {
    const shade = shadeOf(seen, source);
    const path = `M${points.map(([right, up]) => `${x(right)} ${y(up)}`).join('L')}Z`;
    const last = runs.at(-1);
    if (last?.shade === shade) last.path += path;
    else runs.push({ shade, path });
  }
  const paths = runs.map(({ shade, path }) => {
    const grey = Math.round(dark + ((bright - dark) * shade) / SHADES).toString(16);
    return `<path fill="#${grey}${grey}${grey}" stroke="#${grey}${grey}${grey}" d="${path}"/>`;
  });
  const [w, h] = [width, height].map((edge) => Math.ceil(edge * scale + 2 * MARGIN));
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${w} ${h}" role="img" stroke-width="0.6" stroke-linejoin="round"><title>${escaped(title)}</title>\n${paths.join('\n')}\n</svg>\n`;
}

/** Free border of a picture. */
const MARGIN = 4;

/** The corners as the viewer sees them: to the right, up, and towards the viewer. */
function projected({ corners, triangles }: Mesh, azimuth: number, elevation: number): Mesh {
  const [cosA, sinA, cosE, sinE] = [Math.cos(azimuth), Math.sin(azimuth), Math.cos(elevation), Math.sin(elevation)];
  const seen = new Float64Array(corners.length);
  for (let i = 0; i < corners.length; i += 3) {
    const [x, y, z] = [corners[i]!, corners[i + 1]!, corners[i + 2]!];
    const near = cosA * x + sinA * y;
    seen[i] = cosA * y - sinA * x;
    seen[i + 1] = cosE * z - sinE * near;
    seen[i + 2] = cosE * near + sinE * z;
  }
  return { corners: seen, triangles };
}

function boundsOf({ corners }: Mesh, axis: number): [number, number] {
  let [low, high] = [Infinity, -Infinity];
  for (let i = axis; i < corners.length; i += 3)
    [low, high] = [Math.min(low, corners[i]!), Math.max(high, corners[i]!)];
  return [low, high];
}

/** Brightness of a triangle in whole steps. */
function shadeOf(mesh: Mesh, source: number): number {
  const normal = doubleAreaOf(mesh, source);
  const size = Math.hypot(...normal) || 1;
  const facing = (normal[0] * light[0] + normal[1] * light[1] + normal[2] * light[2]) / size;
  return Math.round(SHADES * Math.max(0, 0.5 + 0.5 * facing));
}

const escapes: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;' };
const escaped = (text: string): string => text.replace(/[&<>]/g, (sign) => escapes[sign]!);
