import { completeDriver, type Driver } from '@airspring/core/driver';
import {
  boxCompliance,
  directRadiator,
  type Family,
  setDirectRadiator,
  systemOf,
} from '@airspring/core/enclosure';
import { familyLaws } from '@airspring/core/laws';
import { branch, compile } from '@airspring/core/network';
import { cutoff, features } from '@airspring/core/response';

/** A box whose vent is a second cone without a magnet. SI numbers. */
interface PassiveBox {
  readonly driver: Driver;
  readonly netVolume: number;
  readonly passive: {
    readonly Sd: number;
    readonly Mms: number;
    readonly Cms: number;
    readonly Rms: number;
  };
}

const moving = ['passive', 'ground'] as const;
const passiveFamily: Family<PassiveBox> = {
  name: 'passive',
  compile,
  read: (input) => input,
  topology: ({ driver }) => {
    const { elements, probes, cone } = directRadiator(driver, 0);
    return {
      elements: [
        ...elements,
        branch('acousticCompliance', 'Cab', ['box', 'ground']),
        {
          kind: 'piston',
          name: 'passive cone',
          mechanical: moving,
          front: 'ground',
          rear: 'box',
        },
        branch('mass', 'passive mass', moving),
        branch('spring', 'passive suspension', moving),
        branch('damper', 'passive loss', moving),
      ],
      probes,
      outlets: [
        cone,
        { name: 'passive', flow: { of: 'flow', element: 'passive cone' } },
      ],
    };
  },
  values: ({ driver, netVolume, passive }, air, set) => {
    setDirectRadiator(driver, 0, set);
    set('Cab', boxCompliance(netVolume, 1, air));
    set('passive cone', passive.Sd);
    set('passive mass', passive.Mms);
    set('passive suspension', passive.Cms);
    set('passive loss', passive.Rms);
  },
};
const _passiveBox = (spec: PassiveBox) => systemOf(passiveFamily, spec);

const sheet = completeDriver({
  fs: '27 Hz',
  Qts: 0.36,
  Qes: 0.4,
  Vas: '62 L',
  Sd: '330 cm²',
  Re: '5.6 Ω',
});
if (!sheet.ok) throw new Error(sheet.because[0]?.text);
const { driver } = sheet;
const passive = { Sd: 0.05, Mms: 0.25, Cms: 6e-4, Rms: 1.5 }; // invented
const spec = { driver, netVolume: 0.045, passive };
for (const { law, holds, detail } of familyLaws({
  family: passiveFamily,
  spec,
}))
  console.log(`${law}:`, holds ? 'holds,' : 'BROKEN,', detail);
const box = systemOf(passiveFamily, spec);
const f3 = cutoff(box);
if (f3.ok) console.log('three decibels down at', f3.frequency, 'Hz');
const peaks = features(box).impedanceMaxima;
console.log(
  'impedance peaks at',
  peaks.map(({ frequency }) => frequency),
);
