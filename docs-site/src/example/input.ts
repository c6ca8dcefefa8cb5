import {
  decimalText,
  format,
  inUnit,
  type Kind,
  type Quantity,
  read,
  type Text,
  type UnitOf,
} from '@airspring/core/quantity';

/** A number of a page that the reader may change. */
interface InputOf<K extends Kind> {
  readonly kind: K;
  /** Said to who does not see the sentence around it. */
  readonly label: string;
  /** The author's value; its unit is the one of the page. */
  readonly value: Text<K>;
  readonly least: Text<K>;
  readonly greatest: Text<K>;
  /** A step in the unit, or a factor: frequencies and volumes step by ratio, lengths by difference. */
  readonly step: Text<K> | number;
  /** Where the author's value comes from. */
  readonly from?: string;
}

export type Input = { readonly [K in Kind]: InputOf<K> }[Kind];
export type Inputs = Readonly<Record<string, Input>>;

/** What a reader set, in SI units. */
export type Values<I extends Inputs> = { readonly [N in keyof I]: Quantity<I[N]['kind']> };
export type AnyValues = Readonly<Record<string, number>>;

const unitOf = ({ value }: Input): string => value.split(' ')[1] as string;
export const startOf = ({ kind, value }: Input): number => read(kind, value);
export const startsOf = (inputs: Inputs): AnyValues =>
  Object.fromEntries(Object.entries(inputs).map(([name, input]) => [name, startOf(input)]));

/** As it stands in the sentence: '75 mm', with a space that does not break. */
export function textOf(input: Input, value: number): string {
  const unit = unitOf(input) as UnitOf<Kind>;
  return unit === '1'
    ? decimalText(value, 3)
    : format(input.kind, value, unit as never, 3)
        .replace('-', '−')
        .replace(' ', '\u00a0');
}

/** What the element on the page has to know, as attributes, in the unit of the page. */
export function attributesOf(name: string, input: Input): Record<string, string> {
  const unit = unitOf(input);
  const number = (text: string) =>
    String(Number(inUnit(input.kind, read(input.kind, text), unit as never).toPrecision(12)));
  const step = typeof input.step === 'number' ? { factor: String(input.step) } : { step: number(input.step) };
  const { label, kind, value, least, greatest } = input;
  return {
    name,
    label,
    kind,
    unit,
    value: number(value),
    least: number(least),
    greatest: number(greatest),
    ...step,
    from: input.from ?? 'chosen for this page',
  };
}
