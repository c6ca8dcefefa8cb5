import type { kinds } from './units.js';

declare const kind: unique symbol;

/** A kind of quantity: what a number means, not only its dimension. */
export type Kind = keyof typeof kinds;

/** The unit texts of a kind. */
export type UnitOf<K extends Kind> = keyof (typeof kinds)[K]['units'] & string;

/** What the type of a number says beyond the number; nothing of it is there at run time. Named, so that declaration files can. */
export interface OfKind<K extends Kind> {
  readonly [kind]: K;
}

/** A number in SI units whose type says what it means. At run time it is the number itself. */
export type Quantity<K extends Kind> = number & OfKind<K>;

/** A number, one space, and a unit of the kind: `'62 mm'`. */
export type Text<K extends Kind> = `${number} ${UnitOf<K>}`;

/**
 * Says that an SI number is of a kind. The door for numbers computed at run time; checks nothing.
 *
 * @example si('length', 0.062) // 0.062, of type Length
 */
export const si = <K extends Kind>(_kind: K, value: number): Quantity<K> => value as Quantity<K>;

export type Length = Quantity<'length'>;
export type DisplacementPeak = Quantity<'displacementPeak'>;
export type Area = Quantity<'area'>;
export type ConeArea = Quantity<'coneArea'>;
export type Volume = Quantity<'volume'>;
export type Mass = Quantity<'mass'>;
export type Density = Quantity<'density'>;
export type Time = Quantity<'time'>;
export type Frequency = Quantity<'frequency'>;
export type Speed = Quantity<'speed'>;
export type AirSpeedPeak = Quantity<'airSpeedPeak'>;
export type AirSpeedRms = Quantity<'airSpeedRms'>;
export type VolumeFlow = Quantity<'volumeFlow'>;
export type Pressure = Quantity<'pressure'>;
export type Temperature = Quantity<'temperature'>;
export type TemperatureDifference = Quantity<'temperatureDifference'>;
export type Humidity = Quantity<'humidity'>;
export type Altitude = Quantity<'altitude'>;
export type Viscosity = Quantity<'viscosity'>;
export type ThermalConductivity = Quantity<'thermalConductivity'>;
export type SpecificHeat = Quantity<'specificHeat'>;
export type Compliance = Quantity<'compliance'>;
export type MechanicalResistance = Quantity<'mechanicalResistance'>;
export type ForceFactor = Quantity<'forceFactor'>;
export type Resistance = Quantity<'resistance'>;
export type Inductance = Quantity<'inductance'>;
export type Capacitance = Quantity<'capacitance'>;
export type VoltageRms = Quantity<'voltageRms'>;
export type CurrentRms = Quantity<'currentRms'>;
export type Power = Quantity<'power'>;
export type Level = Quantity<'level'>;
export type Angle = Quantity<'angle'>;
export type AcousticMass = Quantity<'acousticMass'>;
export type AcousticCompliance = Quantity<'acousticCompliance'>;
export type AcousticResistance = Quantity<'acousticResistance'>;

// One named alias a kind, so that the compiler prints 'VolumeInput' and not every pattern in it.
export type LengthInput = Length | Text<'length'>;
export type DisplacementPeakInput = DisplacementPeak | Text<'displacementPeak'>;
export type AreaInput = Area | Text<'area'>;
export type ConeAreaInput = ConeArea | Text<'coneArea'>;
export type VolumeInput = Volume | Text<'volume'>;
export type MassInput = Mass | Text<'mass'>;
export type DensityInput = Density | Text<'density'>;
export type TimeInput = Time | Text<'time'>;
export type FrequencyInput = Frequency | Text<'frequency'>;
export type SpeedInput = Speed | Text<'speed'>;
export type AirSpeedPeakInput = AirSpeedPeak | Text<'airSpeedPeak'>;
export type AirSpeedRmsInput = AirSpeedRms | Text<'airSpeedRms'>;
export type VolumeFlowInput = VolumeFlow | Text<'volumeFlow'>;
export type PressureInput = Pressure | Text<'pressure'>;
export type TemperatureInput = Temperature | Text<'temperature'>;
export type HumidityInput = Humidity | Text<'humidity'>;
export type AltitudeInput = Altitude | Text<'altitude'>;
export type ComplianceInput = Compliance | Text<'compliance'>;
export type MechanicalResistanceInput = MechanicalResistance | Text<'mechanicalResistance'>;
export type ForceFactorInput = ForceFactor | Text<'forceFactor'>;
export type ResistanceInput = Resistance | Text<'resistance'>;
export type InductanceInput = Inductance | Text<'inductance'>;
export type CapacitanceInput = Capacitance | Text<'capacitance'>;
export type VoltageRmsInput = VoltageRms | Text<'voltageRms'>;
export type CurrentRmsInput = CurrentRms | Text<'currentRms'>;
export type PowerInput = Power | Text<'power'>;
export type LevelInput = Level | Text<'level'>;
export type AngleInput = Angle | Text<'angle'>;
export type AcousticMassInput = AcousticMass | Text<'acousticMass'>;
export type AcousticComplianceInput = AcousticCompliance | Text<'acousticCompliance'>;
export type AcousticResistanceInput = AcousticResistance | Text<'acousticResistance'>;
/** Plain numbers (quality factors, counts of ratio) carry no brand: 0.38 says all there is to say. */
export type RatioInput = number | Text<'ratio'>;
