import {
  closedBox,
  type System,
  type VentedBoxElements,
  ventedBox,
  ventedBoxElements,
} from '@airspring/core/enclosure';
import { compileTopology, elementValues, sweepRows, type Topology } from '@airspring/core/network';
import { type ComplexColumn, complexColumn } from '@airspring/core/numeric';
import { si } from '@airspring/core/quantity';
import { REFERENCE_PRESSURE, referenceLevel } from '@airspring/core/response';
import type { Job } from '../brief/job.js';
import type { Offer } from '../brief/offers.js';

/** What a box asks of driver, vent and amplifier to play the wanted level throughout the band, and what it gives. */
export interface Demand {
  /** Lowest frequency above which the response stays within the wanted fall, Hz; sharp to 0.01 Hz. */
  cutoff: number;
  /** Greatest rise of the response over its reference up to the end of the band, dB. */
  rise: number;
  /** Greatest travel over Xmax. */
  travel: number;
  /** Greatest I² Re over Pe, as a ratio of amplitudes. */
  heat: number;
  /** Greatest drive, V rms. */
  voltage: number;
  /** Greatest current, A rms. */
  current: number;
  /** Greatest flow through the vent, peak, m³/s; 0 without a vent. */
  ventFlow: number;
}

export const emptyDemand = (): Demand => ({
  cutoff: 0,
  rise: 0,
  travel: 0,
  heat: 0,
  voltage: 0,
  current: 0,
  ventFlow: 0,
});

const BELOW = 20;
const BAND = 44;

/** Frequencies of the search: a run-up from a quarter of the lowest, then the band with both its ends. */
function searchGrid({ wanted: { lowest, highest } }: Job): Float64Array {
  const below = (i: number) => (lowest / 4) * 4 ** (i / BELOW);
  const inBand = (i: number) => lowest * (highest / lowest) ** (i / (BAND - 1));
  return Float64Array.from({ length: BELOW + BAND }, (_, i) => (i < BELOW ? below(i) : inBand(i - BELOW)));
}

/** A topology whose element values are set by name. */
interface Slots {
  readonly topology: Topology;
  readonly values: Float64Array;
  readonly set: (name: string, admittance: number) => void;
}

function slotsOf(system: System): Slots {
  const topology = compileTopology(system.network) as Topology;
  const values = elementValues(system.network.elements);
  const place = new Map(topology.elements.map((name, i) => [name, i]));
  const set = (name: string, admittance: number) => {
    const at = place.get(name);
    if (at !== undefined) values[at] = admittance;
  };
  return { topology, values, set };
}

/** |z| without the care of `hypot` for numbers near the ends of double precision, which takes five times as long. */
function magnitude({ re, im }: ComplexColumn, i: number): number {
  const a = re[i] as number;
  const b = im[i] as number;
  return Math.sqrt(a * a + b * b);
}

/**
 * Prepares the demand of all boxes of one family with one offer: the polynomials are derived once, each box then costs some
 * thousand multiplications. `at(netVolume, fb, out)` fills a {@link Demand}; for a closed box `fb` is not looked at.
 */
