import { airLaws } from './family-air.js';
import { answerLaws } from './family-answers.js';
import { driverLaws } from './family-drivers.js';
import { flowLaws } from './family-flows.js';
import { probeLaws } from './family-probes.js';
import { referenceLaws } from './family-reference.js';
import { specLaws } from './family-spec.js';
import { sweepLaws } from './family-sweeps.js';
import { type FamilyTrial, prepared } from './family-trial.js';
import { unitLaws } from './family-units.js';
import { unknownLaws } from './family-unknowns.js';
import { broken, type LawResult, tried } from './law.js';

/**
 * The laws of every box family, including your own, tried on one spec of it.
 *
 * | laws of | why |
 * | --- | --- |
 * | spec | people keep it in files and read it again |
 * | answers | the response needs its probes; a passive box gives out no power |
 * | probes | the response reads them as velocity, current, voltage and air speed |
 * | outlets | air is conserved: each flow out is counted once, and the boxes store the rest |
 * | drivers | the network has the numbers of the driver, at its motor |
 * | reference | it leaves out coil and leak, and agrees with the formula for the driver |
 * | air | springs of air are V/ρc², masses follow the density, tuning and losses are as stated |
 * | unknowns | an alignment chooses them in their own units; losses are quality factors of the spec |
 * | units | no law of physics knows the metre |
 * | sweeps | a linear network depends smoothly on frequency, depends on nothing but its numbers, and is reciprocal |
 *
 * Volumes, tunings and losses are those that the spec states as `netVolume`, `fb`, `QL`, `QA` and `QP`, in one record for each spring
 * of air. A law that throws is broken, and says what was thrown. If drivers or volumes cannot be found in the spec, state them in the
 * trial as `drivers` and `chambers`. Numbers of no law, such as a flow resistance, show beside probes that are `known`.
 *
 * @validity specs whose network can be swept from 2 Hz to 20 kHz
 * @neglects what no law can show: a consistent box that is not the one you meant; a lie between two frequencies that are 3 % apart
 * @returns one result for each law
 * @source desoer1969 (passive, reciprocal networks); small1972direct; small1973vented1
 * @example for (const { law, holds, detail } of familyLaws({ family: mine, spec })) console.log(law, holds, detail)
 */
export const familyLaws = <Spec, Input>(trial: FamilyTrial<Spec, Input>): readonly LawResult[] => [
  ...eachFamilyLaw(trial),
];

/** The same laws, each tried when it is asked for. The slowest come last. */
export function* eachFamilyLaw<Spec, Input>(trial: FamilyTrial<Spec, Input>): Generator<LawResult, void> {
  const one = prepared(trial);
  const made = tried('reads its spec and sets each number once', 'once', () => {
    one.system();
    return undefined;
  });
  yield made;
  if (!made.holds) return;
  const groups = {
    specLaws,
    answerLaws,
    probeLaws,
    flowLaws,
    driverLaws,
    referenceLaws,
    airLaws,
    unknownLaws,
    unitLaws,
    sweepLaws,
  };
  for (const laws of Object.values(groups)) {
    try {
      yield* laws(one);
    } catch (error) {
      yield broken('the laws can be tried', String(error));
    }
  }
}
