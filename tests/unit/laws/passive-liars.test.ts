/** A stranger's family, with a second cone that no motor moves: honest, mounted the other way round, and lying. */
import { boxCompliance, directRadiator, type Family, setDirectRadiator } from '@airspring/core/enclosure';
import { familyLaws } from '@airspring/core/laws';
import { branch, compile, type Topology } from '@airspring/core/network';
import { expect, test } from 'vitest';
import { brokenLaws, driver, reasons } from './boxes.js';

const passive = { Sd: 0.05, Mms: 0.25, Cms: 6e-4, Rms: 1.5 };
const spec = { driver, netVolume: 0.045, passive };
type Passive = Family<typeof spec>;
const moving = ['passive', 'ground'] as const;

const family: Passive = {
  name: 'passive',
  compile,
  read: (input) => input,
  topology: (box) => {
    const { elements, probes, cone } = directRadiator(box.driver, 0);
    return {
      elements: [
        ...elements,
        branch('acousticCompliance', 'Cab', ['box', 'ground']),
        { kind: 'piston', name: 'passive cone', mechanical: moving, front: 'ground', rear: 'box' },
        branch('mass', 'passive mass', moving),
        branch('spring', 'passive suspension', moving),
        branch('damper', 'passive loss', moving),
      ],
      probes,
      outlets: [cone, { name: 'passive', flow: { of: 'flow', element: 'passive cone' } }],
    };
  },
  values: (box, air, set) => {
    setDirectRadiator(box.driver, 0, set);
    set('Cab', boxCompliance(box.netVolume, 1, air));
    set('passive cone', box.passive.Sd);
    set('passive mass', box.passive.Mms);
    set('passive suspension', box.passive.Cms);
    set('passive loss', box.passive.Rms);
  },
};
const changed = (change: (topology: Topology) => Topology): Passive => ({
  ...family,
  topology: (box) => change(family.topology(box)),
});

test('honest', () => {
  expect(reasons(familyLaws({ family, spec }))).toEqual([]);
});
test('honest, the driver mounted with its magnet outside', () => {
  const reversed = changed(({ elements, outlets, probes }) => ({
    elements: elements.map((element) =>
      element.name === 'Sd' && element.kind === 'piston' ? { ...element, front: 'box', rear: 'ground' } : element,
    ),
    outlets: outlets.map((outlet) =>
      outlet.name === 'cone' ? { ...outlet, flow: { of: 'flow', element: 'Sd', sign: -1 } } : outlet,
    ),
    probes: { ...probes, coneVelocity: { of: 'potential', node: 'cone', sign: -1 } },
  }));
  expect(reasons(familyLaws({ family: reversed, spec, opposed: ['coneVelocity'] }))).toEqual([]);
});
test.each<[string, string, Passive]>([
  [
    'the velocity of the cone without a motor',
    'the velocity of a cone is that of a motor',
    changed((t) => ({ ...t, probes: { ...t.probes, coneVelocity: { of: 'potential', node: 'passive' } } })),
  ],
  [
    'a second cone that is not heard',
    'the outlets are all the flow that leaves',
    changed((t) => ({ ...t, outlets: t.outlets.slice(0, 1) })),
  ],
  [
    'a second cone that is heard twice',
    'air either leaves or is stored',
    changed((t) => ({ ...t, outlets: [...t.outlets, ...t.outlets.slice(1)] })),
  ],
  [
    'the added mass on the wrong cone',
    'the network has the numbers of the driver',
    changed((t) => ({
      ...t,
      elements: t.elements.map((one) =>
        one.name === 'passive mass' ? branch('mass', one.name, ['cone', 'ground']) : one,
      ),
    })),
  ],
  [
    'the areas of the two cones exchanged',
    'the network has the numbers of the driver',
    {
      ...family,
      values: (box, air, set) =>
        family.values(box, air, (name, ...numbers) =>
          set(name === 'Sd' ? 'passive cone' : name === 'passive cone' ? 'Sd' : name, ...numbers),
        ),
    },
  ],
])('%s: %s', (_, law, liar) => {
  expect(brokenLaws(familyLaws({ family: liar, spec }))).toContain(law);
});
