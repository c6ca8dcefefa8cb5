import type { System } from '../enclosure/index.js';
import type { Network } from '../network/index.js';
import { logarithmicGrid } from '../quantity/index.js';
import { compiledSystem, type ProbeColumns, probeColumns, radiatedPower } from '../response/index.js';
import { broken, holds, type LawResult, tried } from './law.js';

/** Powers of metre, kilogram, second and ampere. */
type Dimension = readonly [m: number, kg: number, s: number, A: number];

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

/** Factors that no chance gives twice: a slip in any dimension shows. */
const factors = [1.7, 0.6, 2.3, 1.3] as const;
const by = (dimension: Dimension) =>
  dimension.reduce((product, power, i) => product * (factors[i] as number) ** power, 1);

/** The one number that a family put in for an element. */
const numberOf = ({ values }: Network, name: string): number | undefined => {
  const value = values[name];
  return typeof value === 'number' ? value : undefined;
};

/** What a family's laws are tried on. */
export interface FamilyTrial<Spec> {
  readonly family: (spec: Spec) => System;
  readonly spec: Spec;
  /**
   * The same spec in another system of units: each number times its factor for metre, kilogram, second, ampere. Left out:
   * scaling is not tried.
   */
  readonly rescaled?: (by: (dimension: Dimension) => number) => System;
  /** Frequencies that must be answered, such as the tuning itself, Hz. */
  readonly frequencies?: readonly number[];
}

const needed = ['radiatedFlow', 'coneVelocity', 'current', 'terminalVoltage'];

/**
 * What every box family must obey, ours and a stranger's: the probes that the response reads, an answer at every frequency,
 * passivity (no power out of the terminals, no more sound power than is put in), a spec that survives JSON, the same answer
 * twice, and values that scale as their units say.
 *
 * @example for (const { law, holds, detail } of systemLaws({ family: mine, spec })) console.log(law, holds, detail)
 */
export function systemLaws<Spec>({
  family,
  spec,
  rescaled,
  frequencies = [],
}: FamilyTrial<Spec>): readonly LawResult[] {
  const grid = Float64Array.from([...logarithmicGrid(2, 2000, 301), ...frequencies].sort((a, b) => a - b));
  const swept = (): { system: System; columns: ProbeColumns } => {
    const system = family(spec);
    return { system, columns: probeColumns(compiledSystem(system), grid) };
  };
  const each = (law: string, fails: (columns: ProbeColumns, i: number, system: System) => string | undefined) =>
    tried(law, () => {
      const { system, columns } = swept();
      for (let i = 0; i < grid.length; i++) {
        const found = fails(columns, i, system);
        if (found !== undefined) return broken(law, `${found} at ${grid[i]} Hz`);
      }
      return holds(law, `${grid.length} frequencies`);
    });
  /** Real power at the terminals for 1 V, W. */
  const power = ({ terminalVoltage: e, current: i }: ProbeColumns, k: number): number =>
    !e || !i ? 0 : (e.re[k] as number) * (i.re[k] as number) + (e.im[k] as number) * (i.im[k] as number);

  return [
    tried('probes are there', () => {
      const there = compiledSystem(family(spec)).probes;
      const missing = needed.filter((name) => !there.some((probe) => probe === name || probe.startsWith(`${name} `)));
      return missing.length === 0
        ? holds('probes are there', needed.join(', '))
        : broken('probes are there', `no ${missing.join(', ')}`);
    }),
    each('answers at every frequency', (columns, i) => {
      const bad = Object.entries(columns).find(
        ([, { re, im }]) => !Number.isFinite((re[i] as number) + (im[i] as number)),
      );
      return bad && `${bad[0]} is not a number`;
    }),
    each('takes power, gives none', (columns, i) => {
      const taken = power(columns, i);
      const size = Math.hypot(columns.current?.re[i] ?? 0, columns.current?.im[i] ?? 0);
      return taken >= -1e-9 * size ? undefined : `the terminals give ${-taken} W per V²`;
    }),
    each('radiates no more than it takes', (columns, i, { air }) => {
      const flow = Math.hypot(columns.radiatedFlow?.re[i] ?? 0, columns.radiatedFlow?.im[i] ?? 0);
      const f = grid[i] as number;
      // Without radiation resistance the far field is an estimate: only where the source is small is it asked for.
      if (f > 100) return undefined;
      const [out, taken] = [radiatedPower(flow, f, air), power(columns, i)];
      return out <= taken * (1 + 1e-9) ? undefined : `${out} W of sound from ${taken} W`;
    }),
    tried('spec survives JSON', () => {
      const kept = family(spec).spec;
      const [before, after] = [JSON.stringify(kept), JSON.stringify(JSON.parse(JSON.stringify(kept)))];
      return before === after && same(kept, JSON.parse(before))
        ? holds('spec survives JSON', `${before.length} characters`)
        : broken('spec survives JSON', 'a field is lost or changed');
    }),
    tried('same spec, same system', () => {
      const [one, two] = [family(spec), family(spec)].map(({ network }) => JSON.stringify(network.values));
      return one === two ? holds('same spec, same system', 'twice') : broken('same spec, same system', 'values differ');
    }),
    ...(rescaled === undefined
      ? []
      : [tried('values scale as their units', () => scaling(family(spec), rescaled(by)))]),
  ];
}

function scaling(one: System, other: System): LawResult {
  const law = 'values scale as their units';
  const { elements } = one.network.topology;
  for (const element of elements) {
    const [value, scaled] = [numberOf(one.network, element.name), numberOf(other.network, element.name)];
    if (value === undefined) continue;
    const expected = value * by(elementDimensions[element.kind] as Dimension);
    if (scaled === undefined || Math.abs(scaled - expected) > 1e-9 * Math.abs(expected)) {
      return broken(law, `${element.name} is ${scaled}, and should be ${expected}`);
    }
  }
  return holds(law, `${elements.length} elements`);
}

/** Deep equality of plain records. */
function same(a: unknown, b: unknown): boolean {
  if (typeof a !== 'object' || a === null || typeof b !== 'object' || b === null) return Object.is(a, b);
  const names = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...names].every((name) => same((a as Record<string, unknown>)[name], (b as Record<string, unknown>)[name]));
}
