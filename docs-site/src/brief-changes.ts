import { jsonPlaces } from './json-places.js';

type Keyed = Readonly<Record<string, unknown>> | undefined;

const valueAt = (brief: unknown, path: string): unknown =>
  path
    .replace(/\[(\d+)\]/g, '.$1')
    .split('.')
    .reduce<unknown>((value, key) => (value as Keyed)?.[key], brief);

/** A text of JSON with the values at some paths taken from another brief; nothing where a path is not in the text. */
export function withValues(text: string, paths: readonly string[], brief: object): string | undefined {
  const places = jsonPlaces(text);
  const edits = paths.map((path) => ({ place: places.get(path), value: valueAt(brief, path) }));
  edits.sort((a, b) => (b.place?.from ?? 0) - (a.place?.from ?? 0));
  let changed = text;
  for (const { place, value } of edits) {
    if (!place || value === undefined) return undefined;
    const name = /^"(?:[^"\\]|\\.)*"\s*:\s*/.exec(changed.slice(place.from, place.to))?.[0] ?? '';
    changed = `${changed.slice(0, place.from)}${name}${JSON.stringify(value)}${changed.slice(place.to)}`;
  }
  return changed;
}

/** Which part of the drawing a field of the brief is about. */
function drawnPart(path: string): string | undefined {
  const edge = /^space\.(width|height|depth)$/.exec(path)?.[1];
  if (edge) return edge;
  if (path === 'space.panelThickness') return 'panel';
  if (/^(vent|printer)\b/.test(path)) return 'vent';
  return /^drivers\[\d+\]\.(outerDiameter|cutoutDiameter|depth|displacedVolume)$/.test(path) ? 'driver' : undefined;
}

/** The part of the drawing that the text at a place is about; nothing while the text is no JSON. */
export function partAt(text: string, offset: number): string | undefined {
  try {
    const [path = ''] = [...jsonPlaces(text)].find(([, { from, to }]) => from <= offset && offset <= to) ?? [];
    return drawnPart(path);
  } catch {
    return undefined;
  }
}
