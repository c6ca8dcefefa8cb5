/** A timeline against whole runs of the same simulation, and against the sweep of the same box. */
import { parallelBandPass } from '@airspring/core/enclosure';
import { butterworthShape, filterLevel, highPass, lowPass, shelf } from '@airspring/core/filter';
import { airSpeedLimit, heatLimit, quietLimits, voltageLimit } from '@airspring/core/limit';
import { frequencyGrid } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import { ventNoise } from '@airspring/core/vent';
import { recordingFrom, sourceOfBytes, wavBytes } from '@airspring/transient/recording';
import { pinkNoise, scaled } from '@airspring/transient/signal';
import { compileLinear, compileNonlinear, quadraticVentLoss } from '@airspring/transient/simulation';
import { compileTimeline, type Slice, type Timeline, timelineOfRecording } from '@airspring/transient/timeline';
import { expect, test } from 'vitest';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { faultsOf, pathsOf } from '../../refusal/faults.js';
import { closed, tenInch, vented } from './boxes.js';

const sampleRate = '8 kHz';
const rate = 8000;
const vent = { diameter: '87.4 mm' } as const;
const limits = [
  { name: 'travel', probe: 'coneVelocity', integrated: true, greatestRms: 0.004, basis: 'a test' },
  airSpeedLimit('5 m/s'),
  ...heatLimit({ ...tenInch, Pe: 40 as never }),
  voltageLimit('20 V'),
];

function played<M>(timeline: Timeline<M>, drive: Float64Array, length = drive.length) {
  const hearing = timeline.start();
  const slices: Slice[] = [];
  for (let from = 0; from < drive.length; from += length)
    slices.push(...timeline.take(hearing, drive.subarray(from, from + length)));
  slices.push(...timeline.end(hearing));
  return { slices, account: timeline.account(hearing), hearing };
}

const noise = new Float64Array(3 * rate + 123);
scaled(pinkNoise({ seed: 3 }), 15).compile(rate)(0, noise);
const tone = (frequency: number, peak: number, seconds: number) =>
  Float64Array.from({ length: seconds * rate }, (_, n) => peak * Math.sin((2 * Math.PI * frequency * n) / rate));

test('each slice has the greatest values and the rms values of one run of the whole', () => {
  const outputs = ['displacement', 'ventAirSpeed', 'current'];
  const { start, run } = compileLinear(vented, { sampleRate, outputs });
  const columns = outputs.map(() => new Float64Array(noise.length));
  run(start(), noise, columns);
  const { slices, account } = played(compileTimeline(vented, { sampleRate, limits }), noise, 1000);
  expect(slices).toHaveLength(31);
  expect(slices.at(-1)!.duration).toBeCloseTo(123 / rate, 12);
  [noise, ...columns].forEach((column, k) => {
    const name = ['voltage', ...outputs][k]!;
    slices.forEach((slice, i) => {
      const part = column.subarray(800 * i, 800 * (i + 1));
      expect(slice.from).toBeCloseTo(i / 10, 12);
      expect(slice.peak[name]).toBe(Math.max(...part.map(Math.abs)));
      expect(slice.rms[name]).toBeCloseTo(Math.sqrt(part.reduce((sum, y) => sum + y * y, 0) / part.length), 12);
    });
    expect(account.peak[name]).toBe(Math.max(...column.map(Math.abs)));
    expect(account.rms[name]).toBeCloseTo(Math.sqrt(column.reduce((sum, y) => sum + y * y, 0) / column.length), 9);
  });
});

test('blocks of any length give the same slices and the same account', () => {
  const timeline = compileTimeline(vented, { sampleRate, limits, vents: [{ vent }] });
  const { slices, account } = played(timeline, noise);
  for (const length of [1, 7, 800, 4096]) {
    const { slices: again, account: also } = played(timeline, noise, length);
    expect(again).toEqual(slices);
    expect(also).toEqual(account);
  }
});

