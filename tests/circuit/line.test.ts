/** Uniform lines without loss behind a driver or as a vent, in the circuit simulator: its tubes are transmission lines there. */
import { lineBox, lineVentedBox } from '@airspring/core/enclosure';
import { compiledSystem, probeColumns } from '@airspring/core/response';
import { check } from '../ledger/check.js';
import { flat, largest } from './compare.js';
import { simulatedProbes } from './metered.js';
import { tubeVented, uniformLine } from './seam-cases.js';

const { frequencies, columns } = await simulatedProbes(uniformLine.network, 10, 1000, 41);
for (const [probe, unit] of [
  ['coneVelocity', 'm/s per V'],
  ['ventAirSpeed', 'm/s per V'],
  ['current', 'A per V'],
] as const) {
  check(`enclosure.line.circuit.${probe}`, {
    formula: 'enclosure/lineBox',
    source: { key: 'ngspice', locator: '.ac of the netlist text, 10 Hz to 1 kHz' },
    status: 'derived',
    kind: 'program',
    given: { driverAt: { value: 0.35, unit: 'm' }, opening: { value: 2.3, unit: 'm' } },
    got: () => flat(probeColumns(compiledSystem(lineBox(uniformLine.spec)), frequencies)[probe]!),
    expected: flat(columns[probe]!),
    unit,
    tolerance: { absolute: 5e-14 * largest(columns[probe]!), why: 'of the largest value; both in double precision' },
  });
}

const vented = await simulatedProbes(tubeVented.network, 10, 1000, 41);
for (const [probe, unit] of [
  ['coneVelocity', 'm/s per V'],
  ['ventAirSpeed', 'm/s per V'],
] as const) {
  const column = vented.columns[probe]!;
  check(`enclosure.line-vented.circuit.${probe}`, {
    formula: 'enclosure/lineVentedBox',
    source: { key: 'ngspice', locator: '.ac of the netlist text, 10 Hz to 1 kHz' },
    status: 'derived',
    kind: 'program',
    given: { vents: { value: 2, unit: '1' }, QL: { value: 7, unit: '1' }, QA: { value: 60, unit: '1' } },
    got: () => flat(probeColumns(compiledSystem(lineVentedBox(tubeVented.spec)), vented.frequencies)[probe]!),
    expected: flat(column),
    unit,
    tolerance: { absolute: 5e-14 * largest(column), why: 'of the largest value; both in double precision' },
  });
}
