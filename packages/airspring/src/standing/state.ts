import type { Air } from '@airspring/core/air';
import type { DriverGroup, PassiveRadiator } from '@airspring/core/driver';
import { finiteFlange, flanged, flared } from '@airspring/core/duct';
import {
  closedFamily,
  closedResonance,
  passiveRadiatorFamily,
  passiveRadiatorTuning,
  type System,
  systemOf,
  ventedFamily,
} from '@airspring/core/enclosure';
import type { Impossible, Warning } from '@airspring/core/fault';
import type { Filter } from '@airspring/core/filter';
import { airSpeedLimit, type Limit, radiatorTravelLimit } from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import { openingOf, type RoundVentInput, type SharedOpening, severalVents, type VentInput } from '@airspring/core/vent';
import type { ReadFields } from '../brief/fields.js';
import { safeFromOf } from '../job/job.js';
import { quietVents } from '../kind/quiet-vent.js';
import { USUAL_QL, type ventedFields } from '../kind/vented-fields.js';
import { limitsOf } from '../record/limits.js';
import { compiledOnce } from './compiled-once.js';
import type { Standing } from './standing.js';
import type { Tube } from './tube.js';

// Hundreds of changes to a box differ in numbers alone.
const [vented, closed, withRadiator] = [
  compiledOnce(ventedFamily),
  compiledOnce(closedFamily),
  compiledOnce(passiveRadiatorFamily),
];

/** A box in all that its sound depends on: as it stands, or as a change would leave it. */
export interface State {
  readonly drivers: DriverGroup;
  /** Air before vents take theirs, m³. */
  readonly airBeforeVents: number;
  readonly vents: readonly VentInput[];
  /** In the place of vents. */
  readonly radiators?: { readonly radiator: PassiveRadiator; readonly count: number; readonly addedMass: number };
  /** In front of the amplifier. */
  readonly filter?: Filter;
}

/** A state as a system, with everything that limits it. */
export interface Sounding {
  readonly system: System;
  readonly limits: readonly Limit[];
  /** Those of its own parts among them. */
  readonly own: readonly Limit[];
  readonly netVolume: number;
  /** Tuning, or the resonance of a closed box with its quality factor. */
  readonly fb?: number;
  readonly fc?: number;
  readonly Qtc?: number;
  /** Total flow over the mean speed in the fastest vent, m². */
  readonly ventArea?: number;
  /** The vents in their order, each with the share of the greatest speed that its air has; empty without vents. */
  readonly openings: readonly SharedOpening[];
  readonly warnings: readonly Warning[];
}

/** A tube as core tunes it: a collar of its own wall inside, the panel outside, both rounded where it is rounded. */
export function ventOf({ rounding, length, count, ...tube }: Tube): RoundVentInput {
  const round = (end: typeof flanged) => (rounding > 0 ? flared({ radius: si('length', rounding), end }) : end);
  return {
    diameter: si('length', tube.diameter),
    wall: si('length', tube.wall),
    length: si('length', length),
    count,
    innerEnd: round(finiteFlange),
    outerEnd: round(flanged),
  };
}

/** What vents tune a box to whose air, before they take theirs, and panels are known. */
export const tunedBy = (vents: readonly VentInput[], airBeforeVents: number, panelThickness: number, air: Air) =>
  severalVents(
    { vents, volumeBeforeVent: si('volume', airBeforeVents), panelThickness: si('length', panelThickness) },
    air,
  );

/** Losses as the brief states them, or as the impedance of the box leaves them. */
const lossesOf = ({ job, QL: found }: Pick<Standing, 'job' | 'QL'>, closed: boolean) => {
  const { box = {} } = job.sections as ReadFields<Pick<typeof ventedFields, 'box'>>;
  const { QA, QP } = box;
  const QL = closed ? box.QL : (found ?? box.QL ?? USUAL_QL);
  return {
    ...(QL !== undefined && { QL }),
    ...(QA !== undefined && { QA }),
    ...(QP !== undefined && !closed && { QP }),
  };
};

/** The state of the box as it stands. */
export const stateOf = ({ drivers, airBeforeVents, vents, filter }: Standing): State => ({
  drivers,
  airBeforeVents,
  vents: vents.map(ventOf),
  ...(filter && { filter }),
});

/** The system of a state; `Impossible` where the vents fill the box. */
export function soundingOf(standing: Standing, state: State): ({ readonly ok: true } & Sounding) | Impossible {
  const { job, panelThickness, tuningRatio, airSpeedPeak, quiet } = standing;
  const { air } = job;
  const sourceResistance = si('resistance', job.amplifier.sourceResistance);
  const { drivers, vents, radiators } = state;
  const common = { drivers, sourceResistance };
  if (radiators) {
    const spec = {
      ...common,
      netVolume: si('volume', state.airBeforeVents),
      radiator: radiators.radiator,
      count: radiators.count,
      addedMass: si('mass', radiators.addedMass),
      ...lossesOf(standing, false),
    };
    const { QP: _, ...radiatorSpec } = spec as typeof spec & { QP?: number };
    const own = radiatorTravelLimit(radiators.radiator);
    return {
      ok: true,
      system: systemOf(withRadiator, radiatorSpec, air),
      limits: limitsOf(job, drivers, own),
      own,
      netVolume: state.airBeforeVents,
      fb: passiveRadiatorTuning({ ...radiators, addedMass: spec.addedMass, netVolume: spec.netVolume }, air).fb,
      openings: [],
      warnings: [],
    };
  }
  if (vents.length === 0) return { ok: true, ...closedState(standing, state, sourceResistance) };

  const tuned = tunedBy(vents, state.airBeforeVents, panelThickness, air);
  if (!tuned.ok) return tuned;
  const ventArea = 1 / Math.max(...tuned.shares.map(({ flow, area }) => flow / area));
  const fb = tuned.fb * tuningRatio;
  const spec = {
    ...common,
    netVolume: tuned.netVolume,
    fb: si('frequency', fb),
    ventArea: si('area', ventArea),
    ...lossesOf(standing, false),
  };
  const speeds = tuned.shares.map(({ flow, area }) => (ventArea * flow) / area);
  const own = [
    airSpeedLimit(si('airSpeedRms', airSpeedPeak / Math.SQRT2)),
    ...(quiet ? quietVents(vents, speeds, air, si('frequency', safeFromOf(job.wanted))) : []),
  ];
  return {
    ok: true,
    system: systemOf(vented, spec, air),
    limits: limitsOf(job, drivers, own),
    own,
    netVolume: tuned.netVolume,
    fb,
    ventArea,
    openings: speeds.map((share, i) => ({ opening: openingOf(vents[i]!), share })),
    warnings: tuned.warnings,
  };
}

function closedState(
  standing: Standing,
  { drivers, airBeforeVents }: State,
  sourceResistance: ReturnType<typeof si<'resistance'>>,
): Sounding {
  const { job } = standing;
  const { air } = job;
  const netVolume = si('volume', airBeforeVents);
  const spec = { drivers, netVolume, fillGain: 1, ...lossesOf(standing, true), sourceResistance };
  const { fc, Qtc } = closedResonance(spec, air);
  return {
    system: systemOf(closed, spec, air),
    limits: limitsOf(job, drivers, []),
    own: [],
    netVolume: airBeforeVents,
    fc,
    Qtc,
    openings: [],
    warnings: [],
  };
}
