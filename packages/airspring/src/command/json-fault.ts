import { visibleStart } from '@airspring/core/fault';
import { printParseErrorCode, visit } from 'jsonc-parser';

/** Where a text stops being JSON, or repeats a name in one record, where the last value would silently win. */
export interface JsonFault {
  readonly code: 'not-json' | 'repeated-name';
  /** Counted from 1, in characters. */
  readonly line: number;
  readonly column: number;
  /** What is wrong there, without a full stop. */
  readonly says: string;
}

/** A text of JSON as every reader of JSON takes it; or its first fault. */
export type PlainJson =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly fault: JsonFault };

/** What each error of the parser means to the reader. */
const EXPECTED: Readonly<Record<string, string>> = {
  PropertyNameExpected: 'a name in double quotes',
  ValueExpected: 'a value',
  ColonExpected: '":" after the name',
  CommaExpected: '"," or the closing bracket',
  CloseBraceExpected: '"," or "}"',
  CloseBracketExpected: '"," or "]"',
  EndOfFileExpected: 'nothing more',
  UnexpectedEndOfComment: 'the end of this comment, */',
  UnexpectedEndOfString: 'the closing quote of this text in its line',
  UnexpectedEndOfNumber: 'the other digits of this number',
  InvalidUnicode: 'four digits after each \\u of this text',
  InvalidEscapeCharacter: 'a known letter after each backslash of this text',
  InvalidCharacter: 'no control character in this text',
};

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

/**
 * Reads a text of JSON that may have comments and commas before closing brackets. Both become blanks, so that every place stays
 * where it is.
 *
 * @example plainJson('{"a": 1,} // one') // { ok: true, text: '{"a": 1 }       ' }
 */
export function plainJson(text: string): PlainJson {
  const blanks: (readonly [from: number, length: number])[] = [];
  const errors: (readonly [name: string, at: number])[] = [];
  /** The names so far in each open record, and where each of them is. */
  const names: Map<string, number>[] = [];
  let repeated: { readonly name: string; readonly first: number; readonly second: number } | undefined;
  let comma: number | undefined;
  const close = () => {
    if (comma !== undefined) blanks.push([comma, 1]);
    comma = undefined;
  };
  const value = () => {
    comma = undefined;
  };
  try {
    visit(
      text,
      {
        onObjectBegin: () => {
          value();
          names.push(new Map());
        },
        onObjectProperty: (name, at) => {
          value();
          const record = names.at(-1) as Map<string, number>;
          const first = record.get(name);
          if (first === undefined) record.set(name, at);
          else repeated ??= { name, first, second: at };
        },
        onObjectEnd: () => {
          close();
          names.pop();
        },
        onArrayBegin: value,
        onArrayEnd: close,
        onLiteralValue: value,
        onSeparator: (sign, at) => {
          comma = sign === ',' ? at : undefined;
        },
        onComment: (at, length) => blanks.push([at, length]),
        onError: (code, at) => errors.push([printParseErrorCode(code), at]),
      },
      { allowTrailingComma: true },
    );
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    const says = 'its lists and records are nested too deeply for a brief';
    return { ok: false, fault: { code: 'not-json', line: 1, column: 1, says } };
  }
  const [first] = errors;
  if (first !== undefined) {
    // The parser says of a strange symbol where it is, and then what it expected instead.
    const [name] = errors.find(([one]) => one !== 'InvalidSymbol') ?? first;
    const says = `this is not JSON; expected ${EXPECTED[name] ?? 'a value'}`;
    return { ok: false, fault: { code: 'not-json', ...placeOf(text, first[1]), says } };
  }
  if (repeated !== undefined) {
    const says = `"${visibleStart(repeated.name, 60)}" is repeated here; it is already in line ${placeOf(text, repeated.first).line}`;
    return { ok: false, fault: { code: 'repeated-name', ...placeOf(text, repeated.second), says } };
  }
  return { ok: true, text: blanked(text, blanks) };
}

/** A text with blanks in some places; line ends stay. */
function blanked(text: string, blanks: readonly (readonly [from: number, length: number])[]): string {
  const parts: string[] = [];
  let at = 0;
  for (const [from, length] of [...blanks].sort(([a], [b]) => a - b)) {
    parts.push(text.slice(at, from), text.slice(from, from + length).replace(/[^\r\n]/g, ' '));
    at = from + length;
  }
  return [...parts, text.slice(at)].join('');
}
