import { extentOf } from './extent.js';
import type { Mesh, Part } from './mesh.js';
import { MILLIMETRES } from './single-precision.js';

/** Decimals of a coordinate in mm. None has an exponent, which some readers refuse. */
const DECIMALS = 5;
/** Free bed between two parts, m. */
const GAP = 0.01;

/**
 * Several solids as one 3MF file in millimetres, side by side with their lowest points on the bed. The same solids give the same
 * bytes. The package fflate, which compresses it, is loaded at the first call.
 *
 * @validity solids without a fault of {@link meshFaults}
 * @source own derivation: the 3MF core specification, sec. 3 (model, mesh, build), in an archive by its part naming
 * @example writeFileSync('vent.3mf', await threeMf([{ name: 'vent', mesh }]))
 */
export async function threeMf(parts: readonly Part[]): Promise<Uint8Array> {
  const { strToU8, zipSync } = await import('fflate');
  // Archives hold no time zone: a time of the local clock is the same everywhere.
  const options = { level: 4, mtime: new Date(1980, 0, 1) } as const;
  return zipSync(
    {
      '[Content_Types].xml': [strToU8(contentTypes), options],
      '_rels/.rels': [strToU8(relationships), options],
      '3D/3dmodel.model': [strToU8(model(parts)), options],
    },
    options,
  );
}

const head = '<?xml version="1.0" encoding="UTF-8"?>\n';
const packages = 'http://schemas.openxmlformats.org/package/2006';
const contentTypes = `${head}<Types xmlns="${packages}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>`;
const relationships = `${head}<Relationships xmlns="${packages}/relationships"><Relationship Target="/3D/3dmodel.model" Id="model" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>`;

function model(parts: readonly Part[]): string {
  let objects = '';
  let items = '';
  let beside = 0;
  for (const [i, { name, mesh }] of parts.entries()) {
    const { least, edges } = extentOf(mesh);
    const at = [beside - least[0], -least[1], -least[2]].map((metres) => number(metres * MILLIMETRES));
    objects += `<object id="${i + 1}" name="${escaped(name)}" type="model">${meshText(mesh)}</object>\n`;
    items += `<item objectid="${i + 1}" transform="1 0 0 0 1 0 0 0 1 ${at.join(' ')}"/>`;
    beside += edges[0] + GAP;
  }
  const space = 'http://schemas.microsoft.com/3dmanufacturing/core/2015/02';
  return `${head}<model unit="millimeter" xml:lang="en" xmlns="${space}">\n<resources>\n${objects}</resources>\n<build>${items}</build>\n</model>\n`;
}

function meshText({ corners, triangles }: Mesh): string {
  const lines: string[] = ['<mesh><vertices>'];
  for (let i = 0; i < corners.length; i += 3) {
    const [x, y, z] = [corners[i]!, corners[i + 1]!, corners[i + 2]!].map((metres) => number(metres * MILLIMETRES));
    lines.push(`<vertex x="${x}" y="${y}" z="${z}"/>`);
  }
  lines.push('</vertices><triangles>');
  for (let t = 0; t < triangles.length; t += 3)
    lines.push(`<triangle v1="${triangles[t]}" v2="${triangles[t + 1]}" v3="${triangles[t + 2]}"/>`);
  lines.push('</triangles></mesh>');
  return lines.join('\n');
}

/** A decimal without an exponent and without a negative zero. */
const number = (value: number): string => {
  const text = value.toFixed(DECIMALS);
  return Number(text) === 0 ? '0' : text;
};

const escapes: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const escaped = (text: string): string => text.replace(/[&<>"]/g, (sign) => escapes[sign]!);
