import { systemOf } from '../enclosure/index.js';
import { withoutModels } from './family-motors.js';
import type { Tried } from './family-trial.js';
import { type LawResult, tried } from './law.js';
import { lostByJson, same } from './plain-record.js';

/**
 * Specs are kept in files and read again, so a spec must survive JSON, and its family must accept it unchanged; the models of
 * coils and suspensions, which have functions, are taken out for this. The same spec
 * must give the same network with each number set once, since systems of one topology share its compilation.
 */
export function specLaws<Spec, Input>({ trial, system, air, handedIn }: Tried<Spec, Input>): readonly LawResult[] {
  const { family, spec } = trial;
  return [
    tried('spec survives JSON', 'once', () => lostByJson(withoutModels(system().spec))),
    tried('the family accepts its own spec', 'itself, and from JSON', () => {
      const kept = family.read(spec);
      if (!same(withoutModels(family.read(kept)), withoutModels(kept))) return 'it is read as another';
      const plain = withoutModels(kept);
      return same(family.read(JSON.parse(JSON.stringify(plain)) as Spec), plain)
        ? undefined
        : 'from JSON it is read as a different spec';
    }),
    tried('leaves what it reads alone', 'once', () =>
      JSON.stringify(spec) === handedIn ? undefined : 'the spec that was handed in has changed',
    ),
    tried('the same spec gives the same network', 'twice', () => {
      const texts = [system(), system(), systemOf(family, system().spec, air)].map(({ network }) =>
        JSON.stringify(network),
      );
      return texts.every((text) => text === texts[0]) ? undefined : 'topology or values differ';
    }),
  ];
}
