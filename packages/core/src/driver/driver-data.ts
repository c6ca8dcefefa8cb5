import type { Air } from '../air/index.js';
import type { Fault } from '../fault/index.js';
import {
  type ComplianceInput,
  type ConeAreaInput,
  type Fields,
  type ForceFactorInput,
  type FrequencyInput,
  given,
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

type Sizes = Pick<
  DriverInput,
  'name' | 'Le' | 'R2' | 'L2' | 'Xmax' | 'Pe' | 'outerDiameter' | 'cutoutDiameter' | 'depth' | 'displacedVolume'
>;

/** What a data sheet or a measurement gives of a driver; leave out what it does not give. */
export interface DriverData extends Sizes {
  readonly fs?: FrequencyInput | undefined;
  readonly Qts?: RatioInput | undefined;
  readonly Qes?: RatioInput | undefined;
  readonly Qms?: RatioInput | undefined;
  readonly Vas?: VolumeInput | undefined;
  readonly Sd?: ConeAreaInput | undefined;
  /** Diameter of the disc that moves as much air as the cone: by custom, to the middle of the surround. */
  readonly coneDiameter?: LengthInput | undefined;
  readonly Mms?: MassInput | undefined;
  readonly Cms?: ComplianceInput | undefined;
  readonly Rms?: MechanicalResistanceInput | undefined;
  readonly Re?: ResistanceInput | undefined;
  readonly Bl?: ForceFactorInput | undefined;
  /** The air in which Vas was taken; 20 °C, 101325 Pa, 50 % when the sheet says nothing. */
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
export const dataShape = { ...relatedShape, ...commonShape, sheetAir: optional(given<Air>()) };

/** The fault of a given field that the other given fields do not allow. */
export const contradiction = (path: string, field: string, got: number, expected: string): Fault => {
  const remedy = 'Correct this field or those it contradicts, or remove it.';
  return { code: 'inconsistent', path: `${path}.${field}`, got, expected, remedy };
};

/** Both dampings together damp more than each alone. */
export function impossibleQ({ Qts, Qes, Qms }: Fields<typeof relatedShape>, path: string): readonly Fault[] {
  const parts = { Qes, Qms };
  return Object.entries(parts).flatMap(([name, part]) =>
    Qts !== undefined && part !== undefined && Qts >= part
      ? [contradiction(path, 'Qts', Qts, `less than ${name}, ${part}`)]
      : [],
  );
}
