import { type Facet, inDepthOrder, sharePlane } from './depth-order.js';
import { merged } from './flat-faces.js';
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
const [dark, bright] = [70, 240];
const SHADES = 24;

/**
 * A picture of a solid as SVG: a parallel projection in which nearer faces cover those behind them, shaded by one light. It is
 * exact at any size, and the same solid gives the same text. Its greys suit light and dark pages.
 *
 * @validity solids without a fault of `meshFaults`; the text grows with the triangles that are seen, so give a solid of a
 *   fineness of about a millimetre
 * @source own derivation: parallel projection; the order of depth by a binary partition of space
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
  const at = ([right, up]: readonly number[]): Place => [
    Math.round(((right! - least[0]!) * scale + MARGIN) * STEPS),
    Math.round(((greatest[1]! - up!) * scale + MARGIN) * STEPS),
  ];
  const runs: { name: string; path: string }[] = [];
  const put = (name: string, path: string) => {
    const last = runs.at(-1);
    if (path === '') return;
    if (last?.name === name) last.path += path;
    else runs.push({ name, path });
  };
  const used = new Set<number>();
  // Faces of one plane follow each other. Their edges come after all of them, so that no seam lies over an edge.
  let lines = '';
  let last: Facet['points'] | undefined;
  for (const { points, edges, source } of inDepthOrder(merged(visibleOf(seen)))) {
    if (last === undefined || !sharePlane(last, points)) {
      put('edge', lines);
      lines = '';
    }
    last = points;
    const places = points.map(at);
    const face = faceOf(places);
    const shade = shadeOf(seen, source);
    if (face !== '') used.add(shade);
    put(`s${shade}`, face);
    lines += edgesOf(places, edges);
  }
  put('edge', lines);
  const paths = runs.map(({ name, path }) => `<path class="${name}" d="${path}"/>`);
  const style = [...used]
    .map((shade) => `.s${shade}{fill:${greyOf(shade)};stroke:${greyOf(shade)};${AS_SEEN}}`)
    .sort()
    .join('');
  const [w, h] = [width, height].map((edge) => Math.ceil(edge * scale + 2 * MARGIN) * STEPS);
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${w} ${h}" role="img" stroke-linejoin="round"><title>${escaped(title)}</title><style>${style}.edge{fill:none;stroke:${INK};stroke-width:${LINE};${AS_SEEN}}</style>
<g stroke-width="${SEAM}">
${paths.join('\n')}
</g>
</svg>
`;
}

/** Free border of a picture. */
const MARGIN = 4;
/** Whole steps of a unit: coordinates are whole numbers, which are short. */
const STEPS = 4;
/** Colour and width of the lines along edges. */
const [INK, LINE] = ['#3c3c3c', 1.1];
/** Lines are as wide as they are seen, however large the picture is shown. */
const AS_SEEN = 'vector-effect:non-scaling-stroke';
/** Width of the line of its own colour that closes the seam between two faces: programs that smooth sides leave a hair of what is behind. */
const SEAM = 1;

type Place = readonly [x: number, y: number];

/** A face as a closed path; empty where it has shrunk to a line. */
function faceOf(places: readonly Place[]): string {
  const apart = places.filter(([x, y], i) => {
    const [beforeX, beforeY] = places[(i + places.length - 1) % places.length]!;
    return x !== beforeX || y !== beforeY;
  });
  return apart.length < 3 ? '' : `${steps(apart)}z`;
}

/** The sides that are edges of the solid, as lines. */
const edgesOf = (places: readonly Place[], edges: readonly boolean[]): string =>
  places
    .map((place, i) => [place, places[(i + 1) % places.length]!] as const)
    .filter(([[x, y], [toX, toY]], i) => edges[i] && (x !== toX || y !== toY))
    .map(steps)
    .join('');

/** A path by steps from point to point. */
function steps(places: readonly Place[]): string {
  const by = places.slice(1).map(([x, y], i) => {
    const [dx, dy] = [x - places[i]![0], y - places[i]![1]];
    return dy < 0 ? `${dx}${dy}` : `${dx} ${dy}`;
  });
  return `M${places[0]![0]} ${places[0]![1]}l${by.reduce((path, step) => (step.startsWith('-') ? path + step : `${path} ${step}`))}`;
}

const greyOf = (shade: number): string => {
  const grey = Math.round(dark + ((bright - dark) * shade) / SHADES).toString(16);
  return `#${grey}${grey}${grey}`;
};

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
