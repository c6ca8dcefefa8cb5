import { DRIVE, system, VENT_AREA, values } from '../box.js';

/** The box one frequency at a time, a complex number an object: what one writes first. */
interface Complex {
  readonly re: number;
  readonly im: number;
}
const real = (re: number): Complex => ({ re, im: 0 });
const add = (a: Complex, b: Complex): Complex => ({ re: a.re + b.re, im: a.im + b.im });
const times = (a: Complex, b: Complex): Complex => ({ re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re });
const over = (a: Complex, b: Complex): Complex => {
  const size = b.re * b.re + b.im * b.im;
  return { re: (a.re * b.re + a.im * b.im) / size, im: (a.im * b.re - a.re * b.im) / size };
};
const size = ({ re, im }: Complex): number => Math.hypot(re, im);
const angle = ({ re, im }: Complex): number => Math.atan2(im, re);

interface Point {
  readonly flow: Complex;
  readonly velocity: Complex;
  readonly vent: Complex;
  readonly current: Complex;
}

function point(e: Record<string, number>, f: number): Point {
  const { sourceResistance = 0, Re = 0, Le = 0, Rms = 0, Mms = 0, Cms = 0, Cab = 0, absorption = 0 } = e;
  const { vent: mass = 0, ventLoss = 0, leak = 0, Bl = 0, Sd = 0 } = e;
  const s = { re: 0, im: 2 * Math.PI * f };
  const one = real(1);
  const electrical = add(real(sourceResistance + Re), times(s, real(Le)));
  const mechanical = add(add(real(Rms), times(s, real(Mms))), over(one, times(s, real(Cms))));
  const air = add(over(one, times(s, real(Cab))), real(absorption));
  const vent = add(times(s, real(mass)), real(ventLoss));
  const box = over(one, add(add(over(one, air), over(one, vent)), real(1 / leak)));
  const load = add(add(mechanical, over(real(Bl * Bl), electrical)), times(real(Sd * Sd), box));
  const velocity = over(over(real(Bl), electrical), load);
  const pressure = times(times(real(-Sd), velocity), box);
  return {
    flow: times(real(-1), over(pressure, air)),
    velocity,
    vent: over(pressure, vent),
    current: over(add(one, times(real(-Bl), velocity)), electrical),
  };
}

/** Column set A. */
export function naiveA(frequencies: Float64Array): Point[] {
  const e = values();
  return Array.from(frequencies, (f) => point(e, f));
}

const STEP = 1e-5;

/** Column set B; the delay as a difference quotient. */
export function naiveB(frequencies: Float64Array): number[][] {
  const e = values();
  const columns: number[][] = [[], [], [], [], [], [], []];
  for (const f of frequencies) {
    const { flow, velocity, vent, current } = point(e, f);
    const terminals = add(real(1), times(real(-(e.sourceResistance ?? 0)), current));
    const impedance = over(terminals, current);
    const turned = over(point(e, f * (1 + STEP)).flow, point(e, f * (1 - STEP)).flow);
    const row = [
      20 * Math.log10((size(flow) * f * system.air.density * DRIVE) / 20e-6),
      angle(times({ re: 0, im: 1 }, flow)),
      (size(velocity) * Math.SQRT2 * DRIVE) / (2 * Math.PI * f),
      (size(vent) / VENT_AREA) * Math.SQRT2 * DRIVE,
      size(impedance),
      angle(impedance),
      -angle(turned) / (2 * Math.PI * f * 2 * STEP),
    ];
    row.forEach((value, k) => columns[k]?.push(value));
  }
  return columns;
}
