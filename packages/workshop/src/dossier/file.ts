import { type Drawing, toDxf, toSvg } from '../drawing/index.js';

/** A file of the folder to build from: its path inside it, with `/` between folders. */
export interface BuildFile {
  readonly path: string;
  readonly contents: string | Uint8Array;
}

/** A drawing as SVG and as DXF. */
export const drawingFiles = async (path: string, drawing: Drawing): Promise<BuildFile[]> => [
  { path: `${path}.svg`, contents: toSvg(drawing) },
  { path: `${path}.dxf`, contents: await toDxf(drawing) },
];
