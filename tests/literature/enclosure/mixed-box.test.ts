import { driversOf, mixedBox } from '@airspring/core/enclosure';
import { greatestLevel, limitsOfEach } from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import { compiledSystem, lowestLoad, probeColumns } from '@airspring/core/response';
import { flat } from '../../circuit/compare.js';
import { checkIn } from '../../ledger/check.js';
import { air, boxes, caseNames, fixture } from './mixed-box.js';
import { closedOf } from './textbook.js';

const check = checkIn(air);

const grid = Float64Array.from(fixture.frequencies);
const columns = (name: keyof typeof boxes) => probeColumns(compiledSystem(boxes[name]), grid);
const largest = (list: readonly number[]) => Math.max(...list.map(Math.abs));
const program = {
  source: { key: 'mpmath', locator: 'lu_solve of the equations of motion at 40 digits, script mixed-box.py' },
  status: 'derived',
  kind: 'program',
} as const;
const given = {
  boxes: { value: caseNames.join(', '), unit: '' },
  frequencies: { value: fixture.frequencies.join(' '), unit: 'Hz' },
};
const each = ['low', 'wide', 'small'] as const;
const all = <T>(of: (name: keyof typeof boxes) => readonly T[]): T[] => caseNames.flatMap((name) => [...of(name)]);
const of = (probe: string) => () => all((name) => flat(columns(name)[probe]!));
const within = (expected: readonly number[], relative: number) => ({
  absolute: relative * largest(expected),
  why: 'of the largest value, rounding of some twenty equations',
});

const flow = all((name) => fixture.cases[name].flow);
check('enclosure.mixed.flow', {
  ...program,
  formula: 'enclosure/mixedBox',
  given,
  got: of('radiatedFlow'),
  expected: flow,
  unit: 'm³/s per V',
  tolerance: within(flow, 2e-14),
});
const current = all((name) => fixture.cases[name].current);
check('enclosure.mixed.current', {
  ...program,
  formula: 'enclosure/mixedBox',
  given,
  got: of('current'),
  expected: current,
  unit: 'A per V',
  tolerance: within(current, 2e-14),
});
const velocity = all((name) => each.flatMap((one) => fixture.cases[name].velocity[one]));
check('enclosure.mixed.velocity', {
  ...program,
  formula: 'enclosure/mixedBox',
  given,
  got: () => all((name) => each.flatMap((one) => flat(columns(name)[`coneVelocity ${one}`]!))),
  expected: velocity,
  unit: 'm/s per V',
  tolerance: within(velocity, 2e-14),
});
const airSpeed = all((name) => fixture.cases[name].airSpeed);
check('enclosure.mixed.vent', {
  ...program,
  formula: 'enclosure/mixedBox',
  given,
  got: of('ventAirSpeed main'),
  expected: airSpeed,
  unit: 'm/s per V',
  tolerance: within(airSpeed, 2e-14),
});
/** What each current makes across the resistance of its own coil. */
const currents = all((name) =>
  each.flatMap((one) => fixture.cases[name].currents[one].map((i) => i * fixture.drivers[one].Re)),
);
check('enclosure.mixed.each', {
  ...program,
  formula: 'enclosure/driversOf',
  given,
  got: () =>
    all((name) =>
      driversOf(boxes[name].spec.drivers).flatMap(({ name: one, driver }) =>
        flat(columns(name)[`current ${one}`]!).map((i) => i * driver.equivalent.Re),
      ),
    ),
  expected: currents,
  unit: 'V per V',
  tolerance: within(currents, 2e-14),
});

/** One to eight cones at one closed chamber, all in parallel. */
const crowds = () =>
  fixture.resonances.map(({ drivers, netVolume }) => {
    const parallel = drivers.map((one, i) => ({ name: `${i}`, driver: { ...one, Rms: 1, Re: 6, Bl: 10 } as never }));
    const chambers = { box: { netVolume: si('volume', netVolume), QL: 5 } };
    return mixedBox({ drivers: { parallel }, chambers, sourceResistance: si('resistance', 0.25) }, air);
  });
const cones = { value: fixture.resonances.map(({ drivers }) => drivers.length).join(' '), unit: '' };
const crowdFlow = fixture.resonances.flatMap((one) => one.flow);
check('enclosure.mixed.crowd', {
  ...program,
  formula: 'enclosure/mixedBox',
  given: { cones, frequencies: given.frequencies },
  got: () => crowds().flatMap((box) => flat(probeColumns(compiledSystem(box), grid).radiatedFlow!)),
  expected: crowdFlow,
  unit: 'm³/s per V',
  tolerance: within(crowdFlow, 2e-14),
});

