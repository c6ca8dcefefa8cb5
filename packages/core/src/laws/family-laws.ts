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
import { broken, type LawResult, tried } from './law.js';

/**
 * What every box family must obey, ours and a stranger's, tried on one spec of it.
 *
 * | laws of | why |
 * | --- | --- |
 * | spec | it is kept in files and read again |
 * | answers | what the response reads is there; a passive box gives no power |
 * | probes | they are read as velocity, current, voltage, air speed |
 * | outlets | no air is made: all that leaves is told once, and is what the boxes do not keep |
 * | drivers | the driver stands at its motor with its own numbers |
 * | reference | it leaves out coil and leak, and is that of the driver |
 * | air | springs of air are V/ρc², masses follow the density, tuning and losses are as stated |
 * | units | no law of physics knows the metre |
 * | sweeps | a linear network is a smooth function of frequency and numbers alone, and reciprocal |
 *
 * A law that throws is broken, and says what was thrown. Where drivers or volumes cannot be found in the spec, the trial
 * states them.
 *
 * @validity specs whose network can be swept from 2 Hz to 20 kHz
 * @neglects what no law shows: a box that is another than the one meant, and consistent
 * @returns one result for each law
 * @source desoer1969 (passive, reciprocal networks); small1972direct; small1973vented1
 * @example for (const { law, holds, detail } of familyLaws({ family: mine, spec })) console.log(law, holds, detail)
 */
export const familyLaws = <Spec, Input>(trial: FamilyTrial<Spec, Input>): readonly LawResult[] => [
  ...eachFamilyLaw(trial),
];

/** The same, tried as they are asked for: the dearest come last. */
export function* eachFamilyLaw<Spec, Input>(trial: FamilyTrial<Spec, Input>): Generator<LawResult, void> {
  const made = tried('reads its spec, sets each number once', 'once', () => {
    prepared(trial).system();
    return undefined;
  });
  yield made;
  if (!made.holds) return;
  const one = prepared(trial);
  const groups = { specLaws, answerLaws, probeLaws, flowLaws, driverLaws, referenceLaws, airLaws, unitLaws, sweepLaws };
  for (const laws of Object.values(groups)) {
    try {
      yield* laws(one);
    } catch (error) {
      yield broken('the laws can be tried', String(error));
    }
  }
}