test('under a steady tone it is the sweep of the box, and the vent is judged as ventNoise judges it', () => {
  for (const frequency of [25, 30, 60]) {
    const voltageRms = 12;
    const { displacementPeak, airSpeedPeak } = respond(vented, [frequency], { driveVoltageRms: `${voltageRms} V` });
    const timeline = compileTimeline(vented, { sampleRate: '48 kHz', limits, vents: [{ vent }] });
    const drive = Float64Array.from(
      { length: 4 * 48_000 },
      (_, n) => voltageRms * Math.SQRT2 * Math.sin((2 * Math.PI * frequency * n) / 48_000),
    );
    const slice = played(timeline, drive).slices.at(-1)!;
    expect(slice.peak.displacement! / displacementPeak[0]!).toBeCloseTo(1, 4);
    expect(slice.peak.ventAirSpeed! / airSpeedPeak![0]!).toBeCloseTo(1, 4);
    expect(slice.used[0]! / (displacementPeak[0]! / (0.004 * Math.SQRT2))).toBeCloseTo(1, 4);
    const { onsets } = ventNoise({ vent, frequency: `${frequency} Hz`, airSpeedPeak: `${airSpeedPeak![0]!} m/s` });
    const [quiet, noisy] = slice.used.slice(-2);
    expect(quiet! / (airSpeedPeak![0]! / onsets[0]!.airSpeedPeak)).toBeCloseTo(1, 2);
    expect(noisy! / (airSpeedPeak![0]! / onsets.at(-1)!.airSpeedPeak)).toBeCloseTo(1, 2);
  }
});

test('at the factor that it tells, each limit is just kept', () => {
  const timeline = compileTimeline(vented, { sampleRate, limits, vents: [{ vent }] });
  const { account } = played(timeline, noise);
  expect(account.limits.map(({ name }) => name)).toEqual([
    'travel',
    'vent',
    'heat',
    'amplifier voltage',
    'quiet vent',
    'noisy vent',
  ]);
  account.limits.forEach(({ louder }, i) => {
    const again = played(
      timeline,
      noise.map((u) => u * louder! * (1 - 1e-9)),
    ).account.limits[i]!;
    expect(again.mostUsed).toBeCloseTo(1, 6);
    expect(again.times).toBe(0);
    const above = played(
      timeline,
      noise.map((u) => u * louder! * 1.001),
    ).account.limits[i]!;
    expect(above.times).toBeGreaterThan(0);
  });
});

test('it tells when a limit is passed, how often and for how long', () => {
  const silence = new Float64Array(rate);
  const loud = tone(100, 30, 0.5);
  const piece = Float64Array.from([...silence, ...loud, ...silence, ...loud, ...loud, ...silence]);
  const { account } = played(compileTimeline(closed, { sampleRate, limits: [voltageLimit('20 V')] }), piece);
  expect(account.limits[0]).toMatchObject({ times: 2, firstPassed: 1 });
  expect(account.limits[0]!.passedFor).toBeCloseTo(1.5, 9);
  expect(account.limits[0]!.louder).toBeCloseTo((20 * Math.SQRT2) / 30, 9);
  expect(account.duration).toBeCloseTo(4.5, 12);
});

test('heat follows a lasting current with the memory that it is given', () => {
  const timeline = compileTimeline(closed, {
    sampleRate,
    limits: heatLimit({ ...tenInch, Pe: 40 as never }),
    heatedOver: '2 s',
  });
  const { slices } = played(timeline, tone(200, 20, 6));
  const power = (slice: Slice) => slice.rms.current! ** 2 * tenInch.Re;
  const steady = power(slices.at(-1)!);
  for (const at of [10, 30, 59]) {
    const expected = Math.sqrt((steady / 40) * (1 - Math.exp(-(at + 1) / 20)));
    expect(slices[at]!.used[0]! / expected).toBeCloseTo(1, 3);
  }
});

test('a filter stands in front of the amplifier', () => {
  const filters = [
    ...[1, 2, 3, 4, 8].map((order) => highPass(butterworthShape(order), '30 Hz')),
    lowPass(butterworthShape(3), '30 Hz'),
    shelf({ order: 2, corner: '60 Hz', gain: 6 }),
  ];
  for (const filter of filters) {
    const timeline = compileTimeline(closed, { sampleRate: '48 kHz', filter });
    const frequency = 25;
    const drive = Float64Array.from({ length: 96_000 }, (_, n) => Math.sin((2 * Math.PI * frequency * n) / 48_000));
    const slice = played(timeline, drive).slices.at(-1)!;
    const [level] = filterLevel(filter, frequencyGrid([frequency]));
    expect(20 * Math.log10(slice.rms.voltage! * Math.SQRT2) - level!).toBeCloseTo(0, 3);
  }
});

