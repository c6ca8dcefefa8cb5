import type { System } from '@airspring/core/enclosure';
import type { Frequency, Level } from '@airspring/core/quantity';
import { type Columns, cutoff, referenceLevel, respond } from '@airspring/core/response';
import { describe, expectTypeOf, test } from 'vitest';

declare const system: System;

describe('a response', () => {
  test('is driven by rms volts, and may lack the air speed', () => {
    expectTypeOf(respond(system, [20, 40])).toEqualTypeOf<Columns>();
    expectTypeOf<Columns['airSpeedPeak']>().toEqualTypeOf<Float64Array | undefined>();
    // @ts-expect-error watts are no drive
    respond(system, [20], { driveVoltageRms: '1 W' });
  });
  test('gives quantities, and a cut-off only where there is one', () => {
    expectTypeOf(referenceLevel(system)).toEqualTypeOf<Level>();
    const found = cutoff(system, { reference: 'maximum' });
    if (found.ok) expectTypeOf(found.frequency).toEqualTypeOf<Frequency>();
    // @ts-expect-error not known to be there
    found.frequency;
    // @ts-expect-error no such reference
    cutoff(system, { reference: 'top' });
  });
});
