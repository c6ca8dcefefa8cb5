import type { kinds } from './units.js';

declare const kind: unique symbol;

/** A kind of quantity: what a number means, not only its dimension. */
export type Kind = keyof typeof kinds;

/** The unit texts of a kind. */
export type UnitOf<K extends Kind> = keyof (typeof kinds)[K]['units'] & string;

/** What the type of a number adds to it; nothing of this exists at run time. It is exported so that declaration files can name it. */
export interface OfKind<K extends Kind> {
  readonly [kind]: K;
}

/** A number in SI units whose type says what it means. At run time it is the number itself. */
export type Quantity<K extends Kind> = number & OfKind<K>;

/** A number, one space, and a unit of the kind: `'62 mm'`. */
export type Text<K extends Kind> = `${number} ${UnitOf<K>}`;

/**
 * Marks an SI number as a quantity of a kind. Use it for numbers computed at run time; it checks nothing.
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
export type ElasticModulus = Quantity<'elasticModulus'>;
export type Temperature = Quantity<'temperature'>;
export type TemperatureDifference = Quantity<'temperatureDifference'>;
export type Humidity = Quantity<'humidity'>;
export type Altitude = Quantity<'altitude'>;
export type Viscosity = Quantity<'viscosity'>;
export type ThermalConductivity = Quantity<'thermalConductivity'>;
export type ThermalResistance = Quantity<'thermalResistance'>;
export type TemperatureCoefficient = Quantity<'temperatureCoefficient'>;
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
export type FlowResistivity = Quantity<'flowResistivity'>;

// Each kind has a named alias, so that the compiler prints 'VolumeInput' instead of every pattern in it.
// Each docstring says how to pass a number computed at run time, because a reader whose bare number was refused looks there.
/** A length: a text such as `'62 mm'`, or `si('length', x)` of a number x in m. */
export type LengthInput = Length | Text<'length'>;
/** A peak displacement: a text such as `'6 mm'`, or `si('displacementPeak', x)` of a number x in m. */
export type DisplacementPeakInput = DisplacementPeak | Text<'displacementPeak'>;
/** An area: a text such as `'44 cm²'`, or `si('area', x)` of a number x in m². */
export type AreaInput = Area | Text<'area'>;
/** An effective cone area: a text such as `'330 cm²'`, or `si('coneArea', x)` of a number x in m². */
export type ConeAreaInput = ConeArea | Text<'coneArea'>;
/** A volume: a text such as `'24 L'`, or `si('volume', x)` of a number x in m³. */
export type VolumeInput = Volume | Text<'volume'>;
/** A mass: a text such as `'86 g'`, or `si('mass', x)` of a number x in kg. */
export type MassInput = Mass | Text<'mass'>;
/** A density: a text such as `'1.2 kg/m³'`, or `si('density', x)` of a number x in kg/m³. */
export type DensityInput = Density | Text<'density'>;
/** A time: a text such as `'5 ms'`, or `si('time', x)` of a number x in s. */
export type TimeInput = Time | Text<'time'>;
/** A frequency: a text such as `'28 Hz'`, or `si('frequency', x)` of a number x in Hz. */
export type FrequencyInput = Frequency | Text<'frequency'>;
/** A speed: a text such as `'344 m/s'`, or `si('speed', x)` of a number x in m/s. */
export type SpeedInput = Speed | Text<'speed'>;
/** A peak air speed: a text such as `'17 m/s'`, or `si('airSpeedPeak', x)` of a number x in m/s. */
export type AirSpeedPeakInput = AirSpeedPeak | Text<'airSpeedPeak'>;
/** An rms air speed: a text such as `'12 m/s'`, or `si('airSpeedRms', x)` of a number x in m/s. */
export type AirSpeedRmsInput = AirSpeedRms | Text<'airSpeedRms'>;
/** A volume flow: a text such as `'60 L/s'`, or `si('volumeFlow', x)` of a number x in m³/s. */
export type VolumeFlowInput = VolumeFlow | Text<'volumeFlow'>;
/** A pressure: a text such as `'101325 Pa'`, or `si('pressure', x)` of a number x in Pa. */
export type PressureInput = Pressure | Text<'pressure'>;
/** A modulus of elasticity: a text such as `'3 GPa'`, or `si('elasticModulus', x)` of a number x in Pa. */
export type ElasticModulusInput = ElasticModulus | Text<'elasticModulus'>;
/** A temperature: a text such as `'20 °C'`, or `si('temperature', x)` of a number x in K. */
export type TemperatureInput = Temperature | Text<'temperature'>;
/** A relative humidity: a text such as `'50 %'`, or `si('humidity', x)` of a number x from 0 to 1. */
export type HumidityInput = Humidity | Text<'humidity'>;
/** An altitude: a text such as `'600 m'`, or `si('altitude', x)` of a number x in m. */
export type AltitudeInput = Altitude | Text<'altitude'>;
/** A dynamic viscosity: a text such as `'18e-6 Pa·s'`, or `si('viscosity', x)` of a number x in Pa·s. */
export type ViscosityInput = Viscosity | Text<'viscosity'>;
/** A thermal conductivity: a text such as `'0.026 W/(m·K)'`, or `si('thermalConductivity', x)` of a number x in W/(m·K). */
export type ThermalConductivityInput = ThermalConductivity | Text<'thermalConductivity'>;
/** A difference of temperatures: a text such as `'120 K'`, or `si('temperatureDifference', x)` of a number x in K. */
export type TemperatureDifferenceInput = TemperatureDifference | Text<'temperatureDifference'>;
/** A thermal resistance: a text such as `'4 K/W'`, or `si('thermalResistance', x)` of a number x in K/W. */
export type ThermalResistanceInput = ThermalResistance | Text<'thermalResistance'>;
/** A temperature coefficient: a text such as `'0.393 %/K'`, or `si('temperatureCoefficient', x)` of a number x in 1/K. */
export type TemperatureCoefficientInput = TemperatureCoefficient | Text<'temperatureCoefficient'>;
/** A specific heat: a text such as `'1006 J/(kg·K)'`, or `si('specificHeat', x)` of a number x in J/(kg·K). */
export type SpecificHeatInput = SpecificHeat | Text<'specificHeat'>;
/** A mechanical compliance: a text such as `'0.4 mm/N'`, or `si('compliance', x)` of a number x in m/N. */
export type ComplianceInput = Compliance | Text<'compliance'>;
/** A mechanical resistance: a text such as `'3.6 N·s/m'`, or `si('mechanicalResistance', x)` of a number x in N·s/m. */
export type MechanicalResistanceInput = MechanicalResistance | Text<'mechanicalResistance'>;
/** A force factor: a text such as `'14.3 T·m'`, or `si('forceFactor', x)` of a number x in T·m. */
export type ForceFactorInput = ForceFactor | Text<'forceFactor'>;
/** An electrical resistance: a text such as `'5.6 Ω'`, or `si('resistance', x)` of a number x in Ω. */
export type ResistanceInput = Resistance | Text<'resistance'>;
/** An inductance: a text such as `'0.8 mH'`, or `si('inductance', x)` of a number x in H. */
export type InductanceInput = Inductance | Text<'inductance'>;
/** A capacitance: a text such as `'100 µF'`, or `si('capacitance', x)` of a number x in F. */
export type CapacitanceInput = Capacitance | Text<'capacitance'>;
/** An rms voltage: a text such as `'2.83 V'`, or `si('voltageRms', x)` of a number x in V. */
export type VoltageRmsInput = VoltageRms | Text<'voltageRms'>;
/** An rms current: a text such as `'1 A'`, or `si('currentRms', x)` of a number x in A. */
export type CurrentRmsInput = CurrentRms | Text<'currentRms'>;
/** A power: a text such as `'1 W'`, or `si('power', x)` of a number x in W. */
export type PowerInput = Power | Text<'power'>;
/** A level: a text such as `'92 dB'`, or `si('level', x)` of a number x in dB. */
export type LevelInput = Level | Text<'level'>;
/** An angle: a text such as `'90 deg'`, or `si('angle', x)` of a number x in rad. */
export type AngleInput = Angle | Text<'angle'>;
/** An acoustic mass: a text such as `'30 kg/m⁴'`, or `si('acousticMass', x)` of a number x in kg/m⁴. */
export type AcousticMassInput = AcousticMass | Text<'acousticMass'>;
/** An acoustic compliance: a text such as `'2e-7 m³/Pa'`, or `si('acousticCompliance', x)` of a number x in m³/Pa. */
export type AcousticComplianceInput = AcousticCompliance | Text<'acousticCompliance'>;
/** An acoustic resistance: a text such as `'5000 Pa·s/m³'`, or `si('acousticResistance', x)` of a number x in Pa·s/m³. */
export type AcousticResistanceInput = AcousticResistance | Text<'acousticResistance'>;
/** A flow resistivity: a text such as `'2000 Pa·s/m²'`, or `si('flowResistivity', x)` of a number x in Pa·s/m². */
export type FlowResistivityInput = FlowResistivity | Text<'flowResistivity'>;
/** A ratio, such as a quality factor. Ratios are plain numbers without a brand, because they have no unit to confuse. */
export type RatioInput = number | Text<'ratio'>;
