import type { System } from '../enclosure/index.js';
import type { Branch, Element } from '../network/index.js';
import { decimalText } from '../quantity/index.js';
import { drivenAir } from './acoustic-exits.js';
import { motorsOf, numbersAt } from './family-motors.js';
import { numberOf, type StatedChamber } from './family-trial.js';
import { recordsIn } from './plain-record.js';

/** What a spec may state of the air of a box. */
type Stated = 'fb' | 'QL' | 'QA' | 'QP';

/** One spring of air, the volume that is stated for it, and its tuning and losses: stated, and found in the network. */
export interface Chamber {
  readonly compliance: string;
  /** The name of the record of the spec that states its volume. */
  readonly name: string | undefined;
  /** The node of its air. */
  readonly box: string;
  /** Its only mass of air, if it has one. */
  readonly vent: string | undefined;
  /** Narrowest cross-section of its vent, m², where that is stated. */
  readonly ventArea: number | undefined;
  readonly volume: number | undefined;
  readonly stated: Readonly<Partial<Record<Stated, number>>>;
  readonly found: Readonly<Partial<Record<Stated, number>>>;
  /** The frequency at which the losses are counted, and what it is; left out where nothing is found. */
  readonly countedAt?: string;
}

/** The springs of air of a network, each with the record of the spec or of the trial that states a `netVolume`, in the order of both. */
export function chambersOf(system: System, handedIn: readonly StatedChamber[] | undefined): readonly Chamber[] {
  const { elements } = system.network.topology;
  const compliances = elements.filter((one): one is Branch => one.kind === 'acousticCompliance');
  const records: readonly { readonly name?: string; readonly record: Readonly<Record<string, unknown>> }[] =
    handedIn?.map((record) => ({ record })) ??
    recordsIn(system.spec).filter(({ record }) => typeof record.netVolume === 'number');
  const isMatched = compliances.length === records.length;
  return compliances.map((one, i) => {
    const { name = undefined, record = undefined } = (isMatched ? records[i] : undefined) ?? {};
    const number = (field: string) => (typeof record?.[field] === 'number' ? record[field] : undefined);
    const netVolume = number('netVolume');
    const air = airOf(system, one);
    const stated = Object.fromEntries(
      (['fb', 'QL', 'QA', 'QP'] as const).flatMap((field) => {
        const value = number(field);
        return value === undefined ? [] : [[field, value]];
      }),
    );
    return {
      compliance: one.name,
      name,
      box: air.box,
      vent: air.masses.length === 1 ? air.masses[0]?.name : undefined,
      ventArea: number('ventArea'),
      volume: netVolume === undefined ? undefined : netVolume * (number('fillGain') ?? 1),
      stated,
      ...foundAt(system, one, air, stated),
    };
  });
}

/** The air of a spring: its node, the one beyond the spring, and the masses that move at it. */
function airOf({ network: { topology } }: System, { name, nodes: [a, b] }: Branch) {
  const [box, inner] = drivenAir(topology, new Set([name])).has(a) ? [a, b] : [b, a];
  const at = (node: string, kind: Element['kind']) =>
    topology.elements.filter((one): one is Branch => one.kind === kind && 'nodes' in one && one.nodes.includes(node));
  return { box, inner, at, masses: at(box, 'acousticMass') };
}

/** Tuning and quality factors of a spring of air with one mass, or with the cone of one driver: what Q is counted at. */
function foundAt(
  system: System,
  compliance: Branch,
  { box, inner, at, masses: [vent, ...others] }: ReturnType<typeof airOf>,
  { fb }: Chamber['stated'],
): Pick<Chamber, 'found' | 'countedAt'> {
  const number = ({ name }: Branch) => numberOf(system, name);
  const Cab = number(compliance);
  const tuned = fb === undefined ? closedResonance(system, box, Cab) : 2 * Math.PI * fb;
  const mouth = vent?.nodes.find((node) => node !== box) ?? 'ground';
  // An element over frequency at this air may take the part of any resistance or mass.
  const own = [box, inner, mouth].filter((node) => node !== 'ground');
  const isLumped = system.network.topology.elements.every(
    (one) => (one.kind !== 'law' && one.kind !== 'line') || !one.nodes.some((node) => own.includes(node)),
  );
  if (tuned === undefined || !isLumped) return { found: {} };
  const toGround = (node: string) =>
    node === 'ground' ? [] : at(node, 'acousticResistance').filter(({ nodes }) => nodes.includes('ground'));
  /** The quality factor of a resistance that stands alone; NaN where there is none, or more than one. */
  const only = (list: readonly Branch[], quality: (resistance: number) => number) =>
    list.length === 1 ? quality(number(list[0] as Branch)) : Number.NaN;
  const found = {
    ...(others.length === 0 && {
      fb: vent === undefined ? Number.NaN : 1 / (2 * Math.PI * Math.sqrt(number(vent) * Cab)),
    }),
    QL: only(toGround(box), (R) => tuned * Cab * R),
    QA: only(toGround(inner), (R) => 1 / (tuned * Cab * R)),
    ...(others.length === 0 && {
      QP: only(mouth === 'ground' ? [] : at(mouth, 'acousticResistance'), (R) => (tuned * number(vent as Branch)) / R),
    }),
  };
  const what = fb === undefined ? 'the resonance of its cone' : 'the stated fb';
  return { found, countedAt: `${decimalText(tuned / (2 * Math.PI), 4)} Hz, ${what}` };
}

/** Resonance of the only cone of a box, on its suspension and on the air, rad/s; nothing where there are several, or one without a motor. */
function closedResonance(system: System, box: string, Cab: number): number | undefined {
  const { topology } = system.network;
  const cones = topology.elements.flatMap((one) =>
    one.kind === 'piston' && [one.front, one.rear].includes(box) ? [one] : [],
  );
  const [cone] = cones;
  const motor = motorsOf(topology).find(({ mechanical }) =>
    cone?.mechanical.some((node) => node !== 'ground' && mechanical.includes(node)),
  );
  if (cones.length !== 1 || motor === undefined) return undefined;
  const { Cms = 0, Mms = 0, Sd = 0 } = numbersAt(system, motor);
  return Math.sqrt((1 / Cms + Sd ** 2 / Cab) / Mms);
}
