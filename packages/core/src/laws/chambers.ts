import type { System } from '../enclosure/index.js';
import type { Branch, Element } from '../network/index.js';
import { drivenAir } from './acoustic-exits.js';
import { motorsOf, numbersAt } from './family-motors.js';
import { numberOf } from './family-trial.js';
import { recordsIn } from './plain-record.js';

/** What a spec may state of the air of a box. */
type Stated = 'fb' | 'QL' | 'QA' | 'QP';

/** One spring of air, the volume that is stated for it, and its tuning and losses: stated, and found in the network. */
export interface Chamber {
  readonly compliance: string;
  readonly volume: number | undefined;
  readonly stated: Readonly<Partial<Record<Stated, number>>>;
  readonly found: Readonly<Partial<Record<Stated, number>>>;
}

/** The springs of air of a network, each with the record of the spec that states a `netVolume`, in the order of both. */
export function chambersOf(system: System, netVolumes: readonly number[] | undefined): readonly Chamber[] {
  const { elements } = system.network.topology;
  const compliances = elements.filter((one): one is Branch => one.kind === 'acousticCompliance');
  const records = recordsIn(system.spec).filter(({ record }) => typeof record.netVolume === 'number');
  const isMatched = compliances.length === records.length;
  return compliances.map((one, i) => {
    const record = isMatched ? records[i]?.record : undefined;
    const gain = typeof record?.fillGain === 'number' ? record.fillGain : 1;
    const own = record && (record.netVolume as number) * gain;
    const stated = Object.fromEntries(
      (['fb', 'QL', 'QA', 'QP'] as const).flatMap((name) => {
        const value = record?.[name];
        return typeof value === 'number' ? [[name, value]] : [];
      }),
    );
    return {
      compliance: one.name,
      volume: netVolumes === undefined ? own : netVolumes[i],
      stated,
      found: foundAt(system, one, stated),
    };
  });
}

/** Tuning and quality factors of a spring of air with one mass, or with the cone of one driver: what Q is counted at. */
function foundAt(system: System, compliance: Branch, { fb }: Chamber['stated']): Chamber['found'] {
  const { topology } = system.network;
  const driven = drivenAir(topology, new Set([compliance.name]));
  const [box, inner] = driven.has(compliance.nodes[0]) ? compliance.nodes : [compliance.nodes[1], compliance.nodes[0]];
  const at = (node: string, kind: Element['kind']) =>
    topology.elements.filter((one): one is Branch => one.kind === kind && 'nodes' in one && one.nodes.includes(node));
  const number = ({ name }: Branch) => numberOf(system, name);
  const Cab = number(compliance);
  const [vent, ...others] = at(box, 'acousticMass');
  const tuned = fb === undefined ? closedResonance(system, box, Cab) : 2 * Math.PI * fb;
  if (tuned === undefined || others.length > 0) return {};
  const leaks = at(box, 'acousticResistance').filter(({ nodes }) => nodes.includes('ground'));
  const absorption = inner === 'ground' ? [] : at(inner, 'acousticResistance');
  const mouth = vent?.nodes.find((node) => node !== box);
  const losses = vent === undefined || mouth === undefined || mouth === 'ground' ? [] : at(mouth, 'acousticResistance');
  const only = (list: readonly Branch[], quality: (resistance: number) => number) =>
    list.length === 1 ? quality(number(list[0] as Branch)) : undefined;
  const [QL, QA, QP] = [
    only(leaks, (R) => tuned * Cab * R),
    only(absorption, (R) => 1 / (tuned * Cab * R)),
    only(losses, (R) => (tuned * number(vent as Branch)) / R),
  ];
  return {
    ...(vent !== undefined && { fb: 1 / (2 * Math.PI * Math.sqrt(number(vent) * Cab)) }),
    ...(QL !== undefined && { QL }),
    ...(QA !== undefined && { QA }),
    ...(QP !== undefined && { QP }),
  };
}

/** Resonance of the one cone that plays into a box, on its suspension and on the air, rad/s; nothing for several. */
function closedResonance(system: System, box: string, Cab: number): number | undefined {
  const { topology } = system.network;
  const behind = motorsOf(topology).filter(({ mechanical }) =>
    topology.elements.some(
      (one) =>
        one.kind === 'piston' &&
        [one.front, one.rear].includes(box) &&
        one.mechanical.some((node) => node !== 'ground' && mechanical.includes(node)),
    ),
  );
  if (behind.length !== 1) return undefined;
  const { Cms = 0, Mms = 0, Sd = 0 } = numbersAt(system, behind[0] as (typeof behind)[number]);
  return Math.sqrt((1 / Cms + Sd ** 2 / Cab) / Mms);
}
