import { greatestProgrammeLevel, pinkProgramme, voltageLimit } from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import { expect, test } from 'vitest';
import { pathsOf } from '../../refusal/faults.js';
import { plainVented } from '../transient/boxes.js';

const never = { name: 'never', greatestRms: 1e300, basis: 'a test' };
const pink = pinkProgramme({ from: '20 Hz', to: '200 Hz', crestFactor: si('ratio', 4) });

test('a limit that no drive reaches is left out, and alone it is refused', () => {
  const { drives, binding } = greatestProgrammeLevel(plainVented, [never, voltageLimit('20 V')], { programme: pink });
  expect(binding).toBe('amplifier voltage');
  expect(Object.keys(drives)).toEqual(['amplifier voltage']);
  expect(pathsOf(() => greatestProgrammeLevel(plainVented, [never], { programme: pink }))).toEqual(['limits']);
});

test('a pink programme tells its faults at the paths of its fields', () => {
  const ask = (input: unknown) => pathsOf(() => pinkProgramme(input as never));
  expect(ask(undefined)).toEqual(['programme']);
  expect(ask({})).toEqual(['programme.from', 'programme.to', 'programme.crestFactor']);
  expect(ask({ from: '200 Hz', to: '20 Hz', crestFactor: 4 })).toEqual(['programme.to']);
});
