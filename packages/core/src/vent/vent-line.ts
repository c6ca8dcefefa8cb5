import { type Air, readAir, standardAir } from '../air/index.js';
import {
  type AdmittanceKernel,
  compileOpenLine,
  type EndCorrection,
  flanged,
  flangedRadiation,
  type LineEnd,
  type LineSection,
  type Opening,
  type OpenLine,
  type Radiation,
  smallOpening,
} from '../duct/index.js';
import { lineChain } from '../duct/line-chain.js';
import { compileOpenLineMouth } from '../duct/open-line.js';
import { type Fault, refuse } from '../fault/index.js';
import { type Fields, given, optional, readFields } from '../quantity/index.js';
import { flareLength, lengthFaults } from './effective-length.js';
import type { VentGeometry } from './vent-geometry.js';
import { geometry, type VentInput, ventField } from './vent-input.js';

export interface VentLineInput {
  readonly vent: VentInput;
  /** Radiation at the inner end; by default the mass of its end correction, because sound inside a closed box is not lost. */
  readonly innerRadiation?: Radiation | undefined;
  /** Radiation at the outer end; by default that of its end correction in a wide wall. */
  readonly outerRadiation?: Radiation | undefined;
  /** Changes the section; by default the walls cause friction and heat conduction. `withoutLoss` removes both. */
  readonly walls?: ((section: LineSection) => LineSection) | undefined;
}

/** The radiation loads at the two ends of a vent. */
export interface Loads {
  readonly inner: Radiation;
  readonly outer: Radiation;
}

export const ventLineShape = {
  vent: ventField,
  innerRadiation: optional(given<Radiation>()),
  outerRadiation: optional(given<Radiation>()),
  walls: optional(given<(section: LineSection) => LineSection>()),
};

/** Replaces a flare by the mass that it adds to the straight tube, because its length is not part of the line. */
const unflared = (end: EndCorrection): EndCorrection => {
  const { flare } = end;
  if (flare === undefined) return end;
  return Object.assign((opening: Opening, k: number) => end(opening, k) + flare.radius, { sources: end.sources });
};

/** The loads that follow from the end corrections of a vent. The inner end radiates into a solid angle, or not at all. */
export const ventLoads = ({ innerEnd, outerEnd }: VentGeometry, innerAngle?: number): Loads => ({
  inner: smallOpening(unflared(innerEnd), innerAngle),
  outer: outerEnd === flanged ? flangedRadiation : smallOpening(unflared(outerEnd), 2 * Math.PI),
});

/** Geometry of a vent as a line; all faults are reported at once. */
export function ventLine(fields: Fields<typeof ventLineShape>): {
  readonly vent: VentGeometry;
  readonly length: number;
  readonly given: Partial<Loads>;
} {
  const { vent, innerRadiation, outerRadiation, walls } = fields;
  const faults: Fault[] = [];
  const found = geometry(faults, vent);
  faults.push(...lengthFaults(found, vent.length));
  refuse(faults);
  return {
    vent: walls === undefined ? found : { ...found, section: walls(found.section) },
    length: Math.max(0, vent.length - flareLength(found)),
    given: {
      ...(innerRadiation !== undefined && { inner: innerRadiation }),
      ...(outerRadiation !== undefined && { outer: outerRadiation }),
    },
  };
}

/** A vent as a line between its loads. */
export function openVent(vent: VentGeometry, length: number, loads: Loads, air: Air): OpenLine {
  const end = (opening: Opening, radiation: Radiation): LineEnd => ({ opening, radiation });
  return {
    chain: lineChain(vent.section, length, air),
    inner: end(vent.inner, loads.inner),
    outer: end(vent.outer, loads.outer),
    count: vent.count,
  };
}

/**
 * Compiles the admittance of a vent as a lossy, radiating line, seen from the air in the box. Use it to fill a law of a
 * network from the box to `ground`. Unlike a lumped mass it includes the standing waves of the vent, the friction at its
 * walls, and radiation.
 *
 * $$ Y = n\left[j\omega\frac{\rho\,\Delta\ell_{inner}}{S} + \frac{A\,Z_{outer} + B}{C\,Z_{outer} + D}\right]^{-1} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $A, B, C, D$ | `vent` | | chain matrix of its straight part, see `compileLine` |
 * | $\Delta\ell_{inner}$ | `innerEnd` | m | end correction, or that of the flare |
 * | $Z_{outer}$ | `outerRadiation` | Pa·s/m³ | impedance of the air outside |
 * | $n$ | `count` | 1 | number of vents |
 *
 * @validity as `compileLine`; end corrections and flares that are small compared with the wavelength, $k(a + R) \le 0.5$; no
 *   warnings. The flow is that at the inner end. The flow at the mouth is $1/(C\,Z_{outer} + D)$ of it: 10 % more at
 *   $k\ell = 0.5$, and of opposite sign at the first standing wave. For it, use {@link compileVentMouth}.
 * @neglects the modes of the box, the bends, losses that grow with level, coupling between the ends; losses when `walls` is
 *   `withoutLoss`
 * @returns a kernel that fills real and imaginary part, m³/(Pa·s)
 * @throws InputError when it is compiled: `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `inconsistent`, `unknown-field`
 * @source zwikker1949 line constants; dalmont2001 the open end
 * @example compileVentAdmittance({ vent: { diameter: '75 mm', length: '15 cm' } })(frequencies, re, im)
 */
export function compileVentAdmittance(input: VentLineInput, air: Air = standardAir): AdmittanceKernel {
  return compileOpenLine(read(input, air), air);
}

/**
 * Compiles the transfer admittance of a vent: the ratio of the flow at its mouth to the pressure in the box. The air speed in
 * the mouth and the sound of the vent follow from this flow. At the tuning it is slightly greater than the flow of
 * {@link compileVentAdmittance}.
 *
 * $$ Y_{mouth} = n\left[j\omega\frac{\rho\,\Delta\ell_{inner}}{S}\,(C\,Z_{outer} + D) + A\,Z_{outer} + B\right]^{-1} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $A, B, C, D$ | `vent` | | chain matrix of its straight part, see `compileLine` |
 * | $\Delta\ell_{inner}$ | `innerEnd` | m | end correction, or that of the flare |
 * | $Z_{outer}$ | `outerRadiation` | Pa·s/m³ | impedance of the air outside |
 * | $n$ | `count` | 1 | number of vents |
 *
 * @validity as {@link compileVentAdmittance}
 * @neglects the modes of the box, the bends, losses that grow with level, coupling between the ends
 * @returns a kernel that fills real and imaginary part, m³/(Pa·s)
 * @throws InputError when it is compiled: `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `inconsistent`, `unknown-field`
 * @source zwikker1949 line constants; dalmont2001 the open end
 * @example compileVentMouth({ vent: { diameter: '75 mm', length: '15 cm' } })(frequencies, re, im)
 */
export function compileVentMouth(input: VentLineInput, air: Air = standardAir): AdmittanceKernel {
  return compileOpenLineMouth(read(input, air), air);
}

function read(input: VentLineInput, air: Air): OpenLine {
  readAir(air);
  const { vent, length, given: own } = ventLine(readFields('', input, ventLineShape));
  return openVent(vent, length, { ...ventLoads(vent), ...own }, air);
}
