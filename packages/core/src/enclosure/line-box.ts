import { type Air, standardAir } from '../air/index.js';
import { ductElement, ductValues } from '../duct/index.js';
import { type Fault, refuse } from '../fault/index.js';
import { branch, compile, type Element, losslessLine, type Outlet, type Probe } from '../network/index.js';
import {
  given,
  type Length,
  type LengthInput,
  notNegative,
  optional,
  type Resistance,
  readFieldsInto,
} from '../quantity/index.js';
import { NANOMETRE } from '../quantity/nanometre.js';
import { type DrivenInput, type DrivenSpec, drivenShape } from './driven.js';
import { asGroup, directRadiator, setDirectRadiator } from './driver-parts.js';
import { type Family, type System, systemOf } from './family.js';
import {
  areaIn,
  type LineOpeningInput,
  type LineOpeningSpec,
  type LinePartInput,
  type LinePartSpec,
  lengthOf,
  readOpening,
  readParts,
  refuseBeyond,
  stretchesOf,
  taperOf,
} from './line-parts.js';

/** A driver in a line, as people write it. */
export interface LineBoxInput extends DrivenInput {
  /** The parts of the line, from its start. */
  readonly parts: readonly LinePartInput[];
  /** Distance of the driver from the start; default 0. */
  readonly driverAt?: LengthInput;
  /** Its opening; `{}` opens the far end. Without it the line is closed. */
  readonly opening?: LineOpeningInput;
}

/** A driver in a line after reading, in SI units. */
export interface LineBoxSpec extends DrivenSpec {
  readonly parts: readonly LinePartSpec[];
  readonly driverAt: Length;
  readonly opening?: LineOpeningSpec;
}

const shape = {
  ...drivenShape,
  parts: given<unknown>(),
  driverAt: optional(notNegative('length')),
  opening: optional(given<unknown>()),
};

function read(input: LineBoxInput | LineBoxSpec): LineBoxSpec {
  const faults: Fault[] = [];
  const fields = readFieldsInto(faults, 'box', input, shape);
  const parts = fields && readParts(faults, fields.parts);
  const driverAt = fields?.driverAt ?? (0 as Length);
  if (parts) refuseBeyond(faults, 'box.driverAt', driverAt, lengthOf(parts));
  const opening = parts && fields?.opening !== undefined ? readOpening(faults, fields.opening, parts) : undefined;
  refuse(faults);
  return {
    drivers: asGroup(fields!.drivers),
    sourceResistance: fields!.sourceResistance ?? (0 as Resistance),
    parts: parts as readonly LinePartSpec[],
    driverAt,
    ...(opening && { opening }),
  };
}

const isAt = (one: number, other: number) => Math.abs(one - other) <= NANOMETRE;

/** The stretches of a line between joints, driver and opening. */
const cutAt = ({ parts, driverAt, opening }: LineBoxSpec) =>
  stretchesOf(parts, opening === undefined ? [driverAt] : [driverAt, opening.at]);

const nameOf = (i: number) => `duct ${i + 1}`;

/** The stretches, each with its name and the nodes at its ends. */
function stretches(spec: LineBoxSpec) {
  const { driverAt, opening } = spec;
  const node = (at: number, i: number) =>
    isAt(at, driverAt) ? 'box' : opening !== undefined && isAt(at, opening.at) ? 'mouth' : `line ${i}`;
  return cutAt(spec).map((one, i) => ({
    ...one,
    name: nameOf(i),
    nodes: [node(one.start, i), node(one.start + one.to - one.from, i + 1)] as const,
  }));
}

/** A uniform part without loss has a closed form, which a circuit simulator knows too. */
const isLossless = (part: LinePartSpec) =>
  part.wallLoss === 0 && part.flowResistivity === 0 && taperOf(part).far === part.area;