test('a nonlinear simulation takes its place, and tells what it could not solve', () => {
  const losses = { vent: quadraticVentLoss({ area: '60 cm²', outward: 2 }) };
  const drive = tone(28, 25, 3);
  const options = { sampleRate, limits: limits.slice(0, 2) } as const;
  const simulate = (...[box, asked]: Parameters<typeof compileNonlinear>) =>
    compileNonlinear(box, { ...asked, losses });
  const linear = played(compileTimeline(vented, options), drive).account;
  const lossy = played(compileTimeline(vented, { ...options, simulate }), drive).account;
  expect(lossy.unsolved).toBe(0);
  expect(lossy.peak.ventAirSpeed).toBeLessThan(0.9 * linear.peak.ventAirSpeed!);
  const plain = played(compileTimeline(vented, { ...options, simulate: compileNonlinear }), drive).account;
  expect(plain.peak.ventAirSpeed! / linear.peak.ventAirSpeed!).toBeCloseTo(1, 3);
});

test('the travel of the air in the vent is a limit like another', () => {
  const [far, fast] = quietLimits(vent, { from: '20 Hz' });
  const timeline = compileTimeline(vented, { sampleRate, limits: [far!, fast!], vents: [{ vent, share: 1 }] });
  const { used } = played(timeline, tone(28, 10, 4)).slices.at(-1)!;
  expect(Math.max(used[0]!, used[1]!) / used[2]!).toBeCloseTo(1, 2);
});

/** Ten minutes in a plain run. */
const seconds = Math.min(3600, 15 * fuzzRuns);

test('an hour is heard in as much memory as a second', async () => {
  const second = tone(40, 0.5, 1);
  const wav = await recordingFrom(sourceOfBytes(wavBytes({ sampleRate, channels: [second, second] })));
  const endless = (times: number) => ({
    ...wav,
    blocks: async function* () {
      for (let i = 0; i < times; i++) yield* wav.blocks();
    },
  });
  const timeline = compileTimeline(vented, { sampleRate, limits });
  let slices = 0;
  let most = 0;
  const account = await timelineOfRecording(timeline, endless(seconds), {
    fullScale: '10 V',
    each: (some) => {
      slices += some.length;
      most = Math.max(most, some.length);
    },
  });
  expect([slices, most]).toEqual([10 * seconds, 10]);
  expect(account.duration).toBeCloseTo(seconds, 6);
  expect(account.peak.voltage).toBeCloseTo(5 * Math.SQRT2, 3);
  const kept = (seconds: number) => {
    const { hearing } = played(timeline, new Float64Array(seconds * rate), rate);
    return JSON.stringify(hearing, (_, value) => (ArrayBuffer.isView(value) ? (value as Float64Array).length : value))
      .length;
  };
  expect(Math.abs(kept(100) - kept(1))).toBeLessThan(10);
}, 60_000);

test('a recording of another rate is brought to that of the timeline', async () => {
  const recording = await recordingFrom(
    sourceOfBytes(wavBytes({ sampleRate: '8 kHz', channels: [tone(100, 0.5, 1)] })),
  );
  const timeline = compileTimeline(closed, { sampleRate: '48 kHz' });
  const { duration, peak } = await timelineOfRecording(timeline, recording, { fullScale: '20 V' });
  expect(duration).toBeCloseTo(1, 3);
  expect(peak.voltage! / (10 * Math.SQRT2)).toBeCloseTo(1, 1);
});

