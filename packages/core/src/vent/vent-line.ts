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
  /** At the inner end; default the mass of its end correction: what goes into a closed box is not lost. */
  readonly innerRadiation?: Radiation | undefined;
  /** At the outer end; default that of its end in a wide wall. */
  readonly outerRadiation?: Radiation | undefined;
  /** What the walls do to the air; default friction and heat. `withoutLoss` takes both away. */
  readonly walls?: ((section: LineSection) => LineSection) | undefined;
}

/** How the ends of a vent are loaded where its caller does not say. */
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

/** A flare is the mass that it has beyond the straight tube; its length is not part of the line. */
const unflared = (end: EndCorrection): EndCorrection => {
  const { flare } = end;
  if (flare === undefined) return end;
  return Object.assign((opening: Opening, k: number) => end(opening, k) + flare.radius, { sources: end.sources });
};

/** Loads of a vent as its end corrections say; the inner end radiates into a solid angle, or not at all. */
export const ventLoads = ({ innerEnd, outerEnd }: VentGeometry, innerAngle?: number): Loads => ({
  inner: smallOpening(unflared(innerEnd), innerAngle),
  outer: outerEnd === flanged ? flangedRadiation : smallOpening(unflared(outerEnd), 2 * Math.PI),
});

/** Geometry of the vent of a line, with all faults at once. */
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
 * Compiles a vent as a lossy line that radiates: its admittance for the air in the box, what a law of a network from
 * the box to `ground` is filled with. It has the standing waves of the vent, the friction at its walls, and what is
 * radiated; a lumped mass has none of them.
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
 * @validity as `compileLine`; end corrections and flares small against the wavelength, $k(a + R) \le 0.5$; no warnings.
 * @neglects the modes of the box, the bends, loss that grows with level, what the ends radiate onto each other. Its flow is
 *   that of the inner end; out of the mouth goes $1/(C\,Z_{outer} + D)$ of it, 10 % more at $k\ell = 0.5$, and turned round at
 *   the first standing wave: see {@link compileVentMouth}. Without loss where `walls` is `withoutLoss`.
 * @returns a kernel that fills real and imaginary part, m³/(Pa·s)
 * @throws InputError when it is compiled: `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `inconsistent`, `unknown-field`
 * @source zwikker1949 line constants; dalmont2001 the open end
 * @example compileVentAdmittance({ vent: { diameter: '75 mm', length: '15 cm' } })(frequencies, re, im)
 */
export function compileVentAdmittance(input: VentLineInput, air: Air = standardAir): AdmittanceKernel {
  return compileOpenLine(read(input, air), air);
}

/**
 * Compiles what leaves a vent at its mouth: the flow there over the pressure in the box. The air speed in the mouth and
 * the sound it makes follow from it; at the tuning it is the flow of {@link compileVentAdmittance}, and a little more.
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
 * @neglects the modes of the box, the bends, loss that grows with level, what the ends radiate onto each other
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
