/** Where a text stops being JSON, and what would have stood there. */
export interface JsonFault {
  /** Counted from 1, in characters. */
  readonly line: number;
  readonly column: number;
  readonly expected: string;
}

const blank = /[ \t\r\n]*/y;
const string = /"(?:[ !#-[\]-\uffff]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/y;
const plain = /(?:-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null)/y;

/** Ends of the containers that are open, and what may come next. */
type Next = 'value' | 'value or ]' | 'name' | 'name or }' | ':' | 'comma or close' | 'end';

/**
 * Finds the first place at which a text is not JSON: engines word it differently, and some leave the place out.
 * `undefined` when it is JSON.
 *
 * @example jsonFault('{"a": 1,}') // { line: 1, column: 9, expected: 'a name in double quotes' }
 */
export function jsonFault(text: string): JsonFault | undefined {
  const open: ('}' | ']')[] = [];
  let at = 0;
  let next = 'value' as Next;
  const take = (pattern: RegExp): boolean => {
    pattern.lastIndex = at;
    const found = pattern.exec(text) !== null;
    if (found) at = pattern.lastIndex;
    return found;
  };
  const takeSign = (sign: string | undefined): boolean => {
    const found = sign !== undefined && text[at] === sign;
    if (found) at += 1;
    return found;
  };
  const after = (): Next => (open.length === 0 ? 'end' : 'comma or close');
  const close = (): boolean => {
    if (!takeSign(open.at(-1))) return false;
    open.pop();
    next = after();
    return true;
  };
  const value = (): boolean => {
    const sign = text[at];
    if (sign === '{' || sign === '[') {
      at += 1;
      open.push(sign === '{' ? '}' : ']');
      next = sign === '{' ? 'name or }' : 'value or ]';
      return true;
    }
    if (!take(string) && !take(plain)) return false;
    next = after();
    return true;
  };
  const name = (): boolean => {
    const found = take(string);
    if (found) next = ':';
    return found;
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
    const before = text.slice(0, at).split(/\r\n|\n|\r/);
    return { line: before.length, column: [...(before.at(-1) as string)].length + 1, expected };
  };
  for (;;) {
    take(blank);
    if (next === 'end') return at === text.length ? undefined : fault('nothing more');
    const [step, expected] = steps[next];
    const words = expected();
    if (!step()) return fault(words);
  }
}
