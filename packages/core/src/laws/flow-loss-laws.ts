import { type Air, standardAir } from '../air/index.js';
import type { FlowLoss } from '../duct/index.js';
import { jumpOver } from './end-correction-laws.js';
import { alike, type LawResult, tried } from './law.js';

/** What a loss of flow is tried on. */
export interface FlowLossTrial {
  readonly air?: Air;
  /** Resistances that are known from a measurement or a published curve. */
  readonly known?: readonly {
    readonly airSpeedPeak: number;
    readonly frequency: number;
    readonly resistance: number;
  }[];
}

const frequencies = [5, 30, 120];
/** m/s, from still air to a tenth of the speed of sound. */
const speeds = [0, ...Array.from({ length: 141 }, (_, i) => 1e-3 * 10 ** (i / 30.5))];
/** By how much the pressure may rise over a step of the speed, for each part of the step: a square law has 2. */
const STEEPEST = 4;
const AGREEMENT = 0.02;

/**
 * The laws of every loss of flow, including your own.
 *
 * It has a name and sources. Its resistance is finite and zero or more, still air included, so that it never gives energy. The
 * pressure that is lost, resistance × speed, never falls where the speed rises, and does not jump: only then is there one speed at
 * which the loss and the rest of the system agree. It does not jump over frequency. In a medium that is denser at the same kinematic
 * viscosity it is greater in the same measure, since no other number has a mass (dimensional analysis). The same question has the same answer. Known values agree within 2 %.
 *
 * @validity speeds up to a tenth of the speed of sound, 5 to 120 Hz
 * @neglects whether the loss is right where no value is known
 * @returns one result for each law
 * @source ingard1967 quasi-steady loss
 * @example flowLossLaws(quadraticLoss({ outward: 1.5 }))
 */
export function flowLossLaws(
  loss: FlowLoss,
  { air = standardAir, known = [] }: FlowLossTrial = {},
): readonly LawResult[] {
  const extent = `${speeds.length} speeds, ${frequencies.length} frequencies`;
  const first = (wrong: (resistance: number, speed: number, frequency: number) => boolean): string | undefined => {
    for (const frequency of frequencies)
      for (const speed of speeds) {
        const resistance = loss.resistance(speed, frequency, air);
        if (wrong(resistance, speed, frequency)) return `${resistance} Pa·s/m at ${speed} m/s, ${frequency} Hz`;
      }
    return undefined;
  };
  const betweenSpeeds = (
    wrong: (before: number, after: number, speed: number, step: number) => boolean,
  ): string | undefined => {
    for (const frequency of frequencies)
      for (let i = 2; i < speeds.length; i++) {
        const [a, b] = [speeds[i - 1]!, speeds[i]!];
        const before = a * loss.resistance(a, frequency, air);
        const after = b * loss.resistance(b, frequency, air);
        if (wrong(before, after, a, b / a - 1))
          return `${before} Pa at ${a} m/s, ${after} Pa at ${b} m/s, ${frequency} Hz`;
      }
    return undefined;
  };
  return [
    tried('has a name and sources', `${loss.name}`, () =>
      loss.name?.length > 0 && Array.isArray(loss.sources) ? undefined : 'no name, or no list of sources',
    ),
    tried('is finite, in still air too', extent, () => first((resistance) => !Number.isFinite(resistance))),
    tried('never gives energy', extent, () => first((resistance) => resistance < 0)),
    tried('loses no less pressure at a greater speed', extent, () =>
      betweenSpeeds((before, after) => after < before * (1 - 1e-9)),
    ),
    tried('does not jump', extent, () =>
      betweenSpeeds((before, after, speed, step) => {
        const carried = (air.density * speed ** 2) / 2;
        return after - before > STEEPEST * step * Math.max(before, carried);
      }),
    ),
    tried('does not jump over frequency', '3 speeds', () =>
      [0.1, 1, 10]
        .map((speed) => jumpOver((x) => loss.resistance(speed, 5 * 24 ** (x / 2), air)))
        .find((fault) => fault !== undefined),
    ),
    tried('follows the air', 'all that depends on its density 1.3 times as great', () => {
      const { density, pressure, viscosity, thermalConductivity, ...rest } = air;
      const [d, p, v, t] = [density, pressure, viscosity, thermalConductivity].map((value) => 1.3 * value);
      const denser = { ...rest, density: d, pressure: p, viscosity: v, thermalConductivity: t } as Air;
      return first(
        (resistance, speed, frequency) => !alike(1.3 * resistance, loss.resistance(speed, frequency, denser)),
      );
    }),
    tried('gives the same answer twice', extent, () =>
      first((resistance, speed, frequency) => resistance !== loss.resistance(speed, frequency, air)),
    ),
    tried('agrees with known values', `${known.length} values`, () => {
      for (const { airSpeedPeak, frequency, resistance } of known) {
        const own = loss.resistance(airSpeedPeak, frequency, air);
        if (!alike(own, resistance, AGREEMENT))
          return `${own} Pa·s/m at ${airSpeedPeak} m/s, ${frequency} Hz, but ${resistance} is known`;
      }
      return undefined;
    }),
  ];
}