test('of unlike vents, each is judged by its own speed, and the one that is noisier counts', () => {
  const box = parallelBandPass({
    drivers: tenInch,
    rearVolume: '30 L',
    rearTuning: '32 Hz',
    rearVentArea: '40 cm²',
    frontVolume: '15 L',
    frontTuning: '70 Hz',
    frontVentArea: '60 cm²',
  });
  const vents = [
    { vent: { diameter: '71.4 mm' }, probe: 'ventAirSpeed rear' },
    { vent: { diameter: '87.4 mm' }, probe: 'ventAirSpeed front' },
  ] as const;
  for (const frequency of [32, 70]) {
    const drive = tone(frequency, 20, 3);
    const usedBy = (of: readonly (typeof vents)[number][]) => {
      const { slices } = played(compileTimeline(box, { sampleRate, vents: of, slice: '0.5 s' }), drive);
      return slices.at(-1)!.used;
    };
    const [rear, front, both] = [[vents[0]], [vents[1]], vents].map(usedBy) as [number[], number[], number[]];
    both.forEach((used, side) => expect(used).toBe(Math.max(rear[side]!, front[side]!)));
    // The vent that the tone moves most is the one that counts.
    expect(rear[0]! > front[0]!).toBe(frequency === 32);
  }
  const wrong = () => compileTimeline(box, { sampleRate, vents: [{ vent }] });
  expect(faultsOf(wrong)).toMatchObject([
    { path: 'timeline.vents[0].probe', expected: 'one of ventAirSpeed rear, ventAirSpeed front' },
  ]);
});

test('silence uses nothing, and has no factor', () => {
  const { account } = played(
    compileTimeline(vented, { sampleRate, limits, vents: [{ vent }] }),
    new Float64Array(rate),
  );
  for (const limit of account.limits) {
    expect(limit).toMatchObject({ mostUsed: 0, times: 0 });
    expect(limit).not.toHaveProperty('louder');
  }
});

test('what cannot be judged is refused', () => {
  const faults = (options: object) => faultsOf(() => compileTimeline(closed, { sampleRate, ...options }));
  expect(faults({ vents: [{ vent }] })).toMatchObject([{ code: 'inconsistent', path: 'timeline.vents[0].probe' }]);
  expect(faults({ slice: '1 µs' })).toMatchObject([{ code: 'out-of-range', path: 'timeline.slice' }]);
  expect(faults({ limits: [{ ...limits[0], greatestRms: Number.NaN }] })).toMatchObject([
    { code: 'not-finite', path: 'timeline.limits[0].greatestRms' },
  ]);
  expect(faults({ limits: [{ ...limits[0], probe: 'nothing', integrated: false }] })).toMatchObject([
    { code: 'unknown-field', path: 'timeline.limits[0].probe', got: 'nothing' },
  ]);
});

test('a fault stands where the reader wrote it, however the timeline asks its simulation', () => {
  const paths = (options: object) => pathsOf(() => compileTimeline(vented, { sampleRate, ...options }));
  const simulate = compileNonlinear;
  for (const more of [{}, { simulate }]) {
    expect(paths({ limits, outputs: ['pressure', 'presure'], ...more })).toEqual(['timeline.outputs[1]']);
    expect(paths({ limits: [...limits, { ...limits[1]!, probe: 'speed' }], ...more })).toEqual([
      'timeline.limits[4].probe',
    ]);
  }
  expect(paths({ vents: [{ vent }, { vent: {} }] })).toEqual(['timeline.vents[1].vent.diameter']);
  expect(paths({ vents: [{ vent }, {}] })).toEqual(['timeline.vents[1].vent']);
  expect(paths({ vents: [{ vent }], onsets: [] })).toEqual(['timeline.onsets']);
  expect(paths({ limits: {}, vents: {}, outputs: 'pressure', onsets: {} })).toEqual([
    'timeline.limits',
    'timeline.outputs',
    'timeline.vents',
    'timeline.onsets',
  ]);
});

test('a drive or a simulation that is no number is refused: it would use nothing of any limit', () => {
  const timeline = compileTimeline(vented, { sampleRate, limits });
  for (const odd of [Number.NaN, Infinity, 1e200])
    expect(pathsOf(() => played(timeline, tone(30, 1, 0.3).fill(odd, 1000, 1001)))).toEqual(['drive']);
  const run = (_: null, drive: Float64Array, out: readonly Float64Array[]) => {
    out[1]!.set(drive.map((u) => (u > 0.99 ? Number.NaN : 0)));
    return { unsolved: 0 };
  };
  const simulate = () => ({ start: () => null, run });
  const diverging = compileTimeline(vented, { sampleRate, limits, simulate });
  expect(pathsOf(() => played(diverging, tone(30, 1, 0.3)))).toEqual(['timeline.outputs.ventAirSpeed']);
});