/** The frequency at which a closed chamber's losses are counted, read off its leak: R = QL/(wc Cab). */
check('enclosure.mixed.resonance', {
  ...program,
  source: {
    key: 'scipy',
    locator: 'eigenvalues of stiffness and mass of 1, 2, 3 and 8 cones, script mixed-box.py',
  },
  formula: 'enclosure/mixedBox',
  given: { cones },
  got: () =>
    crowds().map(({ network: { values } }) => 5 / ((values['leak box'] as number) * (values['Cab box'] as number))),
  expected: fixture.resonances.map(({ wc }) => wc),
  unit: 'rad/s',
  tolerance: { relative: 1e-14, why: 'both in double precision' },
});

const loads = all((name) => [...fixture.cases[name].impedance, ...fixture.cases[name].angle]);
check('response.lowest-load.mixed', {
  ...program,
  source: { key: 'scipy', locator: 'minimize_scalar over 4001 points of the impedance, script mixed-box.py' },
  formula: 'response/lowestLoad',
  given: { boxes: given.boxes, band: { value: '20 200', unit: 'Hz' } },
  got: () =>
    all((name) => {
      const { impedance, angle } = lowestLoad(boxes[name]);
      return [impedance.frequency, impedance.value, angle.frequency, angle.value];
    }),
  expected: loads,
  unit: 'Hz, Ω, Hz, rad',
  tolerance: { relative: 1e-7, why: 'an extremum is flat: its place is known to the root of the rounding' },
});

/** Angle of the motional circuit: arg Z = atan(y/Qt) − atan(y/Qm), y = x/(1 − x²), greatest where y² = Qt Qm. */
const Qtc = [0.4, 0.7, 1.1];
const system = (Q: number) => closedOf({ Qtc: Q, fc: 50 });
const mechanicalQ = (Q: number) => {
  const { driver } = (system(Q).spec as { drivers: { driver: { Mms: number; Rms: number } } }).drivers;
  return (2 * Math.PI * 50 * driver.Mms) / driver.Rms;
};
check('response.lowest-load.angle', {
  source: {
    key: 'small1972direct',
    locator: 'driver impedance Z = Re (1 − x² + jx/Qt)/(1 − x² + jx/Qm), its greatest angle',
  },
  status: 'derived',
  kind: 'example',
  formula: 'response/lowestLoad',
  given: { Qtc: { value: Qtc, unit: '1' } },
  got: ({ Qtc }) => Math.abs(lowestLoad(system(Qtc), { from: '10 Hz', to: '300 Hz' }).angle.value),
  expected: Qtc.map((Q) => Math.asin((mechanicalQ(Q) - Q) / (mechanicalQ(Q) + Q))),
  unit: 'rad',
  tolerance: { relative: 2e-14, why: 'flat at the extremum: rounding alone' },
});
/** Far from resonance it is Re and what is left of the bump: |Z|²/Re² = ((1−x²)² + x²/Qt²)/((1−x²)² + x²/Qm²). */
check('response.lowest-load.impedance', {
  source: {
    key: 'small1972direct',
    locator: 'driver impedance, magnitude at the end of the band farthest from resonance',
  },
  status: 'derived',
  kind: 'example',
  formula: 'response/lowestLoad',
  given: { Qtc: { value: Qtc, unit: '1' } },
  got: ({ Qtc }) => {
    const box = system(Qtc);
    const { Re } = (box.spec as { drivers: { driver: { Re: number } } }).drivers.driver;
    return lowestLoad(box, { from: '30 Hz', to: '400 Hz' }).impedance.value / Re;
  },
  expected: Qtc.map((Q) => {
    const Qm = mechanicalQ(Q);
    const x = 8;
    const a = (1 - x * x) ** 2;
    return Math.sqrt((a + (x / Q) ** 2) / (a + (x / Qm) ** 2));
  }),
  unit: 'of Re',
  tolerance: { relative: 1e-14, why: 'rounding alone: the driver is made from its Q by division' },
});

const drive = all((name) => fixture.cases[name].drive);
const most = (name: keyof typeof boxes, speed?: number) =>
  greatestLevel(
    boxes[name],
    limitsOfEach(boxes[name].spec, speed === undefined ? {} : { airSpeedRms: si('airSpeedRms', speed) }),
    grid,
  ).driveVoltageRms;
check('limit.of-each.drive', {
  ...program,
  formula: 'limit/limitsOfEach',
  given,
  got: () => all((name) => [...most(name)]),
  expected: drive,
  unit: 'V rms',
  tolerance: { relative: 2e-14, why: 'rounding of some twenty equations' },
});
check('limit.of-each.vent', {
  ...program,
  formula: 'limit/limitsOfEach',
  given: { ...given, airSpeedRms: { value: fixture.airSpeedRms, unit: 'm/s' } },
  got: () => all((name) => [...most(name, fixture.airSpeedRms)]),
  expected: all((name) => fixture.cases[name].driveWithVent),
  unit: 'V rms',
  tolerance: { relative: 2e-14, why: 'rounding of some twenty equations' },
});
