import type { Air } from '../air/index.js';
import type { Driver } from '../driver/index.js';
import type { Setter } from '../network/index.js';
import {
  type Area,
  type AreaInput,
  type Frequency,
  type FrequencyInput,
  optional,
  positive,
  type RatioInput,
  type Volume,
  type VolumeInput,
} from '../quantity/index.js';
import { boxCompliance, setBoxAir } from './box-air.js';
import { closedAngularFrequency } from './closed-box.js';
import { partOf } from './driver-parts.js';

/** The chamber in front of the cone, with its vent, as people write it. */
export interface FrontChamberInput {
  /** Volume of the air in front of the cone, after the vent and bracing have taken theirs. */
  readonly frontVolume: VolumeInput;
  /** Resonance of the front vent and the air of the front chamber alone. */
  readonly frontTuning: FrequencyInput;
  /** Narrowest cross-section of all front vents together. It is needed only for the air speed, which is left out without it. */
  readonly frontVentArea?: AreaInput;
  /** Quality factor of the leaks from the front chamber to the air outside, at its tuning; leave it out if there are none. */
  readonly frontQL?: RatioInput;
  /** Quality factor of the absorption in the front chamber at its tuning; leave it out if there is none. */
  readonly frontQA?: RatioInput;
  /** Quality factor of the front vent's own loss at its tuning; leave it out if there is none. */
  readonly frontQP?: RatioInput;
}

/** The same after reading, in SI units. */
export interface FrontChamberSpec {
  readonly frontVolume: Volume;
  readonly frontTuning: Frequency;
  readonly frontVentArea?: Area;
  readonly frontQL?: number;
  readonly frontQA?: number;
  readonly frontQP?: number;
}

/** A chamber behind the cone that has a vent, as people write it. */
export interface VentedRearInput {
  /** Volume of the air behind the cone, after the driver, the vent and bracing have taken theirs. */
  readonly rearVolume: VolumeInput;
  /** Resonance of the rear vent and the air of the rear chamber alone. */
  readonly rearTuning: FrequencyInput;
  /** Narrowest cross-section of all rear vents together. It is needed only for the air speed, which is left out without it. */
  readonly rearVentArea?: AreaInput;
  /** Quality factor of the leaks from the rear chamber to the air outside, at its tuning; leave it out if there are none. */
  readonly rearQL?: RatioInput;
  /** Quality factor of the absorption in the rear chamber at its tuning; leave it out if there is none. */
  readonly rearQA?: RatioInput;
  /** Quality factor of the rear vent's own loss at its tuning; leave it out if there is none. */
  readonly rearQP?: RatioInput;
}

/** The same after reading, in SI units. */
export interface VentedRearSpec {
  readonly rearVolume: Volume;
  readonly rearTuning: Frequency;
  readonly rearVentArea?: Area;
  readonly rearQL?: number;
  readonly rearQA?: number;
  readonly rearQP?: number;
}

/** A closed chamber behind the cone, as people write it. */
export interface ClosedRearInput {
  /** Volume of the air behind the cone, after the driver and bracing have taken theirs. */
  readonly rearVolume: VolumeInput;
  /** Factor by which the filling of the rear chamber enlarges the compliance of its air, 1 (default) to 1.4. */
  readonly rearFillGain?: RatioInput;
  /**
   * Quality factor of the leaks from the rear chamber to the air outside, at the resonance of the driver in the rear
   * chamber alone; leave it out if there are none.
   */
  readonly rearQL?: RatioInput;
  /** Quality factor of the absorption in the rear chamber at the same frequency; leave it out if there is none. */
  readonly rearQA?: RatioInput;
}

/** The same after reading, in SI units. */
export interface ClosedRearSpec {
  readonly rearVolume: Volume;
  readonly rearFillGain: number;
  readonly rearQL?: number;
  readonly rearQA?: number;
}

const ratio = optional(positive('ratio'));

/** The readers of the fields of {@link FrontChamberInput}. */
export const frontChamberShape = {
  frontVolume: positive('volume'),
  frontTuning: positive('frequency'),
  frontVentArea: optional(positive('area')),
  frontQL: ratio,
  frontQA: ratio,
  frontQP: ratio,
};
/** The readers of the fields of {@link VentedRearInput}. */
export const ventedRearShape = {
  rearVolume: positive('volume'),
  rearTuning: positive('frequency'),
  rearVentArea: optional(positive('area')),
  rearQL: ratio,
  rearQA: ratio,
  rearQP: ratio,
};
/** The readers of the fields of {@link ClosedRearInput}. */
export const closedRearShape = { rearVolume: positive('volume'), rearFillGain: ratio, rearQL: ratio, rearQA: ratio };

/** The front chamber, as any vented air is described. */
export const frontChamber = (spec: FrontChamberSpec) => ({
  netVolume: spec.frontVolume,
  fb: spec.frontTuning,
  ventArea: spec.frontVentArea,
  QL: spec.frontQL,
  QA: spec.frontQA,
  QP: spec.frontQP,
});

/** A rear chamber with a vent, as any vented air is described. */
export const ventedRear = (spec: VentedRearSpec) => ({
  netVolume: spec.rearVolume,
  fb: spec.rearTuning,
  ventArea: spec.rearVentArea,
  QL: spec.rearQL,
  QA: spec.rearQA,
  QP: spec.rearQP,
});

/** The losses of a closed rear chamber. */
export const closedRearLosses = ({ rearQL, rearQA }: ClosedRearSpec) => ({ QL: rearQL, QA: rearQA });

const STEMS = ['Cab', 'absorption', 'leak', 'vent', 'ventLoss', 'perVentArea'];

/** The names of the numbers of a chamber. A search sets these for each of its boxes, and puts their names together once. */
function chamberPart(name: string): (stem: string) => string {
  const part = partOf(name);
  const known = new Map(STEMS.map((stem) => [stem, part(stem)]));
  return (stem) => known.get(stem) ?? part(stem);
}
export const frontPart = chamberPart('front');
export const rearPart = chamberPart('rear');

/** Sets the numbers of a closed rear chamber. Its quality factors hold at the resonance that the driver has in it alone. */
export function setClosedRear(spec: ClosedRearSpec, driver: Driver, air: Air, set: Setter): void {
  const Cab = boxCompliance(spec.rearVolume, spec.rearFillGain, air);
  setBoxAir(Cab, closedAngularFrequency(driver, Cab), closedRearLosses(spec), set, rearPart);
}

/** The nodes of the air behind the cone and in front of it. */
export const betweenChambers = { rear: 'box rear', front: 'box front' } as const;
