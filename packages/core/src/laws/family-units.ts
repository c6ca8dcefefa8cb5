import { type System, systemOf } from '../enclosure/index.js';
import { compileNetwork } from '../network/index.js';
import { logarithmicGrid } from '../quantity/index.js';
import { type ProbeColumns, probeColumns } from '../response/index.js';
import { columnsOf, numberOf, type Tried } from './family-trial.js';
import { alikeNumbers, type LawResult, tried } from './law.js';
import type { By, Dimension } from './rescaling.js';

const elementDimensions: Readonly<Record<string, Dimension>> = {
  resistor: [2, 1, -3, -2],
  inductor: [2, 1, -2, -2],
  capacitor: [-2, -1, 4, 2],
  mass: [0, 1, 0, 0],
  spring: [0, -1, 2, 0],
  damper: [0, 1, -1, 0],
  acousticMass: [-4, 1, 0, 0],
  acousticCompliance: [4, -1, 2, 0],
  acousticResistance: [-4, 1, -1, 0],
  motor: [1, 1, -2, -1],
  piston: [2, 0, 0, 0],
};

const perVolt: Dimension = [-2, -1, 3, 1];
/** What the probes that the response reads have per volt of drive. */
const probeDimensions: Readonly<Record<string, Dimension>> = {
  radiatedFlow: [3, 0, -1, 0],
  coneVelocity: [1, 0, -1, 0],
  current: [0, 0, 0, 1],
  terminalVoltage: [2, 1, -3, -1],
  ventAirSpeed: [1, 0, -1, 0],
};

/** Factors without simple ratios, so that a mistake in any dimension shows. */
const factors = [1.7, 0.6, 2.3, 1.3] as const;
const by: By = (dimension) => dimension.reduce((product, power, i) => product * factors[i]! ** power, 1);

/**
 * Each number, and each result, is tried in another system of units, because no law of physics depends on the metre. A constant
 * that is hidden in a formula, or a litre taken for a cubic metre, does not scale.
 * The topology contains no number: with the numbers of the other spec it gives the results of that spec.
 */
export function unitLaws<Spec, Input>({ trial, system, grid }: Tried<Spec, Input>): readonly LawResult[] {
  const { rescaled, family } = trial;
  if (rescaled === undefined) return [];
  const other = (): System => {
    const { spec, air } = rescaled(by);
    return systemOf(family, spec, air);
  };
  return [
    tried('the topology contains no number', 'swept with the numbers of another spec', () => {
      const [one, two] = [system(), other()];
      const frequencies = logarithmicGrid(5, 500, 31);
      const [own, lent] = [two.network.topology, one.network.topology].map((topology) =>
        probeColumns(compileNetwork({ topology, values: two.network.values }), frequencies),
      ) as [ProbeColumns, ProbeColumns];
      const apart = Object.entries(own).find(([name, { re, im }]) =>
        re.some((value, i) => {
          const [a, b] = [lent[name]!.re[i]!, lent[name]!.im[i]!];
          return !(Math.hypot(value - a, im[i]! - b) <= 1e-9 * Math.hypot(a, b));
        }),
      );
      return apart && `${apart[0]} differs`;
    }),
    tried('values scale with the units', 'every element', () => {
      const [one, two] = [system(), other()];
      for (const { name, kind } of one.network.topology.elements) {
        const dimension = elementDimensions[kind];
        if (dimension === undefined) continue;
        const [expected, scaled] = [numberOf(one, name) * by(dimension), numberOf(two, name)];
        if (!alikeNumbers(expected, scaled)) return `${name} is ${scaled}, but should be ${expected}`;
      }
      return undefined;
    }),
    tried('results scale with the units', `${grid.length} frequencies`, () => {
      const frequencies = logarithmicGrid(5, 500, 61);
      const hertz = by([0, 0, -1, 0]);
      const one = columnsOf(system(), frequencies);
      const two = columnsOf(
        other(),
        frequencies.map((f) => f * hertz),
      );
      for (const [name, { re, im }] of Object.entries(one)) {
        const dimension = probeDimensions[name.split(' ')[0] as string];
        const same = two[name];
        if (dimension === undefined || same === undefined) continue;
        const factor = by(dimension) * by(perVolt);
        for (let i = 0; i < frequencies.length; i++) {
          const [a, b] = [factor * re[i]!, factor * im[i]!];
          const apart = Math.hypot(a - same.re[i]!, b - same.im[i]!);
          if (!(apart <= 1e-8 * Math.hypot(a, b))) return `${name} does not at ${frequencies[i]} Hz`;
        }
      }
      return undefined;
    }),
  ];
}
