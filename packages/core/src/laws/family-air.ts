import type { System } from '../enclosure/index.js';
import { chambersOf } from './chambers.js';
import { otherAir } from './family-drivers.js';
import { numberOf, type Tried } from './family-trial.js';
import { alike, alikeNumbers, type LawResult, tried } from './law.js';

/**
 * The springs of air are V/ρc² (@source small1972closed1), with the stated volume, and they follow the medium. The masses of air
 * are proportional to the density, whether a length or a tuning is given: M = ρℓ/S, M = ρc²/(ω²V). A delay is a length over c. At a stated tuning, mass and
 * spring resonate, and the stated quality factors are those of leak, absorption and vent there (@source small1973vented1,
 * definitions of the box losses).
 */
export function airLaws<Spec, Input>({ trial, system, air }: Tried<Spec, Input>): readonly LawResult[] {
  const chambers = (made: System) => chambersOf(made, trial.chambers);
  const stiffness = air.density * air.speedOfSound ** 2;
  const heavier = { ...air, density: 1.3 * air.density } as typeof air;
  const ofKind = (made: System, kind: string) => made.network.topology.elements.filter((one) => one.kind === kind);
  const compare = (one: System, two: System, kind: string, factor: number) => {
    const isMoved = (name: string) => !alikeNumbers(factor * numberOf(one, name), numberOf(two, name));
    const moved = ofKind(one, kind).find(({ name }) => isMoved(name));
    return (
      moved && `${moved.name} is ${numberOf(two, moved.name)}, but should be ${factor * numberOf(one, moved.name)}`
    );
  };
  const compared = new Set<string>();
  const comparedWith = () =>
    compared.size > 0 ? [...compared].join(', ') : 'nothing to try: no fb, QL, QA or QP is stated beside a netVolume';
  return [
    tried('the air of a box is the stated volume', 'each compliance', () => {
      const made = system();
      for (const { compliance, volume } of chambers(made)) {
        // The space behind a wall yields without limit. It is not a spring, and has no volume to state.
        if (volume === undefined && numberOf(made, compliance) === Infinity) continue;
        if (volume === undefined)
          return `no volume is known for ${compliance}: state one netVolume in the spec for each spring of air, or pass all of them to the laws as chambers`;
        const found = numberOf(made, compliance) * stiffness;
        if (!alike(found, volume)) return `${compliance} is the spring of ${found} m³, but ${volume} m³ are stated`;
      }
      return undefined;
    }),
    tried('springs of air follow the medium', 'another density and speed of sound', () =>
      compare(system(), system(otherAir(air)), 'acousticCompliance', 1 / (1.3 * 0.9 ** 2)),
    ),
    tried('masses of air follow the density', 'another density', () =>
      compare(system(), system(heavier), 'acousticMass', 1.3),
    ),
    tried('delays follow the speed of sound', 'each outlet', () => {
      const [one, two] = [system(), system(otherAir(air))];
      const wrong = one.network.topology.outlets.find(
        ({ delay }) => delay !== undefined && !alike(numberOf(one, delay), 0.9 * numberOf(two, delay)),
      );
      return wrong && `that of ${wrong.name} is the same, or another, in air that is 0.9 times as quick`;
    }),
    tried('tuning and losses are as stated', comparedWith, () => {
      const made = system();
      for (const { compliance, stated, found, countedAt } of chambers(made)) {
        for (const [name, value] of Object.entries(stated)) {
          const own = found[name as keyof typeof found];
          if (own === undefined) continue;
          compared.add(`${name} of ${compliance}`);
          if (Number.isNaN(own)) return `${name} of ${compliance} is stated, but no one part at its node has it`;
          const place = name === 'fb' ? '' : ` at ${countedAt}`;
          if (!alike(own, value)) return `${name} of ${compliance} is ${own}${place}, and ${value} is stated`;
        }
      }
      return undefined;
    }),
  ];
}
