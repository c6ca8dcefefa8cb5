import {
  driverParameters,
  fourParameterInductor,
  hystereticDamping,
  logarithmicCreep,
  lossyInductor,
  lr2Inductor,
  semiInductor,
} from '@airspring/core/driver';
import { si } from '@airspring/core/quantity';
import * as v from 'valibot';
import { audible, coil, ohms } from './bounds.js';
import { described } from './described.js';
import type { CoilChoice, DriverModels, SuspensionChoice } from './driver-models.js';
import { plainNumber, quantity } from './quantity-text.js';

const power = (greatest: number) => described(plainNumber(0.01, greatest, 0.7), 'its power of frequency');
const size = (example: number) => described(plainNumber(1e-9, 1e6, example), 'its size, Ω at 1 rad/s');
const [inductance, resistance] = [quantity('inductance', coil), quantity('resistance', ohms)];
const ratio = (value: number) => si('ratio', value);

const lossyInductanceFields = { K: size(0.02), exponent: power(1) };
const lossyInductance: CoilChoice<typeof lossyInductanceFields> = {
  name: 'lossyInductance',
  what: 'an impedance K (jω)^exponent (Leach 2002)',
  fields: lossyInductanceFields,
  model: ({ K, exponent }) => lossyInductor({ K: ratio(K), exponent }),
};

const fourParameterFields = { Kr: size(0.0022), Xr: power(2), Ki: size(0.0048), Xi: power(1) };
const fourParameters: CoilChoice<typeof fourParameterFields> = {
  name: 'fourParameters',
  what: 'a resistance Kr ω^Xr and a reactance Ki ω^Xi (Wright 1990)',
  fields: fourParameterFields,
  model: ({ Kr, Xr, Ki, Xi }) => fourParameterInductor({ Kr: ratio(Kr), Xr, Ki: ratio(Ki), Xi }),
};

const semiInductanceFields = {
  Leb: described(inductance, 'inductance outside the iron'),
  Le: described(inductance, 'inductance beside the semi-inductance'),
  K: described(plainNumber(1e-9, 1e6, 0.03), 'semi-inductance, Ω·√s'),
  Rss: described(resistance, 'losses of a shorting ring'),
};
const semiInductance: CoilChoice<typeof semiInductanceFields> = {
  name: 'semiInductance',
  what: 'an inductance Leb, and Le, a semi-inductance K and Rss side by side (Thorborg and Unruh 2008)',
  fields: semiInductanceFields,
  model: semiInductor,
};

const lr2Fields = {
  Le: v.exactOptional(described(inductance, 'inductance in series; default none')),
  R2: described(resistance, 'resistance beside L2, of the eddy currents'),
  L2: described(inductance, 'second inductance, beside R2'),
};
const LR2: CoilChoice<typeof lr2Fields> = {
  name: 'LR2',
  what: 'an inductance Le, and R2 and L2 side by side',
  fields: lr2Fields,
  model: lr2Inductor,
};

const creepFields = {
  lambda: described(plainNumber(1e-4, 0.3, 0.05), 'share by which the compliance grows in each decade downwards'),
  at: v.exactOptional(
    described(quantity('frequency', audible), 'where the compliance is Cms; default the resonance fs'),
  ),
};
const creep: SuspensionChoice<typeof creepFields> = {
  name: 'creep',
  what: 'a compliance that falls with the logarithm of frequency (Knudsen and Jensen 1993)',
  fields: creepFields,
  model: ({ lambda, at }, driver) => logarithmicCreep({ lambda: ratio(lambda), at: at ?? driverParameters(driver).fs }),
};

const hysteresisFields = { lossFactor: described(plainNumber(1e-4, 1, 0.1), 'loss factor of the material') };
const hysteresis: SuspensionChoice<typeof hysteresisFields> = {
  name: 'hysteresis',
  what: 'a damping that falls with frequency, beside Rms',
  fields: hysteresisFields,
  model: ({ lossFactor }) => hystereticDamping({ lossFactor: ratio(lossFactor) }),
};

/** The coil models that a brief may ask for when no others are passed in. A driver with `Le` needs none. */
export const standardCoils = [lossyInductance, fourParameters, semiInductance, LR2] as const;

/** The suspension models that a brief may ask for when no others are passed in. Without one the compliance is constant. */
export const standardSuspensions = [creep, hysteresis] as const;

/** Both. */
export const standardModels: DriverModels = { coils: standardCoils, suspensions: standardSuspensions };
