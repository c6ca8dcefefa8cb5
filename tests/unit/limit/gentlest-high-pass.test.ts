import type { Driver } from '@airspring/core/driver';
import type { System } from '@airspring/core/enclosure';
import { butterworthShape, chebyshevShape } from '@airspring/core/filter';
import {
  gentlestHighPass,
  greatestLevel,
  type ProtectionInput,
  travelLimit,
  voltageLimit,
} from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import { expect, test } from 'vitest';
import { closedOf, ventedOf } from '../../literature/enclosure/textbook.js';

const fb = 30;
const vented = ventedOf({ QL: 7, Qts: 0.38, h: 1, alpha: 1.4 });
const limitsOf = (system: System) => {
  const { driver } = (system.spec as { drivers: { driver: Driver } }).drivers;
  return travelLimit({ ...driver, Xmax: si('displacementPeak', 0.006) });
};
const limits = limitsOf(vented);
const still = greatestLevel(vented, limits, [1e-3]).driveVoltageRms[0]!;
const driveVoltageRms = si('voltageRms', still / 0.3);
const found = (input: ProtectionInput, system = vented) => gentlestHighPass(system, limitsOf(system), input);
const faultsOf = (work: () => unknown): unknown => {
  try {
    work();
  } catch (error) {
    return (error as { faults: { code: string; path: string }[] }).faults.map(({ code, path }) => `${code} ${path}`);
  }
  return 'answered';
};

test('the filter of a vented box lies near and below its tuning', () => {
  const answer = found({ driveVoltageRms, candidates: [2, 3, 4].map(butterworthShape) });
  if (!answer.ok) throw new Error(answer.because[0]?.text);
  for (const { corner, bindingAt } of answer.candidates) {
    expect(corner).toBeGreaterThan(0.6 * fb);
    expect(corner).toBeLessThan(fb);
    expect(bindingAt).toBeLessThan(fb);
  }
});

test('a filter that lifts near its corner may cost no depth at all, and comes first', () => {
  const answer = found({ driveVoltageRms, candidates: [butterworthShape(2), chebyshevShape(4, { ripple: 0.5 })] });
  if (!answer.ok) throw new Error(answer.because[0]?.text);
  expect(answer.candidates[0].shape.name).toBe('Chebyshev with a ripple of 0.5 dB');
  expect(answer.candidates[0].cost.depth).toBeLessThan(0);
});

test('of filters that cost the same depth, the one that delays least comes first', () => {
  const [first, second] = [butterworthShape(4), butterworthShape(4)];
  const answer = found({ driveVoltageRms, candidates: [first, second], at: '60 Hz' });
  if (!answer.ok) throw new Error(answer.because[0]?.text);
  expect(answer.at).toBe(60);
  expect(answer.candidates[0].shape).toBe(first);
  // In a box that is driven too far by a little, all filters cost next to nothing, and the lowest order delays least.
  const soft = found({ driveVoltageRms: si('voltageRms', still * 1.005), candidates: [4, 3, 2].map(butterworthShape) });
  if (!soft.ok) throw new Error(soft.because[0]?.text);
  const tenths = soft.candidates.map(({ cost }) => Math.round(10 * cost.depth));
  expect(tenths).toEqual([0, 0, 0]);
  const delays = soft.candidates.map(({ cost }) => cost.delay);
  expect(delays).toEqual([...delays].sort((a, b) => a - b));
});

test('says why there is none', () => {
  const codeOf = (answer: ReturnType<typeof found>) => (answer.ok ? 'found' : answer.because[0]?.code);
  expect(codeOf(found({ driveVoltageRms: si('voltageRms', still / 1000) }))).toBe('safe-throughout');
  const weak = [voltageLimit('1 V')];
  expect(codeOf(gentlestHighPass(vented, weak, { driveVoltageRms: '2 V' }))).toBe('above-at-end');
  const closed = closedOf({ Qtc: 0.7, fc: 50 });
  const most = greatestLevel(closed, limitsOf(closed), [190]).driveVoltageRms[0]!;
  const strong = found({ driveVoltageRms: si('voltageRms', most), candidates: [butterworthShape(1)] }, closed);
  expect(codeOf(strong)).toBe('no-filter-holds');
});

test('refuses what it cannot use, with the path', () => {
  expect(faultsOf(() => found({}))).toEqual(['empty protection.driveVoltageRms']);
  expect(faultsOf(() => found({ driveVoltageRms: '5 V', level: 100 }))).toEqual([
    'conflict protection.driveVoltageRms',
  ]);
  expect(faultsOf(() => found({ driveVoltageRms: '5 V', candidates: [] }))).toEqual(['empty protection.candidates']);
  expect(faultsOf(() => found({ driveVoltageRms: '5 V', from: '50 Hz', to: '20 Hz' }))).toEqual([
    'unsorted protection.to',
  ]);
  expect(faultsOf(() => found({ driveVoltageRms: '-5 V' }))).toEqual(['not-positive protection.driveVoltageRms']);
  const bad = { name: 'bad', denominator: [2, 1], sources: [] };
  expect(faultsOf(() => found({ driveVoltageRms, candidates: [bad] }))).toEqual(['inconsistent shape.denominator']);
  const growing = { name: 'growing', denominator: [1, 0.1, 0.1, 5], sources: [] };
  expect(faultsOf(() => found({ driveVoltageRms, candidates: [growing] }))).toEqual([
    'inconsistent filter.denominator',
  ]);
  expect(faultsOf(() => gentlestHighPass(vented, [], { driveVoltageRms: '5 V' }))).toEqual(['empty limits']);
});
