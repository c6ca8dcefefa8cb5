import { type Fault, InputError, isInputError } from '@airspring/core/fault';
import { thermalModel } from '@airspring/core/limit';
import type { Network } from '@airspring/core/network';
import { format, si } from '@airspring/core/quantity';
import { openingOf, ventLoss } from '@airspring/core/vent';
import type * as simulation from '@airspring/transient/simulation';
import type { Simulate } from '@airspring/transient/timeline';
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
  const loss = lossOf(box, network, library);
  const parts: Readonly<Record<string, unknown>> = {
    ...Object.fromEntries(curves.map((name) => [CURVES[name], large[name]])),
    [large.Xmech === undefined ? 'a stop of the cone' : `a stop at ${format('displacementPeak', large.Xmech, 'mm')}`]:
      large.Xmech,
    'the heat of the coil': large.heat,
    ...(box.vents.length > 0 && { 'the loss of the vent (by data of steady flow)': loss }),
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
    ...(loss && { losses: { [loss.element]: loss.loss } }),
    ...(heat && { heat: thermalModel(heat), coils: count }),
  });
  const nonlinear = inBrief(driver, options);
  const reach = Math.min(...curves.map((name) => large[name]?.reach ?? Infinity));
  let farthest = 0;
  return {
    outputs: heat ? ['coilRise'] : [],
    simulate: (system, pace) => {
      const { start, run } = inBrief(driver, () => library.compileNonlinear(system, { ...nonlinear, ...pace }));
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

/** The loss of the vents as one, for the flow of them all: what they lose together is the sum of what each loses by its own speed. */
function lossOf({ vents, system }: PlayedBox, { topology, values }: Network, { quadraticVentLoss }: Library) {
  const probe = topology.probes.ventAirSpeed;
  const perArea = probe?.factor === undefined ? undefined : values[probe.factor];
  if (vents.length === 0 || probe?.of !== 'flow' || typeof perArea !== 'number') return undefined;
  const each = vents.map(({ vent, share = 1 }) => {
    const { quadratic } = ventLoss({ vent });
    const flow = (vent.count ?? 1) * openingOf(vent).radius ** 2 * share;
    return { weight: flow * share ** 2, flow, ...quadratic };
  });
  const flow = each.reduce((sum, one) => sum + one.flow, 0);
  const mean = (of: 'outward' | 'inward') =>
    si('ratio', each.reduce((sum, one) => sum + one.weight * one[of], 0) / flow);
  const area = si('area', 1 / perArea);
  const loss = quadraticVentLoss({ area, outward: mean('outward'), inward: mean('inward') }, system.air);
  return { element: probe.element, loss };
}

const nothingKnown = ({ called }: PlayedBox): Fault => ({
  code: 'inconsistent',
  path: '--nonlinear',
  got: called,
  expected: 'a box with a vent, or a driver whose largeSignal the brief tells',
  remedy: 'Leave it out, or tell the largeSignal of the driver.',
});

/** Faults of curves and models, at their places in the brief. */
function inBrief<Made>(driver: number, make: () => Made): Made {
  try {
    return make();
  } catch (error) {
    if (!isInputError(error)) throw error;
    const place = (path: string) => path.replace(/^(nonlinear\.)?stop(\.\w+)?$/, 'Xmech').replace(/^nonlinear\./, '');
    throw new InputError(
      error.faults.map((fault) =>
        /^(nonlinear\.)?(forceFactor|stiffness|inductance|stop|heat)\b/.test(fault.path)
          ? { ...fault, path: `drivers[${driver}].largeSignal.${place(fault.path)}` }
          : fault,
      ),
    );
  }
}
