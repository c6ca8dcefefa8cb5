import { standardAir } from '@airspring/core/air';
import { completeDriver, type Driver } from '@airspring/core/driver';
import {
  boxCompliance,
  driverElements,
  driverProbes,
  type System,
} from '@airspring/core/enclosure';
import { systemLaws } from '@airspring/core/laws';
import { branch } from '@airspring/core/network';
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

const passiveBox = (spec: PassiveBox): System<PassiveBox> => {
  const { Sd, Mms, Cms, Rms } = spec.passive;
  const moving = ['passive', 'ground'] as const;
  return {
    spec,
    air: standardAir,
    network: {
      elements: [
        ...driverElements(spec.driver, 0),
        branch(
          'acousticCompliance',
          'Cab',
          ['box', 'ground'],
          boxCompliance(spec.netVolume, 1, standardAir),
        ),
        {
          kind: 'piston',
          name: 'passive cone',
          mechanical: moving,
          front: 'ground',
          rear: 'box',
          Sd,
        },
        branch('mass', 'passive mass', moving, Mms),
        branch('spring', 'passive suspension', moving, Cms),
        branch('damper', 'passive loss', moving, Rms),
      ],
      probes: driverProbes(0),
    },
  };
};

const sheet = completeDriver({
  fs: '27 Hz',
  Qts: 0.36,
  Qes: 0.4,
  Vas: '62 L',
  Sd: '330 cm²',
  Re: '5.6 Ω',
});
if (!sheet.ok) throw new Error(sheet.because[0]?.text);
const spec = {
  driver: sheet.driver,
  netVolume: 0.045,
  passive: { Sd: 0.05, Mms: 0.25, Cms: 6e-4, Rms: 1.5 },
}; // invented
for (const { law, holds, detail } of systemLaws({ family: passiveBox, spec }))
  console.log(holds ? 'holds' : 'BREAKS', law, detail);
const f3 = cutoff(passiveBox(spec));
if (f3.ok) console.log('three decibels down at', f3.frequency, 'Hz');
console.log(
  'impedance peaks at',
  features(passiveBox(spec)).impedanceMaxima.map(
    ({ frequency }) => frequency,
  ),
);
