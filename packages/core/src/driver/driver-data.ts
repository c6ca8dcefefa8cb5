import { type Air, airField } from '../air/index.js';
import type { Fault } from '../fault/index.js';
import {
  type ComplianceInput,
  type ConeAreaInput,
  decimalText,
  type Fields,
  type ForceFactorInput,
  type FrequencyInput,
  format,
  type Kind,
  kinds,
  type LengthInput,
  type MassInput,
  type MechanicalResistanceInput,
  optional,
  positive,
  type RatioInput,
  type ResistanceInput,
  type VolumeInput,
} from '../quantity/index.js';
import { commonShape, type DriverInput } from './driver.js';
import type { RelatedField } from './relations.js';

type Sizes = Pick<
  DriverInput,
  | 'name'
  | 'Le'
  | 'coil'
  | 'suspension'
  | 'Xmax'
  | 'Pe'
  | 'outerDiameter'
  | 'cutoutDiameter'
  | 'depth'
  | 'displacedVolume'
>;

/** The data of a driver from a data sheet or a measurement. Leave out what it does not give. */
export interface DriverData extends Sizes {
  readonly fs?: FrequencyInput | undefined;
  readonly Qts?: RatioInput | undefined;
  readonly Qes?: RatioInput | undefined;
  readonly Qms?: RatioInput | undefined;
  readonly Vas?: VolumeInput | undefined;
  readonly Sd?: ConeAreaInput | undefined;
  /** Diameter of a disc that moves as much air as the cone, by custom measured to the middle of the surround. */
  readonly coneDiameter?: LengthInput | undefined;
  readonly Mms?: MassInput | undefined;
  readonly Cms?: ComplianceInput | undefined;
  readonly Rms?: MechanicalResistanceInput | undefined;
  readonly Re?: ResistanceInput | undefined;
  readonly Bl?: ForceFactorInput | undefined;
  /** The air in which Vas was determined; by default 20 °C, 101325 Pa and 50 %. */
  readonly sheetAir?: Air | undefined;
}

const relatedShape = {
  fs: optional(positive('frequency')),
  Qts: optional(positive('ratio')),
  Qes: optional(positive('ratio')),
  Qms: optional(positive('ratio')),
  Vas: optional(positive('volume')),
  Sd: optional(positive('coneArea')),
  coneDiameter: optional(positive('length')),
  Mms: optional(positive('mass')),
  Cms: optional(positive('compliance')),
  Rms: optional(positive('mechanicalResistance')),
  Re: optional(positive('resistance')),
  Bl: optional(positive('forceFactor')),
};

/** How {@link DriverData} is read. */
export const dataShape = { ...relatedShape, ...commonShape, sheetAir: optional(airField) };

const relatedKinds = {
  fs: 'frequency',
  Vas: 'volume',
  Sd: 'coneArea',
  coneDiameter: 'length',
  Mms: 'mass',
  Cms: 'compliance',
  Rms: 'mechanicalResistance',
  Re: 'resistance',
  Bl: 'forceFactor',
} as const satisfies Partial<Record<RelatedField, Kind>>;

/** Writes an SI value in the unit in which the caller wrote that field, or in the SI unit. */
export function inUnitOf(field: RelatedField, written: unknown, value: number): string {
  if (!Object.hasOwn(relatedKinds, field)) return decimalText(value, 4);
  const kind = relatedKinds[field as keyof typeof relatedKinds];
  const unit =
    typeof written === 'string' ? written.slice(written.indexOf(' ') + 1) : Object.keys(kinds[kind].units)[0];
  return format(kind, value, unit as never, 4);
}

/** The fault of a given field that contradicts the other given fields. */
export const contradiction = (path: string, field: string, got: unknown, expected: string): Fault => {
  const remedy = 'Correct or remove this field, or correct the fields that it contradicts.';
  return { code: 'inconsistent', path: `${path}.${field}`, got, expected, remedy };
};

/** Faults of a Qts that is not below Qes and Qms: both dampings together damp more than either alone. */
export function impossibleQ({ Qts, Qes, Qms }: Fields<typeof relatedShape>, path: string): readonly Fault[] {
  const parts = { Qes, Qms };
  return Object.entries(parts).flatMap(([name, part]) =>
    Qts !== undefined && part !== undefined && Qts >= part
      ? [contradiction(path, 'Qts', Qts, `less than ${name}, ${part}`)]
      : [],
  );
}
