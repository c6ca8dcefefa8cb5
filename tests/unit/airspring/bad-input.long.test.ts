import { cpuUsage } from 'node:process';
import { type Fault, faultLine, type InputError } from '@airspring/core/fault';
import { expect, test } from 'vitest';
import { readBrief } from '../../../packages/airspring/src/brief/read.js';
import { standard } from '../../../packages/airspring/src/kind/standard.js';
import { demo } from '../../arbitrary/brief.js';
import { ABSENT, type BadInput, badInputs } from './bad-input.js';

/** The whole brief with something put in its place. */
function changed(place: string, value: unknown): unknown {
  if (place === '') return value;
  const brief = structuredClone(demo) as unknown as Record<string, unknown>;
  const names = place.split('.');
  const last = names.pop() as string;
  const record = names.reduce((part, name) => part[name] as Record<string, unknown>, brief);
  if (value === ABSENT) delete record[last];
  else record[last] = value;
  return brief;
}

function refusal(brief: unknown): InputError {
  try {
    readBrief(brief, standard);
  } catch (error) {
    return error as InputError;
  }
  throw new Error('it was taken');
}

const shown = (value: unknown) => (typeof value === 'object' ? 'a record or list' : String(value).slice(0, 30));

test('there are two hundred of them', () => {
  expect(badInputs.length).toBeGreaterThanOrEqual(200);
});

test.each(badInputs.map(([place, value], i) => [i, place.slice(0, 30) || 'brief', shown(value)] as const))(
  '%i: %s: %s',
  (i) => {
    const [place, value, code, path, says] = badInputs[i] as BadInput;
    const { name, message, faults } = refusal(changed(place, value));
    expect(name).toBe('InputError');
    const found = faults.find((fault) => fault.path === path && fault.code === code) as Fault;
    expect(found, message.slice(0, 2000)).toBeDefined();
    expect(faultLine(found)).toContain(says);
    expect(message.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Cf}]/u);
    expect(message).not.toMatch(/^ +at |undefined|\(SI\)|\bNaN\b(?! mm)/m);
    const lines = message.split('\n');
    expect(lines.length).toBeLessThanOrEqual(101);
    for (const line of lines) expect(line.length).toBeLessThan(700);
  },
);

test('of a brief that is none, one fault is told; of one wrong thing, one', () => {
  for (const value of [[], null, 'x', 5]) expect(refusal(value).faults).toHaveLength(1);
  for (const place of ['space', 'wanted', 'amplifier']) expect(refusal(changed(place, [])).faults).toHaveLength(1);
  expect(refusal(changed('drivers.0.Vas', ABSENT)).faults).toHaveLength(1);
});

/** Seconds of processor time. */
function cost(work: () => void): number {
  const before = cpuUsage();
  work();
  const { user, system } = cpuUsage(before);
  return (user + system) / 1e6;
}

test('the time grows no faster than the brief', () => {
  const wirings = (count: number) => Array(count).fill({ series: 'x', parallel: 'x', isobaric: 'x' });
  const bad = (count: number) => changed('drivers', Array(count).fill({ wirings: wirings(16) }));
  refusal(bad(8));
  const few = Math.min(...[1, 2, 3].map(() => cost(() => refusal(bad(8)))));
  const many = cost(() => refusal(bad(200)));
  // 25 times as much; a square would be 625 times.
  expect(many).toBeLessThan(87 * few + 0.05);
});
