/** What is told of a nonlinear driver: its states at the greatest voltage, as core finds them. */
import { branchesAtLevel } from '@airspring/core/limit';
import { type Length, si } from '@airspring/core/quantity';
import { respond, respondAtLevel } from '@airspring/core/response';
import { type VentSection, ventLoss } from '@airspring/core/vent';
import type { Brief } from 'airspring';
import { expect, test } from 'vitest';
import campfire from '../../../packages/airspring/briefs/campfire-box.json' with { type: 'json' };
import { readBrief } from '../../../packages/airspring/src/brief/read.js';
import { closed } from '../../../packages/airspring/src/kind/closed.js';
import { standard } from '../../../packages/airspring/src/kind/standard.js';
import { vented } from '../../../packages/airspring/src/kind/vented.js';
import { nonlinearTravelOf } from '../../../packages/airspring/src/record/nonlinear-travel.js';
import { playingOf } from '../../../packages/airspring/src/record/playing.js';
import { nonlinearTravelSentences } from '../../../packages/airspring/src/words/nonlinear-travel-text.js';
import { phrasing } from '../../../packages/airspring/src/words/phrasing.js';
import { faultsOf } from '../../refusal/faults.js';

const [{ Qts: _1, Qes: _2, ...sheet }] = campfire.drivers as [(typeof campfire.drivers)[0]];
/** A driver that little damps, with curves, in a large closed box; its voltage. */
function boxWith(largeSignal: object, voltage: string, damped = 1.6) {
  const driver = { ...sheet, Qms: 8, Qes: (8 * damped) / (8 - damped), Qts: damped, largeSignal };
  const brief = {
    ...campfire,
    drivers: [driver],
    box: { kinds: ['closed'] },
    vent: undefined,
    amplifier: { voltage, current: '20 A' },
  };
  const job = readBrief(JSON.parse(JSON.stringify(brief)) as Brief, standard);
  const variant = closed.variants(job as never, job.choices[0]!)[0]!;
  const { system, largeSignal: large } = playingOf({ variant, point: [0.06], demand: {} } as never);
  return { job, system, told: () => nonlinearTravelOf(job, system, large) };
}
/** The same driver in a vented box. */
function ventedWith(largeSignal: object) {
  const driver = { ...sheet, Qms: 8, Qes: 0.4, Qts: 0.4 / 1.05, largeSignal };
  const brief = {
    ...campfire,
    drivers: [driver],
    box: { kinds: ['vented'] },
    amplifier: { voltage: '30 V', current: '20 A' },
  };
  const job = readBrief(JSON.parse(JSON.stringify(brief)) as Brief, standard);
  return { job, variant: vented.variants(job as never, job.choices[0]!)[0]! };
}
const lossOf = ({ section, length }: { readonly section: VentSection; readonly length?: Length }) =>
  ventLoss({ vent: { ...section, length: length! } }).nominal;
const stiff = { reach: '8 mm', coefficients: [0, 4] };
const say = phrasing({});
const text = (told: ReturnType<typeof nonlinearTravelOf>, voltage: number) =>
  nonlinearTravelSentences(told!, { amplifier: { voltage } }, say);

test('of a driver that stiffens the tones with two states are told, and at none beside them are there two', () => {
  const { system, told: tell } = boxWith({ stiffness: stiff }, '14 V', 4);
  const told = tell()!;
  const at = (frequency: number) =>
    branchesAtLevel(system, [frequency], {
      driveVoltageRms: '14 V',
      stiffness: { coefficients: [1, 0, 4 / 0.008 ** 2], upTo: '8 mm' },
    })[0]!;
  const staysAt = (frequency: number) => at(frequency).branches.filter(({ stable }) => stable);
  const { several, travel } = told;
  expect(staysAt(several!.frequency).map(({ displacementPeak }) => displacementPeak)).toEqual(several!.travels);
  for (const f of [several!.from, several!.to]) expect(staysAt(f)).toHaveLength(2);
  // Beyond the neighbouring tones that were asked.
  for (const f of [several!.from / 1.05, several!.to * 1.05]) expect(staysAt(f).length).toBeLessThan(2);
  expect(staysAt(travel!.frequency).at(-1)!.displacementPeak).toBe(travel!.value);
  expect(travel!.linear).toBeCloseTo(
    respond(system, [travel!.frequency], { driveVoltageRms: '14 V' }).displacementPeak[0]!,
    12,
  );
  expect(text(told, 14)).toMatch(
    /^By the curve of its stiffness, 14 V rms moves the cone .* in the band\. .* it can swing in two ways, at .* Hz by [\d.]+ mm or [\d.]+ mm/,
  );
});

test('of a driver that is damped well no tone has two, and with less voltage it comes near to a linear one', () => {
  const { told } = boxWith({ stiffness: stiff, forceFactor: { reach: '7 mm', coefficients: [0, -0.3] } }, '0.5 V', 0.5);
  const one = told()!;
  expect(one.several).toBeUndefined();
  expect(one.reach).toBe(0.007);
  expect(one.travel!.value / one.travel!.linear).toBeCloseTo(1, 1);
  expect(text(one, 0.5)).toContain('By the curves of its force factor and stiffness');
  expect(text(one, 0.5)).toContain('At no tone can it swing in two ways');
});

test('a drive that goes beyond the curves is told', () => {
  const { told } = boxWith({ stiffness: { reach: '1 mm', coefficients: [0, 0.5] } }, '20 V');
  const one = told()!;
  expect(one.beyond).toBeDefined();
  expect(text(one, 20)).toContain('it goes beyond 1 mm, up to where it is known');
});

test('nothing is told without a curve, and a curve that falls to zero is refused where the brief tells it', () => {
  expect(boxWith({ Xmech: '9 mm' }, '9 V').told()).toBeUndefined();
  const { told } = boxWith({ forceFactor: { reach: '8 mm', coefficients: [0, -1.2] } }, '9 V');
  expect(faultsOf(told)).toMatchObject([
    { code: 'not-positive', path: 'drivers[0].largeSignal.forceFactor.coefficients', remedy: 'Shorten reach.' },
  ]);
});

test('in a vented box the loss of the vent is counted, in the states and in what a linear driver would do', () => {
  const { job, variant } = ventedWith({ forceFactor: { reach: '30 mm', coefficients: [0, -0.3] } });
  const { system, largeSignal, openings } = playingOf({ variant, point: [0.03, 44, 0.05], demand: {} } as never);
  const told = nonlinearTravelOf(job, system, largeSignal, openings)!;
  const { loss, driveVoltageRms } = { loss: lossOf(openings![0]!), driveVoltageRms: si('voltageRms', 30) };
  const { value, frequency, linear } = told.travel!;
  const Bl = { coefficients: [1, 0, -0.3 / 0.03 ** 2], upTo: '30 mm' } as const;
  const most = (withLoss: boolean) =>
    branchesAtLevel(system, [frequency], { driveVoltageRms, Bl, ...(withLoss && { loss }) })[0]!.branches.at(-1)!;
  expect(value).toBe(most(true).displacementPeak);
  expect(most(false).displacementPeak).not.toBeCloseTo(value, 5);
  expect(linear).toBe(respondAtLevel(system, [frequency], { driveVoltageRms, loss }).displacementPeak[0]);
  expect(told.ventLoss).toBe(true);
  expect(text(told, 30)).toContain('The loss of the vent is counted. This leaves out harmonics, and');
  expect(nonlinearTravelOf(job, system, largeSignal)!.ventLoss).toBe(false);
});
