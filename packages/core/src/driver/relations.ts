/** The quantities of a driver that determine each other. */
export type RelatedField =
  | 'coneDiameter'
  | 'Sd'
  | 'Re'
  | 'fs'
  | 'Qes'
  | 'Qms'
  | 'Qts'
  | 'Vas'
  | 'Mms'
  | 'Cms'
  | 'Rms'
  | 'Bl';

/** SI values known so far. */
export type Known = Partial<Record<RelatedField, number>>;

type Values<F extends RelatedField> = { readonly [K in F]: number };

/** How one field follows from others. `airStiffness` is ρc² of the air in which Vas was determined. */
export interface Relation {
  readonly target: RelatedField;
  readonly from: readonly RelatedField[];
  /** The formula as a text. */
  readonly by: string;
  readonly formula: (known: Values<RelatedField>, airStiffness: number) => number;
}

const turn = 2 * Math.PI;

const relation = <F extends RelatedField>(
  target: RelatedField,
  from: readonly F[],
  by: string,
  formula: (known: Values<F>, airStiffness: number) => number,
): Relation => ({ target, from, by: `${target} = ${by}`, formula });

/**
 * Every relation by which one quantity of a driver follows from others, the most trusted first: geometry, then ratios of
 * measured frequencies and resistances, then relations that need a mass, and last those that depend on a small difference or
 * on a root. Both the completion and the comparison of data sheets use only this list.
 */
export const relations: readonly Relation[] = [
  relation('Sd', ['coneDiameter'], 'π·coneDiameter²/4', (k) => (Math.PI * k.coneDiameter ** 2) / 4),
  relation('coneDiameter', ['Sd'], '√(4·Sd/π)', (k) => Math.sqrt((4 * k.Sd) / Math.PI)),
  relation('Qts', ['Qes', 'Qms'], 'Qes·Qms/(Qes + Qms)', (k) => (k.Qes * k.Qms) / (k.Qes + k.Qms)),
  relation('Qes', ['Qts', 'Qms'], 'Qts·Qms/(Qms − Qts)', (k) => (k.Qts * k.Qms) / (k.Qms - k.Qts)),
  relation('Qms', ['Qts', 'Qes'], 'Qts·Qes/(Qes − Qts)', (k) => (k.Qts * k.Qes) / (k.Qes - k.Qts)),
  relation('Cms', ['Vas', 'Sd'], 'Vas/(ρ·c²·Sd²)', (k, stiffness) => k.Vas / (stiffness * k.Sd ** 2)),
  relation('Vas', ['Cms', 'Sd'], 'ρ·c²·Sd²·Cms', (k, stiffness) => stiffness * k.Sd ** 2 * k.Cms),
  relation('Mms', ['fs', 'Cms'], '1/((2π·fs)²·Cms)', (k) => 1 / ((turn * k.fs) ** 2 * k.Cms)),
  relation('Cms', ['fs', 'Mms'], '1/((2π·fs)²·Mms)', (k) => 1 / ((turn * k.fs) ** 2 * k.Mms)),
  relation('fs', ['Mms', 'Cms'], '1/(2π·√(Mms·Cms))', (k) => 1 / (turn * Math.sqrt(k.Mms * k.Cms))),
  relation('Rms', ['fs', 'Mms', 'Qms'], '2π·fs·Mms/Qms', (k) => (turn * k.fs * k.Mms) / k.Qms),
  relation('Qms', ['fs', 'Mms', 'Rms'], '2π·fs·Mms/Rms', (k) => (turn * k.fs * k.Mms) / k.Rms),
  relation('Bl', ['fs', 'Mms', 'Re', 'Qes'], '√(2π·fs·Mms·Re/Qes)', (k) =>
    Math.sqrt((turn * k.fs * k.Mms * k.Re) / k.Qes),
  ),
  relation('Qes', ['fs', 'Mms', 'Re', 'Bl'], '2π·fs·Mms·Re/Bl²', (k) => (turn * k.fs * k.Mms * k.Re) / k.Bl ** 2),
  relation('Re', ['fs', 'Mms', 'Bl', 'Qes'], 'Qes·Bl²/(2π·fs·Mms)', (k) => (k.Qes * k.Bl ** 2) / (turn * k.fs * k.Mms)),
  relation('Mms', ['fs', 'Qes', 'Bl', 'Re'], 'Qes·Bl²/(2π·fs·Re)', (k) => (k.Qes * k.Bl ** 2) / (turn * k.fs * k.Re)),
  relation('Mms', ['fs', 'Qms', 'Rms'], 'Qms·Rms/(2π·fs)', (k) => (k.Qms * k.Rms) / (turn * k.fs)),
  relation(
    'Mms',
    ['fs', 'Qts', 'Bl', 'Re', 'Rms'],
    'Qts·(Bl²/Re + Rms)/(2π·fs)',
    (k) => (k.Qts * (k.Bl ** 2 / k.Re + k.Rms)) / (turn * k.fs),
  ),
  relation('Mms', ['Cms', 'Qms', 'Rms'], '(Qms·Rms)²·Cms', (k) => (k.Qms * k.Rms) ** 2 * k.Cms),
  relation('Mms', ['Cms', 'Qes', 'Bl', 'Re'], '(Qes·Bl²/Re)²·Cms', (k) => ((k.Qes * k.Bl ** 2) / k.Re) ** 2 * k.Cms),
  relation('fs', ['Mms', 'Qms', 'Rms'], 'Qms·Rms/(2π·Mms)', (k) => (k.Qms * k.Rms) / (turn * k.Mms)),
  relation('fs', ['Mms', 'Qes', 'Bl', 'Re'], 'Qes·Bl²/(2π·Mms·Re)', (k) => (k.Qes * k.Bl ** 2) / (turn * k.Mms * k.Re)),
  relation('Sd', ['Vas', 'Cms'], '√(Vas/(ρ·c²·Cms))', (k, stiffness) => Math.sqrt(k.Vas / (stiffness * k.Cms))),
];

