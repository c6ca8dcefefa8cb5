import { expect } from 'vitest';
import { readBrief } from '../../../packages/airspring/src/brief/read.js';
import { standard } from '../../../packages/airspring/src/kind/standard.js';
import { demo } from '../../arbitrary/brief.js';
import { fc, test } from '../../arbitrary/property.js';
import { pathsOf } from '../../refusal/faults.js';

// biome-ignore lint/suspicious/noExplicitAny: a brief broken on purpose has no type
type Broken = Record<string, any>;

/** Ways to break a brief that have nothing to do with each other: the paths that are told, and what is done. */
const breaks: readonly (readonly [paths: string, (brief: Broken) => void])[] = [
  ['title', (b) => (b.title = '')],
  ['colour', (b) => (b.colour = 'red')],
  ['space.colour', (b) => (b.space.colour = 'red')],
  ['space.shade', (b) => (b.space.shade = 'dark')],
  ['space.width', (b) => (b.space.width = '480')],
  ['space.panelThickness', (b) => (b.space.panelThickness = '200 mm')],
  ['wanted.lowest', (b) => (b.wanted.lowest = '200 Hz')],
  ['wanted.level', (b) => (b.wanted.level = 92)],
  ['vent.smallest', (b) => (b.vent.smallest = '150 mm')],
  ['vent.counts[1]', (b) => (b.vent.counts = [1, 9])],
  ['amplifier.voltage', (b) => delete b.amplifier.voltage],
  ['printer.height', (b) => (b.printer.height = '20 V')],
  ['weights.deep', (b) => (b.weights = { deep: 200 })],
  ['box.QL', (b) => (b.box = { QL: '7' })],
  ['air.pressure', (b) => (b.air = { ...b.air, altitude: '0 m', pressure: '1 bar' })],
  ['drivers[0].Xmax', (b) => delete b.drivers[0].Xmax],
  ['drivers[0].depth', (b) => (b.drivers[0].depth = '-118 mm')],
  ['drivers[0].fx', (b) => (b.drivers[0].fx = '24 Hz')],
  ['drivers[0].Qts', (b) => (b.drivers[0].Qts = 0.9)],
  ['drivers[0].cutoutDiameter', (b) => (b.drivers[0].cutoutDiameter = '300 mm')],
  ['drivers[0].coil.LR2.R2', eddy],
  ['drivers[0].wirings[0].isobaric', (b) => (b.drivers[0].wirings[0] = { isobaric: true })],
  ['drivers[0].wirings[1]', (b) => (b.drivers[0].wirings[1] = { series: 4, parallel: 2 })],
  ['drivers[0].wirings[2].series', (b) => (b.drivers[0].wirings[2] = { series: 1.5 })],
  // Neither Re nor Bl can be found.
  ['drivers[1]', (b) => delete b.drivers[1].Re],
  ['drivers[2]', (b) => (b.drivers[2] = 'the other one')],
];

/** R2 is missing of a coil in the place of Le. */
function eddy(brief: Broken): void {
  delete brief.drivers[0].Le;
  brief.drivers[0].coil = { LR2: { L2: '1 mH' } };
}

const told = (brief: unknown) => pathsOf(() => readBrief(brief, standard));

const whole = (): Broken => {
  const [driver] = demo.drivers;
  const wirings = [{}, {}, {}];
  return JSON.parse(JSON.stringify({ ...demo, drivers: [{ ...driver, wirings }, driver, driver] }));
};

test.prop([fc.subarray([...breaks], { minLength: 1 })], { numRuns: 200 })(
  'what is broken is told all at once, each fault once, and nothing else',
  (chosen) => {
    const brief = whole();
    for (const [, broken] of chosen) broken(brief);
    expect(told(brief).sort()).toEqual(chosen.flatMap(([paths]) => paths.split(' ')).sort());
  },
);

test.prop([fc.constant(breaks)], { numRuns: 1 })('a brief that nobody broke is read', () => {
  expect(told(whole())).toEqual([]);
});
