/** Specs of the families with two chambers, and of boxes that open otherwise than by a vent; the driver is invented. */
import { standardAir } from '@airspring/core/air';
import type {
  AperiodicBoxInput,
  CapacitorBoxInput,
  FourthOrderBandPassInput,
  OpenBaffleInput,
  ParallelBandPassInput,
} from '@airspring/core/enclosure';
import { type By, rescaledAir, rescaledDriver } from '@airspring/core/laws';
import { si } from '@airspring/core/quantity';
import { driver } from './boxes.js';

/** 1 for each number: the units as they are. */
const same: By = () => 1;
const ofUnits = (by: By) => ({
  drivers: by === same ? driver : rescaledDriver(driver, by),
  sourceResistance: si('resistance', 0.2 * by([2, 1, -3, -2])),
});
const litres = (by: By, value: number) => si('volume', (value / 1e3) * by([3, 0, 0, 0]));
const hertz = (by: By, value: number) => si('frequency', value * by([0, 0, -1, 0]));
const area = (by: By, value: number) => si('area', value * by([2, 0, 0, 0]));

const front = (by: By) => ({
  frontVolume: litres(by, 22),
  frontTuning: hertz(by, 58),
  frontVentArea: area(by, 70e-4),
  frontQL: 8,
  frontQA: 40,
  frontQP: 30,
});
const specs = {
  fourth: (by: By): FourthOrderBandPassInput => ({
    ...ofUnits(by),
    ...front(by),
    rearVolume: litres(by, 30),
    rearFillGain: 1.15,
    rearQL: 9,
    rearQA: 25,
  }),
  sixth: (by: By): ParallelBandPassInput => ({
    ...ofUnits(by),
    ...front(by),
    rearVolume: litres(by, 35),
    rearTuning: hertz(by, 31),
    rearVentArea: area(by, 90e-4),
    rearQL: 11,
    rearQA: 25,
    rearQP: 45,
  }),
  capacitor: (by: By): CapacitorBoxInput => ({
    ...ofUnits(by),
    netVolume: litres(by, 20),
    seriesCapacitance: si('capacitance', 7e-4 * by([-2, -1, 4, 2])),
    QL: 12,
    QA: 30,
  }),
  aperiodic: (by: By): AperiodicBoxInput => ({
    ...ofUnits(by),
    netVolume: litres(by, 20),
    ventResistance: si('acousticResistance', 11000 * by([-4, 1, -1, 0])),
    ventArea: area(by, 50e-4),
  }),
  openBaffle: (by: By): OpenBaffleInput => ({ ...ofUnits(by), path: si('length', 0.45 * by([1, 0, 0, 0])) }),
};

const trialOf = <Spec>(spec: (by: By) => Spec) => ({
  spec: spec(same),
  rescaled: (by: By) => ({ spec: spec(by), air: rescaledAir(standardAir, by) }),
});
/** What is stated of the air in front, and behind. */
const inFront = { netVolume: 0.022, fb: 58, ventArea: 70e-4, QL: 8, QA: 40, QP: 30 };
const behind = { netVolume: 0.035, fb: 31, ventArea: 90e-4, QL: 11, QA: 25, QP: 45 };
const closedBehind = { netVolume: 0.03, fillGain: 1.15, QL: 9, QA: 25 };
export const trials = {
  fourth: { ...trialOf(specs.fourth), chambers: [closedBehind, inFront], frequencies: [58] },
  sixth: { ...trialOf(specs.sixth), chambers: [behind, inFront], frequencies: [31, 58] },
  capacitor: trialOf(specs.capacitor),
  aperiodic: trialOf(specs.aperiodic),
  openBaffle: trialOf(specs.openBaffle),
};