export function compileDemand(job: Job, { drivers }: Offer, family: 'closed' | 'vented') {
  const { wanted, air, losses, closedLosses, fillGain } = job;
  const sourceResistance = si('resistance', job.amplifier.sourceResistance);
  const start = si('volume', 0.05);
  const vented = (netVolume: number, fb: number) =>
    ventedBox(
      {
        drivers,
        netVolume: si('volume', netVolume),
        fb: si('frequency', fb),
        ...losses,
        ventArea: si('area', 1),
        sourceResistance,
      },
      air,
    );
  const closed = (netVolume: number) =>
    closedBox(
      {
        drivers,
        netVolume: si('volume', netVolume),
        fillGain,
        ...closedLosses,
        sourceResistance,
      },
      air,
    );
  const system = family === 'vented' ? vented(start, wanted.lowest) : closed(start);

  const slots = slotsOf(system);
  const { topology, values, set } = slots;
  const { width, scale, probes } = topology;
  const coefficients = new Float64Array((1 + probes.length) * width);
  const columns = probes.map(() => complexColumn(BELOW + BAND));
  const work = complexColumn(BELOW + BAND);
  const grid = searchGrid(job);
  const column = (name: string) => columns[probes.indexOf(name)] as (typeof columns)[number];
  const flow = column('radiatedFlow');
  const velocity = column('coneVelocity');
  const current = column('current');
  const vent = family === 'vented' ? column('ventAirSpeed') : undefined;

  // A level L asks for |p| = ω ρ |U| V / 2π = reference × 10^(L/20): V = asked / (f |U|).
  const asked = (REFERENCE_PRESSURE * 10 ** (wanted.level / 20)) / air.density;
  const reference = referenceLevel(system);
  const passing = (REFERENCE_PRESSURE * 10 ** (reference / 20)) / air.density;
  const fallen = passing * 10 ** (-wanted.fall / 20);
  const { Xmax = Infinity, Pe = Infinity, Re } = drivers.equivalent;
  const perXmax = Math.SQRT2 / (2 * Math.PI * Xmax);
  const perHeat = Math.sqrt(Re / Pe);
  const box: VentedBoxElements = { Cab: 0, vent: 0, leak: 0, absorption: 0, ventLoss: 0 };
  const one = new Float64Array(1);
  const oneColumn = probes.map(() => complexColumn(1));
  const oneFlow = oneColumn[probes.indexOf('radiatedFlow')] as (typeof columns)[number];
  const oneWork = complexColumn(1);
  const size = (f: number) => {
    one[0] = f;
    sweepRows(coefficients, width, scale, one, oneColumn, oneWork);
    return magnitude(oneFlow, 0) * f;
  };

  const setBox = (netVolume: number, fb: number) => {
    if (family === 'vented') {
      ventedBoxElements(netVolume, fb, losses, air, box);
      set('Cab', box.Cab);
      set('vent', 1 / box.vent);
      set('leak', 1 / box.leak);
      if (losses.QA !== undefined) set('absorption', 1 / box.absorption);
      if (losses.QP !== undefined) set('ventLoss', 1 / box.ventLoss);
      return;
    }
    values.set(elementValues(closed(netVolume).network.elements));
  };

  /** Refines the crossing of `fallen` between two frequencies by regula falsi in logarithms. */
  const crossing = (low: number, high: number, atLow: number, atHigh: number): number => {
    let [a, b, fa, fb] = [Math.log(low), Math.log(high), Math.log(atLow / fallen), Math.log(atHigh / fallen)];
    for (let step = 0; step < 12; step++) {
      const x = b - (fb * (b - a)) / (fb - fa);
      const fx = Math.log(size(Math.exp(x)) / fallen);
      if (Math.abs(fx) < 1e-7) return Math.exp(x);
      if (fx < 0) [a, fa] = [x, fx];
      else [b, fb] = [x, fx];
    }
    return Math.exp(b);
  };

  const at = (netVolume: number, fb: number, out: Demand): void => {
    setBox(netVolume, fb);
    topology.coefficients(values, coefficients);
    sweepRows(coefficients, width, scale, grid, columns, work);
    out.cutoff = grid[0] as number;
    let greatest = 0;
    let [travel, heat, voltage, ventFlow] = [0, 0, 0, 0];
    let above = 0;
    let open = true;
    for (let i = BELOW + BAND - 1; i >= 0; i--) {
      const f = grid[i] as number;
      const u = magnitude(flow, i) * f;
      if (u > greatest) greatest = u;
      if (open && u < fallen) {
        open = false;
        out.cutoff = i === BELOW + BAND - 1 ? f * 2 : crossing(f, grid[i + 1] as number, u, above);
      }
      above = u;
      if (i < BELOW) continue;
      const drive = asked / u;
      const x = (drive * magnitude(velocity, i)) / f;
      const c = drive * magnitude(current, i);
      if (drive > voltage) voltage = drive;
      if (x > travel) travel = x;
      if (c > heat) heat = c;
      if (vent !== undefined) {
        const v = drive * magnitude(vent, i);
        if (v > ventFlow) ventFlow = v;
      }
    }
    out.rise = 20 * Math.log10(greatest / passing);
    out.travel = travel * perXmax;
    out.current = heat;
    out.heat = heat * perHeat;
    out.voltage = voltage;
    out.ventFlow = ventFlow * Math.SQRT2;
  };
  return {
    at,
    system: (netVolume: number, fb: number): System =>
      family === 'vented' ? vented(netVolume, fb) : closed(netVolume),
  };
}