/** The family of lines: the air behind the cone is a duct along which waves travel. */
export const lineFamily: Family<LineBoxSpec, LineBoxInput> = {
  name: 'line',
  compile,
  read,
  topology: (spec) => {
    const { drivers, sourceResistance, driverAt, opening } = spec;
    const { elements, probes, cone } = directRadiator(drivers.equivalent, sourceResistance);
    const ducts = stretches(spec).map(({ name, nodes, part }) =>
      isLossless(part) ? losslessLine(name, nodes) : ductElement(name, nodes, taperOf(part).taper),
    );
    if (opening === undefined) return { elements: [...elements, ...ducts], probes, outlets: [cone] };
    const inside = isAt(opening.at, driverAt) ? 'box' : 'mouth';
    const air: Element = branch('acousticMass', 'opening', [inside, 'ground'], { stands: 'impedance' });
    const speed: Probe = { of: 'flow', element: 'opening', factor: 'perOpeningArea' };
    const delay = opening.path === undefined ? {} : { delay: 'openingDelay' };
    const mouth: Outlet = { name: 'opening', flow: { of: 'flow', element: 'opening' }, ...delay };
    return {
      elements: [...elements, ...ducts, air],
      probes: { ...probes, ventAirSpeed: speed },
      outlets: [cone, mouth],
    };
  },
  values: (spec, air, set) => {
    const { drivers, sourceResistance, opening } = spec;
    setDirectRadiator(drivers.equivalent, sourceResistance, set);
    cutAt(spec).forEach(({ part, from, to }, i) => {
      const name = nameOf(i);
      const { wallLoss, flowResistivity } = part;
      const length = to - from;
      if (isLossless(part)) {
        set(name, (air.density * air.speedOfSound) / part.area, length / air.speedOfSound);
        return;
      }
      const areas = { area: areaIn(part, from), endArea: areaIn(part, to) };
      set(name, ...ductValues({ ...areas, length, wallLoss, flowResistivity }, air));
    });
    if (opening === undefined) return;
    const { area, endCorrection, path } = opening;
    set('opening', (air.density * endCorrection) / area);
    set('perOpeningArea', 1 / area);
    if (path !== undefined) set('openingDelay', path / air.speedOfSound);
  },
};

/**
 * A driver or a group in a line, as a network: a quarter-wave pipe, a transmission line with or without a fill, a pipe that
 * widens or narrows. The cone plays into the line at any place, and the line is open at its far end or anywhere, or closed.
 *
 * $$ \frac{U}{U_d} = 1 - \frac{1}{\cos kL},\qquad Z = j\,\frac{\rho c}{S}\tan kL,\qquad f_n = (2n - 1)\,\frac{c}{4L} $$
 *
 * This is what the network gives for a uniform line without loss, closed at the cone and open at its far end, where the air
 * in front of the opening is part of the length L. It is checked in tests, not used here.
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $U, U_d$ | | m³/s | flow out of the system, and of the cone |
 * | $S, L$ | `parts` | m², m | cross-section and length |
 * | $k$ | | rad/m | $2\pi f/c$ |
 * | $Z$ | | Pa·s/m³ | load on the rear of the cone |
 * | $f_n$ | | Hz | frequencies at which the cone is held nearly still, and the opening plays |
 *
 * The probe `ventAirSpeed` is the mean over the opening.
 *
 * @validity waves longer than the width of the line, see `ductElement`; a fill in the range of `withFill`; small signals
 * @neglects bends and folds, flexing walls, radiation resistance, the added mass at steps of the section
 * @throws InputError
 * @returns the system, its spec in SI units
 * @source morse1968 (transmission line of a tube); zwikker1949 line constants and fill
 * @example lineBox({ drivers: driver, parts: [{ length: '2.4 m', area: '200 cm²' }], opening: {} })
 */
export const lineBox = (input: LineBoxInput | LineBoxSpec, air: Air = standardAir): System<LineBoxSpec> =>
  systemOf(lineFamily, input, air);
