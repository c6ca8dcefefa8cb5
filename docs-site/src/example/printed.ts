import { type Inputs, startsOf } from './input.js';

/** What an example may export besides what it says with `console.log`. */
interface ExampleModule {
  readonly inputs?: Inputs;
  readonly answers?: (values: never) => Readonly<Record<string, unknown>>;
}

/** A value as a line of text: plain words stay, all else is written like JSON with six digits. */
export function lineOf(...parts: readonly unknown[]): string {
  const rounded = (_: string, value: unknown) => {
    if (ArrayBuffer.isView(value))
      return [...(value as unknown as ArrayLike<number> & Iterable<number>)].map((x) => Number(x.toPrecision(6)));
    return typeof value === 'number' && Number.isFinite(value) ? Number(value.toPrecision(6)) : value;
  };
  return parts
    .map((part) => {
      if (typeof part === 'string') return part;
      if (typeof part === 'number') return String(Number.isFinite(part) ? Number(part.toPrecision(6)) : part);
      return part === undefined
        ? 'undefined'
        : (JSON.stringify(part, rounded, 1)?.replace(/\n\s*/g, ' ') ?? String(part));
    })
    .join(' ');
}

/** The lines of `console.table`: a row for each element, with its name and its values. */
export function tableLines(rows: unknown): readonly string[] {
  if (typeof rows !== 'object' || rows === null) return [lineOf(rows)];
  return Object.entries(rows).map(([name, row]) => {
    if (typeof row !== 'object' || row === null) return lineOf(name, row);
    return lineOf(name, ...Object.entries(row).flatMap(([field, value]) => [`${field}:`, value]));
  });
}

/** What an example prints: what it logged, and its answers to the author's inputs. */
export function printedOf(example: ExampleModule, logged: readonly string[]): string {
  const { inputs, answers } = example;
  const told =
    inputs && answers
      ? Object.entries(answers(startsOf(inputs) as never)).map(([name, value]) => `${name}: ${lineOf(value)}`)
      : [];
  return [...logged, ...told].join('\n');
}
