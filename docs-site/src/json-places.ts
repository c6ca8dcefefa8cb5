/** Where a value stands in a text of JSON. */
export interface JsonPlace {
  readonly line: number;
  readonly from: number;
  readonly to: number;
}

const tokens = /\s*(?:([{}[\],:])|("(?:[^"\\]|\\.)*")|([^\s{}[\],:"]+))/y;

/**
 * Every path of a JSON text, written like `drivers[0].Qts`, and where its value stands (with its name). For texts that are
 * JSON already.
 */
export function jsonPlaces(text: string): ReadonlyMap<string, JsonPlace> {
  const places = new Map<string, JsonPlace>();
  let at = 0;
  const next = () => {
    tokens.lastIndex = at;
    const found = tokens.exec(text);
    if (!found) throw new SyntaxError('not JSON');
    at = tokens.lastIndex;
    const token = found[1] ?? found[2] ?? found[3] ?? '';
    return { token, from: at - token.length, to: at };
  };
  const lineAt = (from: number) => text.slice(0, from).split('\n').length;
  const value = (path: string, nameFrom?: number): void => {
    const { token, from, to } = next();
    if (token === '{' || token === '[') {
      for (let i = 0; ; i++) {
        const before = at;
        const item = next();
        if (item.token === '}' || item.token === ']') break;
        if (item.token === ',') {
          i--;
          continue;
        }
        if (token === '[') {
          at = before;
          value(`${path}[${i}]`);
        } else {
          next();
          const name = JSON.parse(item.token) as string;
          value(path === '' ? name : `${path}.${name}`, item.from);
        }
      }
    }
    const start = nameFrom ?? from;
    places.set(path, { line: lineAt(start), from: start, to: token === '{' || token === '[' ? from + 1 : to });
  };
  value('');
  return places;
}

/** The place of a path, or of the nearest thing around it that is there. */
export function placeOfPath(places: ReadonlyMap<string, JsonPlace>, path: string): JsonPlace {
  for (let around = path; around !== ''; around = around.replace(/(?:\.|^)[^.[]*$|\[\d+\]$/, '')) {
    const place = places.get(around);
    if (place) return place;
  }
  return places.get('') ?? { line: 1, from: 0, to: 0 };
}
