import type { Air } from '@airspring/core/air';
import { type Fault, InputError } from '@airspring/core/fault';
import { thermalModel } from '@airspring/core/limit';
import type { Network } from '@airspring/core/network';
import { type Area, si } from '@airspring/core/quantity';
import { openingOf, type VentInput, type VentSection, ventLoss } from '@airspring/core/vent';
import type * as simulation from '@airspring/transient/simulation';
import type { Simulate } from '@airspring/transient/timeline';
import { inLargeSignal } from '../record/large-signal-faults.js';
import type { PlayedBox } from './played-box.js';

type Library = Pick<
  typeof simulation,
  'compileNonlinear' | 'forceFactorCurve' | 'inductanceCurve' | 'quadraticVentLoss' | 'stiffnessCurve' | 'stop'
>;

/** How a box was simulated, in words for the reader. */
export interface SimulationTold {
  readonly kind: 'linear' | 'nonlinear';
  /** What changes with level in it: 'the stiffness over displacement'. */
  readonly includes: readonly string[];
  /** What the brief tells beside, and a nonlinear simulation would include. */
  readonly leftOut: readonly string[];
  /** What would change with level as well, and the brief does not tell. */
  readonly untold: readonly string[];
  /** The shortest reach of a curve, m, and the farthest that the cone went; left out where it stayed within them all. */
  readonly beyond?: { readonly reach: number; readonly farthest: number };
}

/** A simulation of a box, and what is told of it once the piece has been played. */
export interface Simulated {
  /** Left out where it is linear. */
  readonly simulate?: Simulate<ReturnType<ReturnType<Library['compileNonlinear']>['start']>>;
  /** What is read of it beside the usual. */
  readonly outputs: readonly string[];
  readonly told: () => SimulationTold;
}

/** Over the stiffness of the suspension: a coil former on a plate, as hard as a simulation at 48 kHz follows well (a rule of thumb). */
const STOP = 100;

const CURVES = {
  forceFactor: 'the force factor over displacement',
  stiffness: 'the stiffness over displacement',
  inductance: 'the inductance over displacement',
} as const;
type Curve = keyof typeof CURVES;
const curves = Object.keys(CURVES) as Curve[];

/**
 * How a box is simulated: nonlinear where the brief tells what its driver does at large signals, or where that is asked for, and
 * linear otherwise.
 *
 * @throws InputError with faults at the paths of the brief
 */
export function simulatedOf(
  box: PlayedBox,
  network: Network,
  asked: 'linear' | 'nonlinear' | undefined,
  library: Library,
): Simulated {
  const { told: large = {}, count = 1, driver = 0 } = box.loud ?? {};
  const losses = lossesOf(box, network, library);
  const many = Object.keys(losses ?? {}).length > 1;
  const parts: Readonly<Record<string, unknown>> = {
    ...Object.fromEntries(curves.map((name) => [CURVES[name], large[name]])),
    'a stop of the cone': large.Xmech,
    'the heat of the coil': large.heat,
    ...(losses && { [`the loss of the ${many ? 'vents' : 'vent'} (by data of steady flow)`]: losses }),
  };
  const listed = (is: boolean) => Object.keys(parts).filter((name) => (parts[name] !== undefined) === is);
  if (asked === 'linear' || (asked === undefined && box.loud === undefined)) {
    return {
      outputs: [],
      told: () => ({ kind: 'linear', includes: [], leftOut: listed(true), untold: listed(false) }),
    };
  }
  if (listed(true).length === 0) throw new InputError([nothingKnown(box)]);
  const { heat, Xmech } = large;
  const options = (): Omit<simulation.NonlinearOptions, 'sampleRate' | 'outputs'> => ({
    ...(large.forceFactor && { forceFactor: library.forceFactorCurve(large.forceFactor) }),
    ...(large.stiffness && { stiffness: library.stiffnessCurve(large.stiffness) }),
    ...(large.inductance && { inductance: library.inductanceCurve(large.inductance) }),
    ...(Xmech !== undefined && {
      stop: library.stop({ outward: Xmech, inward: Xmech, stiffness: si('ratio', STOP) }),
    }),
    ...(losses && { losses }),
    ...(heat && { heat: thermalModel(heat), coils: count }),
  });
  const nonlinear = inLargeSignal(driver, options);
  const reach = Math.min(...curves.map((name) => large[name]?.reach ?? Infinity));
  let farthest = 0;
  return {
    outputs: heat ? ['coilRise'] : [],
    simulate: (system, pace) => {
      const { start, run } = inLargeSignal(driver, () => library.compileNonlinear(system, { ...nonlinear, ...pace }));
      farthest = 0;
      return {
        start,
        run: (motion, drive, out) => {
          const report = run(motion, drive, out);
          farthest = Math.max(farthest, report.farthest);
          return report;
        },
      };
    },
    told: () => ({
      kind: 'nonlinear',
      includes: listed(true),
      leftOut: [],
      untold: listed(false),
      ...(farthest > reach && { beyond: { reach, farthest } }),
    }),
  };
}

/** The losses of all vents by the elements that carry their flow; nothing where none is known to lose. */
function lossesOf({ vents, system }: PlayedBox, { topology, values }: Network, library: Library) {
  const whole = vents.flatMap(({ vent, ...one }) => (isWhole(vent) ? [{ vent, ...one }] : []));
  const losses = Object.entries(topology.probes).flatMap(([name, probe]) => {
    const perArea = probe.factor === undefined ? undefined : values[probe.factor];
    const own = whole.filter((one) => (one.probe ?? 'ventAirSpeed') === name);
    if (own.length === 0 || probe.of !== 'flow' || typeof perArea !== 'number') return [];
    return [[probe.element, lossOfAll(own, si('area', 1 / perArea), system.air, library)] as const];
  });
  return losses.length > 0 ? Object.fromEntries(losses) : undefined;
}

const isWhole = (vent: VentSection | VentInput): vent is VentInput => 'length' in vent;

/** The loss of vents as one, for the flow of them all: what they lose together is the sum of what each loses by its own speed. */
function lossOfAll(
  vents: readonly { readonly vent: VentInput; readonly share?: number }[],
  area: Area,
  air: Air,
  { quadraticVentLoss }: Library,
) {
  const each = vents.map(({ vent, share = 1 }) => {
    const { quadratic } = ventLoss({ vent });
    const flow = (vent.count ?? 1) * openingOf(vent).radius ** 2 * share;
    return { weight: flow * share ** 2, flow, ...quadratic };
  });
  const flow = each.reduce((sum, one) => sum + one.flow, 0);
  const mean = (of: 'outward' | 'inward') =>
    si('ratio', each.reduce((sum, one) => sum + one.weight * one[of], 0) / flow);
  return quadraticVentLoss({ area, outward: mean('outward'), inward: mean('inward') }, air);
}

const nothingKnown = ({ called }: PlayedBox): Fault => ({
  code: 'inconsistent',
  path: '--nonlinear',
  got: called,
  expected: 'a box with an open vent, or a driver whose largeSignal the brief tells',
  remedy: 'Leave it out, or tell the largeSignal of the driver.',
});