/**
 * Which given field wins when several determine the same value. Area, resistance and the small-signal set come before the
 * masses and forces that data sheets derive from them and round. Qes and Qms come before Qts, because Qms from the small
 * difference of Qes and Qts would multiply the rounding of both.
 */
export const trust: readonly RelatedField[] = [
  'Sd',
  'coneDiameter',
  'Re',
  'fs',
  'Qes',
  'Qms',
  'Qts',
  'Vas',
  'Mms',
  'Cms',
  'Rms',
  'Bl',
];

/** Applies the relations until nothing new follows, and reports each value to `found`. It keeps only finite positive values. */
export function close(known: Known, airStiffness: number, found: (relation: Relation, value: number) => void): void {
  for (let again = true; again; ) {
    again = false;
    for (const relation of relations) {
      if (known[relation.target] !== undefined || relation.from.some((field) => known[field] === undefined)) continue;
      const value = relation.formula(known as Values<RelatedField>, airStiffness);
      found(relation, value);
      if (!(value > 0 && Number.isFinite(value))) return;
      known[relation.target] = value;
      again = true;
    }
  }
}

/** The smallest sets of absent fields, taken from `among`, from which all of `targets` would follow. */
export function unlocks(
  targets: readonly RelatedField[],
  there: readonly RelatedField[],
  among: readonly RelatedField[] = trust,
): readonly (readonly RelatedField[])[] {
  const absent = among.filter((field) => !there.includes(field) && field !== 'coneDiameter');
  const reaches = (fields: readonly RelatedField[]): boolean => {
    const have = new Set<RelatedField>([...there, ...fields]);
    for (let size = -1; size !== have.size; ) {
      size = have.size;
      for (const { target, from } of relations) if (from.every((field) => have.has(field))) have.add(target);
    }
    return targets.every((target) => have.has(target));
  };
  const sets: RelatedField[][] = [];
  const extend = (set: RelatedField[], from: number, size: number): void => {
    if (size === 0) {
      if (reaches(set)) sets.push(set);
      return;
    }
    for (let i = from; i < absent.length; i++) extend([...set, absent[i] as RelatedField], i + 1, size - 1);
  };
  // Larger sets are tried only when no smaller one is sufficient.
  for (let size = 1; size <= absent.length && sets.length === 0; size++) extend([], 0, size);
  return sets;
}
