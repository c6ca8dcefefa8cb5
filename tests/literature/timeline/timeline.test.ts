/** A timeline against a program that runs the whole piece at once and picks its slices afterwards. */
import { type Air, standardAir } from '@airspring/core/air';
import { driver } from '@airspring/core/driver';
import { ventedBox } from '@airspring/core/enclosure';
import type { Limit } from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import { float64, recordingFrom, sourceOfBytes, wavBytes } from '@airspring/transient/recording';
import { compileTimeline, type Slice, type TimelineAccount, timelineOfRecording } from '@airspring/transient/timeline';
import { expect, test } from 'vitest';
import { checkIn } from '../../ledger/check.js';
import fixture from './timeline.json' with { type: 'json' };

const { rate, count, slices: expected } = fixture;
const air: Air = {
  ...standardAir,
  density: si('density', 1.2),
  speedOfSound: si('speed', 343),
  viscosity: si('viscosity', 1.81e-5),
};
const check = checkIn(air);
const drivers = driver(fixture.driver as unknown as Parameters<typeof driver>[0]);
const vent = { diameter: si('length', fixture.diameter) };
const box = ventedBox(
  { ...fixture.box, ventArea: (Math.PI * fixture.diameter ** 2) / 4, drivers } as unknown as Parameters<
    typeof ventedBox
  >[0],
  air,
);
const limits: readonly Limit[] = [
  {
    name: 'travel',
    probe: 'coneVelocity',
    integrated: true,
    greatestRms: fixture.travel / Math.SQRT2,
    basis: 'a test',
  },
  { name: 'heat', probe: 'current', averaged: true, greatestRms: fixture.current, basis: 'a test' },
];

/** Two tones that overlap, a pause, and a softer third. */
const drive = Float64Array.from({ length: count }, (_, n) => {
  const t = n / rate;
  const tone = (is: boolean, peak: number, f: number) => (is ? peak * Math.sin(2 * Math.PI * f * t) : 0);
  return tone(t < 0.35, 30, 28) + tone(t >= 0.2 && t < 0.5, 9, 47) + tone(t >= 0.75, 3, 90);
});
const made = () => compileTimeline(box, { sampleRate: si('frequency', rate), limits, vents: [{ vent }] });

function inBlocks(): { readonly slices: readonly Slice[]; readonly account: TimelineAccount } {
  const timeline = made();
  const hearing = timeline.start();
  const slices: Slice[] = [];
  for (let from = 0; from < count; from += 1000)
    slices.push(...timeline.take(hearing, drive.subarray(from, from + 1000)));
  slices.push(...timeline.end(hearing));
  return { slices, account: timeline.account(hearing) };
}

/** The same as a recording, whose full scale is √2 × 100 V. */
async function recorded(): Promise<ReturnType<typeof inBlocks>> {
  const scaled = drive.map((u) => u / (100 * Math.SQRT2));
  const bytes = wavBytes({ sampleRate: si('frequency', rate), channels: [scaled], format: float64 });
  const slices: Slice[] = [];
  const account = await timelineOfRecording(made(), await recordingFrom(sourceOfBytes(bytes)), {
    fullScale: '100 V',
    each: (some) => slices.push(...some),
  });
  return { slices, account };
}

test('the program has the same drive', () => {
  fixture.drive.forEach((u, i) => {
    expect(drive[160 * i]).toBeCloseTo(u, 12);
  });
});

const usedOf = (name: string) => made().limits.findIndex((one) => one.name === name);
const source = { key: 'scipy', locator: 'one run by lsim, straight lines between samples; script timeline.py' };
const tolerance = { relative: 1e-11, why: 'the same motion by two programs, whose rounding adds up over 8000 samples' };
const byStroke = { relative: 1e-10, why: 'as the motion; the stroke is a sum of many samples' };

for (const [name, unit, key, read] of [
  ['displacement', 'm', 'displacement', ({ peak }) => peak.displacement!],
  ['air-speed', 'm/s', 'ventAirSpeed', ({ peak }) => peak.ventAirSpeed!],
  ['current', 'A', 'current', ({ peak }) => peak.current!],
  ['rms', 'm', 'rms', ({ rms }) => rms.displacement!],
  ['travel', '1', 'travel', ({ used }) => used[usedOf('travel')]!],
  ['heat', '1', 'heat', ({ used }) => used[usedOf('heat')]!],
  ['quiet', '1', 'quiet', ({ used }) => used[usedOf('quiet vent')]!],
  ['noisy', '1', 'noisy', ({ used }) => used[usedOf('noisy vent')]!],
] as readonly (readonly [string, string, keyof typeof expected, (slice: Slice) => number])[]) {
  check(`timeline.compileTimeline.${name}`, {
    formula: 'timeline/compileTimeline',
    source,
    status: 'derived',
    kind: 'program',
    given: { slice: { value: expected[key].map((_, i) => i), unit: '1' } },
    got: ({ slice }) => read(inBlocks().slices[slice]!),
    expected: expected[key],
    unit,
    tolerance: key === 'quiet' || key === 'noisy' ? byStroke : tolerance,
  });
}

test('as a recording it is the same piece', async () => {
  const [there, here] = [await recorded(), inBlocks()];
  here.slices.forEach(({ used, peak }, i) => {
    used.forEach((share, k) => {
      expect(there.slices[i]!.used[k]! / share).toBeCloseTo(1, 9);
    });
    expect(there.slices[i]!.peak.displacement! / peak.displacement!).toBeCloseTo(1, 9);
  });
});

for (const [name, limit] of [
  ['travel', 'travel'],
  ['quiet', 'quiet vent'],
  ['noisy', 'noisy vent'],
] as const) {
  check(`timeline.account.${name}`, {
    formula: 'timeline/compileTimeline',
    source: { ...source, locator: `${source.locator}; the slices that pass, added up` },
    status: 'derived',
    kind: 'program',
    given: { slices: { value: expected.travel.length, unit: '1' } },
    got: () => inBlocks().account.limits.find((one) => one.name === limit)!.passedFor,
    expected: fixture.passed[name],
    unit: 's',
    tolerance: { absolute: 1e-12, why: 'a sum of slices' },
  });
}
