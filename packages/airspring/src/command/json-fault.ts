import { visibleStart } from '@airspring/core/fault';

/** Where a text stops being JSON, or repeats a name in one record, where the last value would silently win. */
export interface JsonFault {
  readonly code: 'not-json' | 'repeated-name';
  /** Counted from 1, in characters. */
  readonly line: number;
  readonly column: number;
  /** What is wrong there, without a full stop. */
  readonly says: string;
}

const blank = /[ \t\r\n]*/y;
const plain = /(?:-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null)/y;
const escaped = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;

/** The end of the quoted text that begins at a place, or -1. This is a loop because a pattern overflows on long texts. */
function endOfString(text: string, from: number): number {
  if (text[from] !== '"') return -1;
  for (let at = from + 1; at < text.length; ) {
    const code = text.charCodeAt(at);
    if (code === 0x22) return at + 1;
    if (code < 0x20) return -1;
    if (code === 0x5c) {
      escaped.lastIndex = at;
      if (!escaped.test(text)) return -1;
      at = escaped.lastIndex;
    } else at += 1;
  }
  return -1;
}

/** Line and column of a place, both counted from 1. */
function placeOf(text: string, at: number): Pick<JsonFault, 'line' | 'column'> {
  let line = 1;
  let start = 0;
  for (const { index, 0: end } of text.slice(0, at).matchAll(/\r\n|\n|\r/g)) {
    line += 1;
    start = index + end.length;
  }
  let column = 1;
  for (const _ of text.slice(start, at)) column += 1;
  return { line, column };
}

/** What may come next. */
type Next = 'value' | 'value or ]' | 'name' | 'name or }' | ':' | 'comma or close' | 'end';

/**
 * Finds the first place at which a text is not JSON; JavaScript engines word this differently, and some leave the place out.
 * In valid JSON it finds the first name that is repeated in one record. `undefined` when there is neither.
 *
 * @example jsonFault('{"a": 1,}')?.says // 'this is not JSON; expected a name in double quotes'
 */
export function jsonFault(text: string): JsonFault | undefined {
  const open: ('}' | ']')[] = [];
  /** The names so far in each open record, and where each of them is. */
  const names: Map<string, number>[] = [];
  let repeated: { name: string; first: number; second: number } | undefined;
  let at = 0;
  let next = 'value' as Next;
  const take = (pattern: RegExp): boolean => {
    pattern.lastIndex = at;
    const found = pattern.exec(text) !== null;
    if (found) at = pattern.lastIndex;
    return found;
  };
  const takeString = (): boolean => {
    const end = endOfString(text, at);
    if (end > 0) at = end;
    return end > 0;
  };
  const takeSign = (sign: string | undefined): boolean => {
    const found = sign !== undefined && text[at] === sign;
    if (found) at += 1;
    return found;
  };
  const after = (): Next => (open.length === 0 ? 'end' : 'comma or close');
  const close = (): boolean => {
    if (!takeSign(open.at(-1))) return false;
    if (open.pop() === '}') names.pop();
    next = after();
    return true;
  };
  const value = (): boolean => {
    const sign = text[at];
    if (sign === '{' || sign === '[') {
      at += 1;
      open.push(sign === '{' ? '}' : ']');
      if (sign === '{') names.push(new Map());
      next = sign === '{' ? 'name or }' : 'value or ]';
      return true;
    }
    if (!takeString() && !take(plain)) return false;
    next = after();
    return true;
  };
  const name = (): boolean => {
    const from = at;
    if (!takeString()) return false;
    next = ':';
    const word = JSON.parse(text.slice(from, at)) as string;
    const record = names.at(-1) as Map<string, number>;
    const first = record.get(word);
    if (first === undefined) record.set(word, from);
    else repeated ??= { name: word, first, second: from };
    return true;
  };
  const steps: Record<Exclude<Next, 'end'>, readonly [step: () => boolean, expected: () => string]> = {
    value: [value, () => 'a value'],
    'value or ]': [() => close() || value(), () => 'a value or "]"'],
    name: [name, () => 'a name in double quotes'],
    'name or }': [() => close() || name(), () => 'a name in double quotes or "}"'],
    ':': [
      () => {
        next = 'value';
        return takeSign(':');
      },
      () => '":" after the name',
    ],
    'comma or close': [
      () => {
        if (close()) return true;
        next = open.at(-1) === '}' ? 'name' : 'value';
        return takeSign(',');
      },
      () => `"," or "${open.at(-1)}"`,
    ],
  };
  const fault = (expected: string): JsonFault => {
    return { code: 'not-json', ...placeOf(text, at), says: `this is not JSON; expected ${expected}` };
  };
  const repetition = (): JsonFault | undefined => {
    if (repeated === undefined) return undefined;
    const says = `"${visibleStart(repeated.name, 60)}" is repeated here; it is already in line ${placeOf(text, repeated.first).line}`;
    return { code: 'repeated-name', ...placeOf(text, repeated.second), says };
  };
  for (;;) {
    take(blank);
    if (next === 'end') return at === text.length ? repetition() : fault('nothing more');
    const [step, expected] = steps[next];
    const words = expected();
    if (!step()) return fault(words);
  }
}
