import { type Drawing, toDxf, toSvg } from '../drawing/index.js';
import type { Work } from './work.js';

/** A file of the folder to build from: its path inside it, with `/` between folders. */
export interface BuildFile {
  readonly path: string;
  readonly contents: string | Uint8Array;
}

/** A drawing as SVG, in the unit of the pages, and as DXF. */
export const drawingFiles = async (
  path: string,
  drawing: Drawing,
  { unit }: Pick<Work, 'unit'>,
): Promise<BuildFile[]> => [
  { path: `${path}.svg`, contents: toSvg(drawing, { unit }) },
  { path: `${path}.dxf`, contents: await toDxf(drawing) },
];
