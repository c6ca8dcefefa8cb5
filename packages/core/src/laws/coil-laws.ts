import type { CoilModel } from '../driver/index.js';
import { branch, compileNetwork, type Network, type Nodes } from '../network/index.js';
import { complexColumn } from '../numeric/index.js';
import { type LawResult, tried } from './law.js';
import { lawElementLaws } from './law-element-laws.js';
import { filledBy, lackingPart, modelLaws, overBand, scaledFault, valueAt } from './model-laws.js';

/** Factors that no formula has by accident. */
const [IMPEDANCE, TIME] = [2.7, 0.37] as const;
/** Names that the other parts of a driver have. */
const taken = ['Re', 'Bl', 'Mms', 'Rms', 'Cms', 'Sd', 'coil', 'suspension'];
/** rad/s, far below anything that is heard. */
const slow = [1e-3, 1e-6, 1e-9, 1e-12];

/**
 * The laws of every coil model, ours and a stranger's.
 *
 * What a coil has besides Re gives no power, stores energy as a coil does (its reactance is not negative, with exp(+jωt)), and
 * vanishes towards direct current, where Re is all that there is: the reference level leaves it out on these grounds
 * (@source desoer1969 ch. 9; small1972direct). Since Z(−ω) is the conjugate of Z(ω), only ω above 0 is asked. Its
 * slopes are the derivatives of its impedance. Scaled, it is the same coil in other units, as groups and other systems of units
 * need it. It stands in a network as what its formula says, as a circuit or as an element over frequency.
 *
 * @validity parameters for which the model is meant
 * @neglects whether the formula describes a real coil, which no numbers can show
 * @returns one result for each law
 * @source desoer1969 (positive real functions)
 * @example coilLaws(lossyInductor({ K: 0.02, exponent: 0.7 })).every(({ holds }) => holds)
 */
export function coilLaws(model: CoilModel): readonly LawResult[] {
  const { parameters, impedance, scaled, circuit, element } = model;
  const lacking = lackingPart(model, { impedance, scaled });
  if (lacking) return lacking;
  const filled = filledBy(model, impedance);
  const law = element?.('tried', ['a', 'b']);
  const over = (name: string, judge: Parameters<typeof overBand>[1]) =>
    tried(name, '4 decades', () => overBand(filled, judge));
  return [
    ...modelLaws(model),
    over('finite, and the same at each call', () => undefined),
    over('a coil gives no power', (re, im, w) =>
      re >= -1e-12 * Math.abs(im) ? undefined : `its resistance is ${re} Ω at ${w} rad/s`,
    ),
    over('a coil stores as a coil does', (re, im, w) =>
      im >= -1e-12 * Math.abs(re) ? undefined : `its reactance is ${im} Ω at ${w} rad/s`,
    ),
    tried('nothing but Re for direct current', 'down to 1e-12 rad/s', () => vanishingFault(filled)),
    tried('changes nothing that it reads', 'once', () => {
      const given = Float64Array.from(Object.values(parameters));
      const own = given.slice();
      impedance(own, 100, new Float64Array(2));
      return own.every((value, i) => Object.is(value, given[i])) ? undefined : 'its parameters are changed';
    }),
    tried('scaled, it is the same coil', 'impedance and time', () => {
      const other = scaled(IMPEDANCE, TIME);
      return scaledFault(filled, filledBy(other, other.impedance), IMPEDANCE, TIME);
    }),
    tried('stands in a network', 'once', () =>
      (circuit === undefined) === (element === undefined)
        ? 'it needs a circuit or an element, one of the two'
        : undefined,
    ),
    tried('its circuit is its impedance', `${circuit?.length ?? 0} branches`, () => circuitFault(model)),
    ...(law ? lawElementLaws(law, { values: Object.values(parameters) }) : []),
    tried('its element is its impedance', law ? '4 decades' : 'it has none', () => {
      if (law === undefined) return undefined;
      if (law.stands !== 'impedance') return 'it stands as an admittance';
      if (law.inReference !== false) return 'it plays in the reference level';
      return overBand(filled, (re, im, w) => {
        const out = complexColumn(1);
        law.fill(Float64Array.from(Object.values(parameters)), 0, Float64Array.of(w / (2 * Math.PI)), out);
        return unlike(re, im, out.re[0]!, out.im[0]!, w);
      });
    }),
  ];
}

const unlike = (re: number, im: number, x: number, y: number, w: number): string | undefined =>
  Math.hypot(re - x, im - y) <= 1e-9 * Math.hypot(re, im)
    ? undefined
    : `it is ${x} + ${y} j in a network, not ${re} + ${im} j, at ${w} rad/s`;

/** An impedance that vanishes falls by a tenth or more in each three decades. */
function vanishingFault(filled: Parameters<typeof valueAt>[0]): string | undefined {
  let before = Infinity;
  for (const w of slow) {
    const value = valueAt(filled, w);
    if (typeof value === 'string') return value;
    const size = Math.hypot(...value);
    if (size > 0.9 * before) return `it is ${size} Ω at ${w} rad/s`;
    before = size;
  }
  return undefined;
}

function circuitFault(model: CoilModel): string | undefined {
  const { parameters, circuit } = model;
  if (circuit === undefined) return undefined;
  const used = circuit.map(({ parameter }) => parameter).sort();
  const names = Object.keys(parameters).sort();
  if (used.join() !== names.join())
    return `its branches are ${used.join(', ')}, and its parameters ${names.join(', ')}`;
  const clash = names.find((name) => taken.includes(name));
  if (clash !== undefined) return `${clash} is the name of another part of a driver`;
  // A resistance of 1 Ω before it, so that its current tells the impedance.
  const joint = (at: number) => (at === 0 ? 'coil' : at === 1 ? 'ground' : `joint ${at}`);
  const nodes = ([a, b]: readonly [number, number]): Nodes => [joint(a), joint(b)];
  const network: Network = {
    topology: {
      elements: [
        { kind: 'source', name: 'drive', nodes: ['drive', 'ground'] },
        branch('resistor', 'before', ['drive', 'coil']),
        ...circuit.map(({ kind, parameter, joints }) =>
          branch(kind, parameter, nodes(joints), kind === 'inductor' ? { stands: 'impedance' } : {}),
        ),
      ],
      probes: { current: { of: 'flow', element: 'drive' }, voltage: { of: 'potential', node: 'coil' } },
      outlets: [],
    },
    values: { before: 1, ...parameters },
  };
  const { sweep, probes } = compileNetwork(network);
  const columns = probes.map(() => complexColumn(1));
  const [i, v] = [probes.indexOf('current'), probes.indexOf('voltage')].map((k) => columns[k]!) as [
    (typeof columns)[number],
    (typeof columns)[number],
  ];
  return overBand(filledBy(model, model.impedance), (re, im, w) => {
    if (sweep(Float64Array.of(w / (2 * Math.PI)), columns) >= 0) return `nothing flows at ${w} rad/s`;
    const [a, b, c, d] = [v.re[0]!, v.im[0]!, i.re[0]!, i.im[0]!];
    const size = c * c + d * d;
    return unlike(re, im, (a * c + b * d) / size, (b * c - a * d) / size, w);
  });
}
