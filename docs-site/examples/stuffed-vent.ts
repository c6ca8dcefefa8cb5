import { standardAir } from '@airspring/core/air';
import { driver, driverParameters } from '@airspring/core/driver';
import { unflanged } from '@airspring/core/duct';
import {
  aperiodicBox,
  closedBox,
  type System,
} from '@airspring/core/enclosure';
import {
  type FlowResistivity,
  type Frequency,
  format,
  type Length,
  logarithmicGrid,
  si,
  type Volume,
} from '@airspring/core/quantity';
import { features, respond } from '@airspring/core/response';

/** What may be changed. Driver and box are invented. */
export const inputs = {
  netVolume: {
    kind: 'volume',
    label: 'Air in the box',
    value: '12 L',
    least: '5 L',
    greatest: '60 L',
    step: 1.02,
  },
  diameter: {
    kind: 'length',
    label: 'Diameter of the vent',
    value: '100 mm',
    least: '30 mm',
    greatest: '160 mm',
    step: '1 mm',
  },
  felt: {
    kind: 'flowResistivity',
    label: 'Flow resistivity of the felt',
    value: '10000 Pa·s/m²',
    least: '500 Pa·s/m²',
    greatest: '100000 Pa·s/m²',
    step: 1.05,
  },
} as const;

interface Box {
  readonly netVolume: Volume;
  readonly diameter: Length;
  readonly felt: FlowResistivity;
}

export const drivers = driver({
  Sd: '214 cm²',
  Mms: '32 g',
  Cms: '0.9 mm/N',
  Rms: '2 kg/s',
  Re: '5.6 Ω',
  Bl: '8 T·m',
  Xmax: '6 mm',
});

/** How thick the layer of felt is, m. */
const THICKNESS = 0.03;
/** The tone at which the price is told, Hz. */
const LOW = 40;
const VOLTAGE = { driveVoltageRms: '2.83 V' } as const;

const areaOf = (diameter: number) =>
  si('area', (Math.PI / 4) * diameter ** 2);

/** What the felt opposes to the flow through it. */
export const resistanceOf = ({ diameter, felt }: Omit<Box, 'netVolume'>) =>
  si('acousticResistance', (felt * THICKNESS) / areaOf(diameter));

export const shut = ({ netVolume }: Pick<Box, 'netVolume'>) =>
  closedBox({ drivers, netVolume });
export const stuffed = (at: Box) =>
  aperiodicBox({
    drivers,
    netVolume: at.netVolume,
    ventResistance: resistanceOf(at),
    ventArea: areaOf(at.diameter),
  });

/** Wide enough for both sides of any peak. */
const wide = logarithmicGrid(5, 2000, 101);
export const grid = logarithmicGrid(15, 300, 161);

/** What the peak of an impedance says of the damping of a closed box. */
function peakOf(
  system: System,
  { frequency, value }: { frequency: Frequency; value: number },
  sides: Float64Array,
) {
  const ratio = value / drivers.Re;
  const wanted = Math.sqrt(ratio) * drivers.Re;
  // Where the impedance crosses that value on either side of the peak.
  const above = wide.findIndex((f) => f >= frequency);
  const crossed = (from: number, way: 1 | -1) => {
    let i = from;
    while (sides[i]! > wanted) i += way;
    const ends = [wide[i]!, wide[i - way]!].sort((a, b) => a - b);
    const near = logarithmicGrid(ends[0]!, ends[1]!, 33);
    const { impedance } = respond(system, near);
    // Between two points so near, the curve is straight.
    const k = impedance.findIndex(
      (z, j) => j > 0 && z > wanted !== impedance[j - 1]! > wanted,
    );
    const [a, b] = [impedance[k - 1]!, impedance[k]!];
    return (
      near[k - 1]! + ((wanted - a) / (b - a)) * (near[k]! - near[k - 1]!)
    );
  };
  const width = crossed(above, 1) - crossed(above - 1, -1);
  return { frequency, value, Q: frequency / (width * Math.sqrt(ratio)) };
}

export function solve(at: Box) {
  const of = (system: System) => {
    const { peaks, impedanceMaxima } = features(system, { to: '500 Hz' });
    return {
      swept: respond(system, grid, VOLTAGE),
      low: respond(system, [LOW], VOLTAGE),
      peak: peakOf(
        system,
        impedanceMaxima[0]!,
        respond(system, wide).impedance,
      ),
      rise: Math.max(0, ...peaks.map(({ value }) => value)),
    };
  };
  return { shut: of(shut(at)), stuffed: of(stuffed(at)) };
}

/** How a closed box with the same Q would do. */
function closedWith(Q: number, open: number) {
  const { Qts, Vas } = driverParameters(drivers);
  const ratio = (Q / Qts) ** 2 - 1;
  if (ratio < 0.05) return 'No closed box of a useful size has so low a Q';
  const netVolume = si('volume', Vas / ratio);
  const closed = closedBox({ drivers, netVolume });
  const by = respond(closed, [LOW], VOLTAGE).levelHalfSpace[0]! - open;
  return `A closed box with that Q holds ${format('volume', netVolume, 'L')} of air; at that tone it plays ${Math.abs(by).toFixed(1)} dB ${by < 0 ? 'softer' : 'louder'} than the stuffed one`;
}

export function answers(
  at: Box,
  { shut: closed, stuffed: open } = solve(at),
) {
  const travel = ({ low }: typeof open) => low.displacementPeak[0]! * 1e3;
  const lost = closed.low.levelHalfSpace[0]! - open.low.levelHalfSpace[0]!;
  const ohms = ({ peak }: typeof open) =>
    format('resistance', si('resistance', peak.value), 'Ω', 3);
  const hertz = ({ peak }: typeof open) =>
    format('frequency', peak.frequency, 'Hz', 3);
  const R = resistanceOf(at);
  const { density } = standardAir;
  const radius = at.diameter / 2;
  const mass =
    (density *
      (THICKNESS + 2 * unflanged({ radius: si('length', radius) }, 0))) /
    areaOf(at.diameter);
  const share = (2 * Math.PI * closed.peak.frequency * mass) / R;
  return {
    peak: ohms(closed),
    at: hertz(closed),
    tamed: ohms(open),
    tamedAt: hertz(open),
    Q: closed.peak.Q.toFixed(2),
    tamedQ: open.peak.Q.toFixed(2),
    rise: `${closed.rise.toFixed(1)} dB`,
    tamedRise: `${open.rise.toFixed(1)} dB`,
    lost: `${Math.abs(lost).toFixed(1)} dB ${lost < 0 ? 'louder' : 'softer'}`,
    low: `${LOW} Hz`,
    travel: `${travel(closed).toFixed(2)} mm`,
    moved: `${travel(open).toFixed(2)} mm`,
    more: travel(open) > travel(closed) ? 'more' : 'less',
    resistance: `${(R / 1e3).toFixed(0)} kPa·s/m³`,
    thickness: `${THICKNESS * 1e3} mm`,
    share: `${(100 * share).toFixed(0)} %`,
    holds:
      share < 1 / 3
        ? 'is good'
        : 'is not good: the vent acts in part as a tuned one',
    closed: closedWith(open.peak.Q, open.low.levelHalfSpace[0]!),
    tames:
      closed.rise < 0.5
        ? 'There is little to tame'
        : open.rise < 0.3 * closed.rise
          ? 'The stuffed vent tames the driver'
          : open.rise < 0.7 * closed.rise
            ? 'The stuffed vent tames the driver in part'
            : 'The stuffed vent hardly tames the driver',
  };
}
