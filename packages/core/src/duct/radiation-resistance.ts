import type { Law, Nodes } from '../network/index.js';

/**
 * The sound power that leaves an opening, as an element of a network: the resistance of a point source that radiates into a
 * solid angle. Several openings near one another are one source: the element carries the flow of all of them.
 *
 * $$ R = \frac{\rho\,\omega^2}{\Omega\,c} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $\rho$ | `density` | kg/m³ | density of the air |
 * | $c$ | `speedOfSound` | m/s | speed of sound |
 * | $\Omega$ | `solidAngle` | sr | $2\pi$ beside a wide wall, $4\pi$ in free air |
 *
 * @validity $ka \le 0.3$, with the radius $a$ of the opening and $k = \omega/c$ (within 1.5 %); openings much nearer to one another than a
 * wavelength
 * @neglects the terms of higher order in ka; the mass of the air, which is an element of its own
 * @returns the element; it checks nothing
 * @source rayleigh1896 sec. 302
 * @example radiationResistance('radiation', ['mouth', 'ground']) // its values: [density, speedOfSound, solidAngle]
 */
export const radiationResistance = (name: string, nodes: Nodes): Law => ({
  kind: 'law',
  name,
  nodes,
  stands: 'impedance',
  inReference: false,
  parameters: ['density', 'speedOfSound', 'solidAngle'],
  fill: (values, at, frequencies, { re }) => {
    const scale = resistanceAt(values, at);
    for (let i = 0; i < frequencies.length; i++) re[i] = scale * frequencies[i]! ** 2;
  },
  slope: (values, at, frequencies, { re }) => {
    const scale = 2 * resistanceAt(values, at);
    for (let i = 0; i < frequencies.length; i++) re[i] = scale * frequencies[i]! ** 2;
  },
  parameterSlope: (parameter, values, at, frequencies, { re }) => {
    const scale = ((parameter === 0 ? 1 : -1) * resistanceAt(values, at)) / values[at + parameter]!;
    for (let i = 0; i < frequencies.length; i++) re[i] = scale * frequencies[i]! ** 2;
  },
});

/** The resistance at 1 Hz, Pa·s/m³. */
const resistanceAt = (values: Float64Array, at: number): number =>
  (4 * Math.PI ** 2 * values[at]!) / (values[at + 1]! * values[at + 2]!);
