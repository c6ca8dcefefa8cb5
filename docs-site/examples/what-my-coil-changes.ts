import {
  type CoilModel,
  driver,
  fourParameterInductor,
  inductor,
  lossyInductor,
  semiInductor,
} from '@airspring/core/driver';
import { closedBox } from '@airspring/core/enclosure';
import {
  type Frequency,
  format,
  type Inductance,
  logarithmicGrid,
  si,
} from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';

/** What may be changed. Driver and box are invented. */
export const inputs = {
  Le: {
    kind: 'inductance',
    label: 'Inductance at 1 kHz',
    value: '1.5 mH',
    least: '0.1 mH',
    greatest: '5 mH',
    step: 1.03,
  },
  exponent: {
    kind: 'ratio',
    label: 'Exponent of the losses',
    value: '0.7 1',
    least: '0.5 1',
    greatest: '0.95 1',
    step: 1.01,
  },
  tone: {
    kind: 'frequency',
    label: 'Tone',
    value: '150 Hz',
    least: '20 Hz',
    greatest: '1000 Hz',
    step: 1.02,
  },
} as const;

interface Coil {
  readonly Le: Inductance;
  readonly exponent: number;
  readonly tone: Frequency;
}

/** Where a sheet states the inductance, and where all models agree. */
const STATED = 2 * Math.PI * 1000;

/** The model times what makes its impedance at 1 kHz that of Le. */
function asStated(coil: CoilModel, Le: number): CoilModel {
  const out = new Float64Array(2);
  coil.impedance(Object.values(coil.parameters), STATED, out);
  return coil.scaled((STATED * Le) / Math.hypot(out[0]!, out[1]!), 1);
}

export const models = ({ Le, exponent }: Coil) => {
  const shapes = {
    inductor: inductor({ Le: '1 mH' }),
    lossy: lossyInductor({ K: si('ratio', 0.02), exponent }),
    // The resistance rises more steeply than the reactance.
    four: fourParameterInductor({
      Kr: si('ratio', 0.002),
      Xr: 0.8,
      Ki: si('ratio', 0.02),
      Xi: exponent,
    }),
    semi: semiInductor({
      Leb: '0.1 mH',
      Le: '2 mH',
      K: si('ratio', 0.05),
      Rss: '60 Ω',
    }),
  };
  return Object.fromEntries(
    Object.entries(shapes).map(([name, coil]) => [name, asStated(coil, Le)]),
  ) as Record<keyof typeof shapes, CoilModel>;
};

export const box = (coil?: CoilModel) =>
  closedBox({
    drivers: driver({
      Sd: '330 cm²',
      Mms: '60 g',
      Cms: '0.6 mm/N',
      Rms: '2 kg/s',
      Re: '5.6 Ω',
      Bl: '12 T·m',
      ...(coil && { coil }),
    }),
    netVolume: '40 L',
  });

export const grid = logarithmicGrid(20, 1000, 101);

export function solve(at: Coil) {
  const options = { driveVoltageRms: '2.83 V' } as const;
  const of = (coil?: CoilModel) => {
    const system = box(coil);
    return {
      swept: respond(system, grid, options),
      tone: respond(system, [at.tone], options),
    };
  };
  const { inductor, lossy, four, semi } = models(at);
  return {
    none: of(),
    inductor: of(inductor),
    lossy: of(lossy),
    four: of(four),
    semi: of(semi),
  };
}

export function answers(at: Coil, found = solve(at)) {
  const level = (name: keyof typeof found) =>
    found[name].tone.levelHalfSpace[0] as number;
  const lost = (name: keyof typeof found) => {
    const by = level(name) - level('none');
    return `${Math.abs(by).toFixed(1)} dB ${by < 0 ? 'softer' : 'louder'}`;
  };
  const impedance = (name: keyof typeof found) =>
    format('resistance', found[name].tone.impedance[0]!, 'Ω', 3);
  const apart = level('lossy') - level('inductor');
  const most = Math.max(
    ...(['lossy', 'four', 'semi'] as const).map((name) =>
      Math.abs(level(name) - level('inductor')),
    ),
  );
  return {
    inductor: lost('inductor'),
    lossy: lost('lossy'),
    four: lost('four'),
    semi: lost('semi'),
    bare: impedance('none'),
    Z_inductor: impedance('inductor'),
    Z_lossy: impedance('lossy'),
    Z_four: impedance('four'),
    Z_semi: impedance('semi'),
    apart: `${Math.abs(apart).toFixed(1)} dB`,
    matters:
      most < 0.25
        ? 'It does not matter which model you take'
        : most < 1
          ? 'It matters a little which model you take'
          : 'It matters which model you take',
  };
}
