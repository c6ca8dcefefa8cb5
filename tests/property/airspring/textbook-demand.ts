/**
 * What a vented box asks for, by another road than the library's network: the acoustical circuit of the textbooks, written out
 * by hand in the sheet's own parameters. Behind the cone stand in parallel the air of the box, its leak and the vent.
 */
export interface Sheet {
  readonly fs: number;
  readonly Qes: number;
  readonly Qms: number;
  readonly Vas: number;
  readonly Sd: number;
  readonly Re: number;
  readonly Le: number;
  readonly Xmax: number;
  readonly Pe: number;
}

export interface Wanted {
  readonly lowest: number;
  readonly highest: number;
  readonly level: number;
  readonly fall: number;
}

/** What the wanted level asks at one frequency; the travel over Xmax. */
interface Asked {
  readonly frequency: number;
  readonly voltage: number;
  readonly travel: number;
  readonly current: number;
  readonly ventFlow: number;
}

const POINTS = 110;
const RUN_UP = 30;
const QUIETEST = 20e-6;

export function compileTextbookDemand(
  { fs, Qes, Qms, Vas, Sd, Re, Le, Xmax, Pe }: Sheet,
  { density, speedOfSound }: { readonly density: number; readonly speedOfSound: number },
  { lowest, highest, level, fall }: Wanted,
  { QL, sourceResistance }: { readonly QL: number; readonly sourceResistance: number },
) {
  const stiffness = density * speedOfSound ** 2;
  const ws = 2 * Math.PI * fs;
  const Cas = Vas / stiffness;
  const Mas = 1 / (ws ** 2 * Cas);
  const Ras = (ws * Mas) / Qms;
  /** (Bl/Sd)². */
  const motor = (ws * Mas * Re) / Qes;
  const R = Re + sourceResistance;
  const pressure = (flow: number, w: number) => (w * density * flow) / (2 * Math.PI);
  // Far above resonance the mass alone moves: what one volt gives there is the reference.
  const reference = pressure(Math.sqrt(motor) / R / Mas, 1);
  const asked = QUIETEST * 10 ** (level / 20);
  const fallen = reference * 10 ** (-fall / 20);
  // The band with both its ends, and a run-up from a third of the lowest.
  const grid = Float64Array.from({ length: POINTS }, (_, i) =>
    i < RUN_UP
      ? (lowest / 3) * 3 ** (i / RUN_UP)
      : lowest * (highest / lowest) ** ((i - RUN_UP) / (POINTS - 1 - RUN_UP)),
  );

  return (volume: number, fb: number) => {
    const wb = 2 * Math.PI * fb;
    const Cab = volume / stiffness;
    const ventMass = 1 / (wb ** 2 * Cab);
    const leak = (wb * Cab) / QL;
    const out = { pressure: 0, flow: 0, current: 0, vent: 0 };
    /** Magnitudes for one volt at the terminals. */
    const at = (f: number) => {
      const w = 2 * Math.PI * f;
      const X = w * Le;
      const coil = R * R + X * X;
      const susceptance = w * Cab - 1 / (w * ventMass);
      const box = leak * leak + susceptance * susceptance;
      const real = Ras + leak / box + (motor * R) / coil;
      const imaginary = w * Mas - 1 / (w * Cas) - susceptance / box - (motor * X) / coil;
      const impedance = Math.hypot(real, imaginary);
      out.flow = Math.sqrt(motor / coil) / impedance;
      out.pressure = pressure((out.flow * w * Cab) / Math.sqrt(box), w);
      out.vent = out.flow / (w * ventMass * Math.sqrt(box));
      // The current that is left when the moving cone works against it: 1 − motor / (Z_coil Z_acoustic), over Z_coil.
      const productReal = R * real - X * imaginary;
      const productImaginary = R * imaginary + X * real;
      out.current =
        Math.hypot(productReal - motor, productImaginary) / Math.hypot(productReal, productImaginary) / Math.sqrt(coil);
      return out;
    };
    let cutoff = 0;
    let greatest = 0;
    let [travel, current, voltage, ventFlow] = [0, 0, 0, 0];
    const below: Asked[] = [];
    for (let i = POINTS - 1; i >= 0; i--) {
      const f = grid[i]!;
      const one = at(f);
      greatest = Math.max(greatest, one.pressure);
      const drive = asked / one.pressure;
      const need: Asked = {
        frequency: f,
        voltage: drive,
        travel: (Math.SQRT2 * drive * one.flow) / (Sd * 2 * Math.PI * f * Xmax),
        current: drive * one.current,
        ventFlow: Math.SQRT2 * drive * one.vent,
      };
      if (i <= RUN_UP) below.push(need);
      if (i >= RUN_UP) {
        voltage = Math.max(voltage, need.voltage);
        travel = Math.max(travel, need.travel);
        current = Math.max(current, need.current);
        ventFlow = Math.max(ventFlow, need.ventFlow);
      }
      if (cutoff > 0 || one.pressure >= fallen) continue;
      let [low, high] = [f, grid[Math.min(i + 1, POINTS - 1)]!];
      for (let step = 0; step < 30; step++) {
        const middle = (low + high) / 2;
        if (at(middle).pressure < fallen) low = middle;
        else high = middle;
      }
      cutoff = i === POINTS - 1 ? 2 * f : high;
    }
    return {
      cutoff: cutoff || grid[0]!,
      rise: 20 * Math.log10(greatest / reference),
      travel,
      heat: current * Math.sqrt(Re / Pe),
      voltage,
      current,
      ventFlow,
      below,
    };
  };
}
