import type { Air } from '../air/index.js';
import { branch, type Element, type Outlet, type Setter } from '../network/index.js';
import { partOf } from './driver-parts.js';

/**
 * Acoustic compliance of the air in a box.
 *
 * $$ C_{ab} = g\,\frac{V}{\rho c^2} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $V$ | `netVolume` | m³ | air volume |
 * | $g$ | `fillGain` | 1 | gain of compliance by filling; 1 without filling |
 * | $\rho, c$ | `air` | kg/m³, m/s | density, speed of sound |
 *
 * @validity boxes that are small compared with the wavelength
 * @neglects modes of the box, flexing walls
 * @returns m³/Pa
 * @source small1972closed1 definition of Vas, ρc² times the acoustic compliance
 * @example boxCompliance(0.05, 1, standardAir) // 3.52e-7
 */
export const boxCompliance = (netVolume: number, fillGain: number, air: Air): number =>
  (fillGain * netVolume) / (air.density * air.speedOfSound ** 2);

/** The losses of the air in a box, as quality factors. Leave out a loss that is not there. */
export interface AirLosses {
  readonly QL?: number | undefined;
  readonly QA?: number | undefined;
}

/**
 * The air of a box at the node `box`: its compliance, the absorption loss in series with it, and the leak. The reference
 * level is read without the leak. {@link setBoxAir} sets the numbers.
 */
export function boxAir(
  { QL, QA }: AirLosses,
  name?: string,
): { readonly elements: Element[]; readonly leaks: Outlet[] } {
  const part = partOf(name);
  const [box, inner, leak] = [part('box'), part('absorption'), part('leak')];
  const air: Element[] =
    QA === undefined
      ? [branch('acousticCompliance', part('Cab'), [box, 'ground'])]
      : [
          branch('acousticCompliance', part('Cab'), [box, inner]),
          branch('acousticResistance', inner, [inner, 'ground'], { stands: 'impedance' }),
        ];
  if (QL === undefined) return { elements: air, leaks: [] };
  const open = branch('acousticResistance', leak, [box, 'ground'], { stands: 'admittance', inReference: false });
  return { elements: [...air, open], leaks: [{ name: leak, flow: { of: 'flow', element: leak } }] };
}

/** Sets the numbers of {@link boxAir}. The quality factors hold at the angular frequency `w`. */
export function setBoxAir(Cab: number, w: number, { QL, QA }: AirLosses, set: Setter, part = partOf()): void {
  set(part('Cab'), Cab);
  if (QA !== undefined) set(part('absorption'), 1 / (w * Cab * QA));
  if (QL !== undefined) set(part('leak'), QL / (w * Cab));
}
