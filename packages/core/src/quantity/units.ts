/** One unit: `SI = number × scale + offset`. */
export type Unit = readonly [scale: number, offset: number];

/** One kind of quantity: its name, the range of SI values that the library accepts, and its units, the SI unit first. */
export interface KindDefinition {
  /** The name of the quantity, for messages and pages. */
  readonly of: string;
  /** Least and greatest magnitude in SI units. Whether zero is accepted depends on the sign that a field asks for. */
  readonly range: readonly [least: number, greatest: number];
  readonly units: Readonly<Record<string, Unit>>;
}

/**
 * Every kind and unit is defined here, once. Types, parser, messages, JSON Schema and the units page come from this table.
 *
 * A kind says more than a dimension: peak differs from rms, cone area from cross-section, mechanical resistance from
 * electrical. The ranges are far wider than any loudspeaker needs. They catch millimetres taken for metres, and keep every
 * formula within double precision. Conversions are exact by definition (international yard and pound, SI brochure).
 */
export const kinds = {
  length: {
    of: 'length',
    range: [1e-6, 1e3],
    units: { m: [1, 0], mm: [1e-3, 0], cm: [1e-2, 0], in: [0.0254, 0], ft: [0.3048, 0] },
  },
  displacementPeak: {
    of: 'peak displacement',
    range: [1e-12, 10],
    units: { m: [1, 0], mm: [1e-3, 0], cm: [1e-2, 0], in: [0.0254, 0] },
  },
  area: {
    of: 'area',
    range: [1e-10, 1e4],
    units: { 'm²': [1, 0], 'cm²': [1e-4, 0], 'mm²': [1e-6, 0], 'in²': [0.00064516, 0] },
  },
  coneArea: {
    of: 'effective cone area',
    range: [1e-6, 10],
    units: { 'm²': [1, 0], 'cm²': [1e-4, 0], 'in²': [0.00064516, 0] },
  },
  volume: {
    of: 'volume',
    range: [1e-9, 1e4],
    units: { 'm³': [1, 0], L: [1e-3, 0], 'cm³': [1e-6, 0], 'ft³': [0.028316846592, 0], 'in³': [1.6387064e-5, 0] },
  },
  mass: {
    of: 'mass',
    range: [1e-7, 1e4],
    units: { kg: [1, 0], g: [1e-3, 0], mg: [1e-6, 0], lb: [0.45359237, 0], oz: [0.028349523125, 0] },
  },
  density: { of: 'density', range: [1e-3, 1e5], units: { 'kg/m³': [1, 0], 'g/cm³': [1e3, 0] } },
  time: { of: 'time', range: [1e-9, 1e7], units: { s: [1, 0], ms: [1e-3, 0], µs: [1e-6, 0] } },
  frequency: { of: 'frequency', range: [1e-4, 1e7], units: { Hz: [1, 0], kHz: [1e3, 0] } },
  speed: { of: 'speed', range: [1e-9, 1e5], units: { 'm/s': [1, 0], 'ft/s': [0.3048, 0] } },
  airSpeedPeak: { of: 'peak air speed', range: [1e-9, 1e5], units: { 'm/s': [1, 0], 'ft/s': [0.3048, 0] } },
  airSpeedRms: { of: 'rms air speed', range: [1e-9, 1e5], units: { 'm/s': [1, 0], 'ft/s': [0.3048, 0] } },
  volumeFlow: { of: 'volume flow', range: [1e-12, 1e4], units: { 'm³/s': [1, 0], 'L/s': [1e-3, 0] } },
  pressure: {
    of: 'pressure',
    range: [1e-9, 1e8],
    units: { Pa: [1, 0], hPa: [1e2, 0], kPa: [1e3, 0], mbar: [1e2, 0] },
  },
  // A kind of its own: that of a metal exceeds every pressure.
  elasticModulus: {
    of: 'modulus of elasticity',
    range: [1e3, 1e13],
    units: { Pa: [1, 0], 'N/mm²': [1e6, 0], MPa: [1e6, 0], GPa: [1e9, 0] },
  },
  temperature: {
    of: 'temperature',
    range: [1, 1e4],
    units: { K: [1, 0], '°C': [1, 273.15], '°F': [5 / 9, 273.15 - (32 * 5) / 9] },
  },
  temperatureDifference: {
    of: 'temperature difference',
    range: [1e-6, 1e4],
    units: { K: [1, 0] },
  },
  // A kind of its own: an altitude can be negative, and nobody gives it in millimetres.
  altitude: { of: 'altitude', range: [1e-3, 1e5], units: { m: [1, 0], km: [1e3, 0], ft: [0.3048, 0] } },
  viscosity: { of: 'dynamic viscosity', range: [1e-9, 1e3], units: { Pa·s: [1, 0] } },
  thermalConductivity: { of: 'thermal conductivity', range: [1e-6, 1e5], units: { 'W/(m·K)': [1, 0] } },
  thermalResistance: { of: 'thermal resistance', range: [1e-6, 1e6], units: { 'K/W': [1, 0] } },
  temperatureCoefficient: {
    of: 'temperature coefficient',
    range: [1e-6, 1],
    units: { '1/K': [1, 0], '%/K': [1e-2, 0] },
  },
  specificHeat: { of: 'specific heat', range: [1, 1e6], units: { 'J/(kg·K)': [1, 0] } },
  humidity: { of: 'relative humidity', range: [1e-9, 1], units: { '1': [1, 0], '%': [1e-2, 0] } },
  compliance: {
    of: 'mechanical compliance',
    range: [1e-9, 10],
    units: { 'm/N': [1, 0], 'mm/N': [1e-3, 0], 'µm/N': [1e-6, 0] },
  },
  mechanicalResistance: {
    of: 'mechanical resistance',
    range: [1e-6, 1e6],
    units: { 'N·s/m': [1, 0], 'kg/s': [1, 0] },
  },
  forceFactor: { of: 'force factor', range: [1e-4, 1e4], units: { T·m: [1, 0], 'N/A': [1, 0] } },
  resistance: { of: 'electrical resistance', range: [1e-6, 1e9], units: { Ω: [1, 0], ohm: [1, 0], kΩ: [1e3, 0] } },
  inductance: { of: 'inductance', range: [1e-9, 1e3], units: { H: [1, 0], mH: [1e-3, 0], µH: [1e-6, 0] } },
  capacitance: { of: 'capacitance', range: [1e-12, 10], units: { F: [1, 0], µF: [1e-6, 0], nF: [1e-9, 0] } },
  voltageRms: { of: 'rms voltage', range: [1e-9, 1e5], units: { V: [1, 0], mV: [1e-3, 0] } },
  currentRms: { of: 'rms current', range: [1e-9, 1e5], units: { A: [1, 0], mA: [1e-3, 0] } },
  power: { of: 'power', range: [1e-12, 1e7], units: { W: [1, 0], mW: [1e-3, 0], kW: [1e3, 0] } },
  level: { of: 'level', range: [1e-9, 1e3], units: { dB: [1, 0] } },
  angle: { of: 'angle', range: [1e-9, 10], units: { rad: [1, 0], deg: [Math.PI / 180, 0] } },
  acousticMass: { of: 'acoustic mass', range: [1e-9, 1e9], units: { 'kg/m⁴': [1, 0] } },
  acousticCompliance: { of: 'acoustic compliance', range: [1e-18, 1], units: { 'm³/Pa': [1, 0] } },
  acousticResistance: { of: 'acoustic resistance', range: [1e-6, 1e15], units: { 'Pa·s/m³': [1, 0] } },
  flowResistivity: { of: 'flow resistivity', range: [1e-6, 1e12], units: { 'Pa·s/m²': [1, 0], 'N·s/m⁴': [1, 0] } },
  ratio: { of: 'plain number', range: [1e-9, 1e9], units: { '1': [1, 0], '%': [1e-2, 0] } },
} as const satisfies Record<string, KindDefinition>;
