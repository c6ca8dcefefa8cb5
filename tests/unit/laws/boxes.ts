/** Specs that laws are tried on; drivers invented. */
import { type Air, standardAir } from '@airspring/core/air';
import { lr2Inductor } from '@airspring/core/driver';
import type { ClosedBoxInput, InfiniteBaffleInput, MixedBoxInput, VentedBoxInput } from '@airspring/core/enclosure';
import { type By, type FamilyTrial, type LawResult, rescaledAir, rescaledDriver } from '@airspring/core/laws';
import { si } from '@airspring/core/quantity';
import { eachFamilyLaw } from '../../../packages/core/src/laws/family-laws.js';

export const driver = {
  Sd: si('coneArea', 0.033),
  Mms: si('mass', 0.086),
  Cms: si('compliance', 4e-4),
  Rms: si('mechanicalResistance', 3.6),
  Re: si('resistance', 5.6),
  Bl: si('forceFactor', 14.3),
  coil: lr2Inductor({ Le: si('inductance', 9e-4), R2: si('resistance', 8), L2: si('inductance', 6e-4) }),
};
const small = {
  Sd: si('coneArea', 0.0133),
  Mms: si('mass', 0.018),
  Cms: si('compliance', 9e-4),
  Rms: si('mechanicalResistance', 1.2),
  Re: si('resistance', 6.1),
  Bl: si('forceFactor', 8.2),
};

export const vented: VentedBoxInput = {
  drivers: driver,
  netVolume: si('volume', 0.045),
  fb: si('frequency', 29),
  ventArea: si('area', 0.0044),
  QL: 7,
  QA: 60,
  QP: 80,
  sourceResistance: si('resistance', 0.2),
};
export const closed: ClosedBoxInput = {
  drivers: driver,
  netVolume: si('volume', 0.03),
  fillGain: 1.15,
  QL: 12,
  QA: 30,
};
export const walled: InfiniteBaffleInput = { drivers: driver, sourceResistance: si('resistance', 0.2) };
export const mixed: MixedBoxInput = {
  drivers: {
    parallel: [
      { name: 'low', driver, chamber: 'big' },
      { name: 'high', driver: small, chamber: 'little' },
    ],
  },
  chambers: {
    big: {
      netVolume: si('volume', 0.045),
      fb: si('frequency', 29),
      ventArea: si('area', 0.0044),
      QL: 7,
      QA: 60,
      QP: 80,
    },
    little: { netVolume: si('volume', 0.006), QL: 20, QA: 40 },
  },
  sourceResistance: si('resistance', 0.2),
};

const volume = (by: By, value: number) => si('volume', value * by([3, 0, 0, 0]));
const ohms = (by: By) => si('resistance', 0.2 * by([2, 1, -3, -2]));
const air = (by: By): Air => rescaledAir(standardAir, by);
const tuned = (by: By) => ({
  netVolume: volume(by, 0.045),
  fb: si('frequency', 29 * by([0, 0, -1, 0])),
  ventArea: si('area', 0.0044 * by([2, 0, 0, 0])),
});
export const rescaledVented = (by: By) => ({
  spec: { ...vented, ...tuned(by), drivers: rescaledDriver(driver, by), sourceResistance: ohms(by) },
  air: air(by),
});
export const rescaledClosed = (by: By) => ({
  spec: { ...closed, netVolume: volume(by, 0.03), drivers: rescaledDriver(driver, by) },
  air: air(by),
});
export const rescaledWalled = (by: By) => ({
  spec: { drivers: rescaledDriver(driver, by), sourceResistance: ohms(by) },
  air: air(by),
});
export const rescaledMixed = (by: By) => ({
  spec: {
    drivers: {
      parallel: [
        { name: 'low', driver: rescaledDriver(driver, by), chamber: 'big' },
        { name: 'high', driver: rescaledDriver(small, by), chamber: 'little' },
      ],
    },
    chambers: {
      big: { ...tuned(by), QL: 7, QA: 60, QP: 80 },
      little: { netVolume: volume(by, 0.006), QL: 20, QA: 40 },
    },
    sourceResistance: ohms(by),
  } satisfies MixedBoxInput,
  air: air(by),
});

/** The laws that are broken, by name. */
export const brokenLaws = (results: readonly LawResult[]): readonly string[] =>
  results.filter(({ holds }) => !holds).map(({ law }) => law);

/** The laws that are broken, up to the one that is looked for: those behind it are not tried. */
export function brokenUpTo<Spec, Input>(law: string, trial: FamilyTrial<Spec, Input>): readonly string[] {
  const found: string[] = [];
  for (const one of eachFamilyLaw(trial)) {
    if (!one.holds) found.push(one.law);
    if (!one.holds && one.law === law) break;
  }
  return found;
}

/** The laws that are broken, and why: what a failing test should show. */
export const reasons = (results: readonly LawResult[]): readonly string[] =>
  results.filter(({ holds }) => !holds).map(({ law, detail }) => `${law}: ${detail}`);
