import type { Air } from '../air/index.js';

/** Work space for {@link lineKernel} and {@link chainKernel}. */
export const lineRoom = () => new Float64Array(12);

/** The properties of the air that a line needs. */
export interface LineAir {
  readonly density: number;
  readonly speed: number;
  readonly surplus: number;
  readonly viscous: number;
  readonly thermal: number;
}

export const lineAir = (air: Air): LineAir => ({
  density: air.density,
  speed: air.speedOfSound,
  surplus: air.heatCapacityRatio - 1,
  viscous: Math.sqrt(air.density / air.viscosity),
  thermal: Math.sqrt((air.density * air.prandtlNumber) / air.viscosity),
});

/** Fills room[0 … 3] with α, β and the real and imaginary part of the characteristic impedance. The rest is scratch space. */
export function lineKernel(
  area: number,
  layer: (s: number, out: Float64Array) => void,
  { density, speed, surplus, viscous, thermal }: LineAir,
  omega: number,
  room: Float64Array,
): void {
  const root = Math.sqrt(omega);
  layer(thermal * root, room);
  // First the shunt factor 1 + (γ − 1) F for the compression of the air, then the series factor 1 − F for its motion.
  const a = 1 + surplus * room[0]!;
  const b = surplus * room[1]!;
  layer(viscous * root, room);
  const c = room[2]!;
  const d = room[3]!;
  const k = omega / speed;
  const unit = 1 / (c * c + d * d);
  // Both quotients lie in the fourth quadrant, where the square root loses nothing to cancellation.
  complexRoot((a * c + b * d) * unit, (b * c - a * d) * unit, room);
  const alpha = -k * room[1]!;
  const beta = k * room[0]!;
  const pr = a * c - b * d;
  const pi = a * d + b * c;
  const scale = 1 / (pr * pr + pi * pi);
  complexRoot(pr * scale, -pi * scale, room);
  const z = (density * speed) / area;
  room[2] = z * room[0]!;
  room[3] = z * room[1]!;
  room[0] = alpha;
  room[1] = beta;
}

/** Writes the principal square root to out[0], out[1]. */
function complexRoot(re: number, im: number, out: Float64Array): void {
  const larger = Math.sqrt((Math.hypot(re, im) + Math.abs(re)) / 2);
  const smaller = larger > 0 ? im / (2 * larger) : 0;
  out[0] = re < 0 ? Math.abs(smaller) : larger;
  out[1] = re < 0 ? (im < 0 ? -larger : larger) : smaller;
}

/** Beyond this attenuation a line passes practically nothing. The bound keeps the chain matrix finite. */
export const mostNepers = 300;

/** Computes cosh ΓL, Z sinh ΓL and sinh ΓL / Z from room[0 … 3] of {@link lineKernel}, and writes them to room[4 … 9]. */
export function chainKernel(length: number, most: number, room: Float64Array): void {
  const x = Math.min(room[0]! * length, most);
  const y = room[1]! * length;
  const zr = room[2]!;
  const zi = room[3]!;
  const ch = Math.cosh(x);
  const sh = Math.sinh(x);
  const cos = Math.cos(y);
  const sin = Math.sin(y);
  const re = sh * cos;
  const im = ch * sin;
  const unit = 1 / (zr * zr + zi * zi);
  room[4] = ch * cos;
  room[5] = sh * sin;
  room[6] = zr * re - zi * im;
  room[7] = zr * im + zi * re;
  room[8] = (re * zr + im * zi) * unit;
  room[9] = (im * zr - re * zi) * unit;
}
