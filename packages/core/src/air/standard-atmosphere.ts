import {
  type Altitude,
  type AltitudeInput,
  type Pressure,
  readFields,
  si,
  type Temperature,
} from '../quantity/index.js';
import { airAltitude } from './moist-air.js';

/** The mean state of the atmosphere at an altitude. */
export interface StandardAtmosphere {
  readonly altitude: Altitude;
  readonly pressure: Pressure;
  readonly temperature: Temperature;
}

const earthRadius = 6356766; // m
const lapse = -0.0065; // K/m
const exponent = 9.80665 / ((8.31432 / 28.9644e-3) * lapse); // g₀ M₀ / (R* L)

/**
 * Pressure and temperature of the US Standard Atmosphere 1976 in its lowest layer.
 *
 * $$ H = \frac{r_0 Z}{r_0 + Z}, \quad T = T_0 + L H, \quad p = p_0 \left(\frac{T_0}{T}\right)^{g_0 M_0/(R^* L)} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $Z$ | `altitude` | m | geometric altitude above sea level |
 * | $H$ | | m | geopotential altitude |
 * | $T_0$, $p_0$ | | K, Pa | 288.15, 101325 |
 * | $L$ | | K/m | −0.0065 |
 * | $g_0$, $M_0$, $R^*$, $r_0$ | | | 9.80665 m/s², 28.9644 g/mol, 8.31432 J/(mol·K), 6356766 m |
 *
 * @validity −5000 to 11000 m.
 * @neglects the weather, by which sea-level pressure varies by about ±3 % and temperature by far more.
 * @returns `{ altitude, pressure, temperature }` in m, Pa, K
 * @throws InputError `unit`, `not-finite`, `out-of-range`
 * @source ussa1976 lowest layer
 * @example standardAtmosphere('1000 m').pressure // 89876 Pa
 */
export function standardAtmosphere(altitude: AltitudeInput): StandardAtmosphere {
  const { altitude: Z } = readFields('', { altitude }, { altitude: airAltitude });
  const temperature = 288.15 + (lapse * earthRadius * Z) / (earthRadius + Z);
  const pressure = 101325 * (288.15 / temperature) ** exponent;
  return { altitude: Z, pressure: si('pressure', pressure), temperature: si('temperature', temperature) };
}
