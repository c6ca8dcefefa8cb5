/** What is told of the noise and the losses of vents, for every kind of box whose air moves through openings. */
import { frequencyGrid, logarithmicGrid, si } from '@airspring/core/quantity';
import { compiledSystem, probeColumns, respond, respondAtLevel } from '@airspring/core/response';
import { ventLoss, ventNoise } from '@airspring/core/vent';
import * as simulation from '@airspring/transient/simulation';
import { compileTimeline } from '@airspring/transient/timeline';
import { describe, expect, test } from 'vitest';
import pipe from '../../../packages/airspring/briefs/classroom-organ-pipe.json' with { type: 'json' };
import horn from '../../../packages/airspring/briefs/fog-horn.json' with { type: 'json' };
import ghost from '../../../packages/airspring/briefs/ghost-train.json' with { type: 'json' };
import dragon from '../../../packages/airspring/briefs/stage-dragon.json' with { type: 'json' };
import thunder from '../../../packages/airspring/briefs/travelling-thunder.json' with { type: 'json' };
import { readBrief } from '../../../packages/airspring/src/brief/read.js';
import { asPlayed } from '../../../packages/airspring/src/command/played-box.js';
import { simulatedOf } from '../../../packages/airspring/src/command/simulated.js';
import { standard } from '../../../packages/airspring/src/kind/standard.js';
import { readingsOf } from '../../../packages/airspring/src/record/depth.js';
import { openingTold, probeOf } from '../../../packages/airspring/src/record/vent-noise.js';

const boxes = [
  ['parallel-band-pass', horn, [0.03, 80, 0.5, 0.6, 0.05], 'the vent of the front chamber'],
  ['series-band-pass', dragon, [0.03, 80, 0.5, 0.6, 0.05], 'the vent of the front chamber'],
  ['parallel-band-pass', horn, [0.03, 100, 0.5, 0.6, 0.05], 'the vent of the rear chamber'],
  ['band-pass', thunder, [0.05, 60, 0.5, 0.06], undefined],
  ['line', pipe, [0.008, 1.6, 0.2], undefined],
  ['aperiodic', ghost, [0.02, 9000, 0.09], undefined],
] as const;

describe.each(boxes)('%s %$', (name, written, point, first) => {
  const vent = { ...('vent' in written && written.vent), quiet: true };
  const job = readBrief({ ...written, box: { kinds: [name] }, vent }, standard);
  const variant = standard.find((kind) => kind.name === name)!.variants(job as never, job.choices[0]!)[0]!;
  const system = variant.system(point);
  const openings = variant.openings!(point);
  const band = logarithmicGrid(job.wanted.lowest, job.wanted.highest, 60);
  const { levelHalfSpace } = respond(system, band);
  const driveFor = (level: number) => levelHalfSpace.map((perVolt) => 10 ** ((level - perVolt) / 20));
  const told = openingTold(system, openings, band, levelHalfSpace, driveFor(job.wanted.level))!;
  const swept = probeColumns(compiledSystem(system), band);

  /** What `ventNoise` says of each opening at each tone of the band, where all tones have this level. */
  const verdictsAt = (level: number) =>
    openings.map((one) => {
      const { re, im } = swept[probeOf(one)]!;
      const drives = driveFor(level);
      return Array.from(band, (f, i) => {
        const speed = si('airSpeedPeak', Math.SQRT2 * drives[i]! * Math.hypot(re[i]!, im[i]!));
        const input = { vent: one.section, frequency: si('frequency', f), airSpeedPeak: speed };
        return ventNoise(input, { air: system.air }).verdict;
      });
    });
  const at = ({ where, frequency }: { readonly where?: string; readonly frequency: number }) =>
    [openings.findIndex(({ called }) => called === (where ?? told.called)), band.indexOf(frequency as never)] as const;

  test('up to the level that is told every opening is quiet at every tone, and just above it that one is not', () => {
    const { quiet } = told.noise;
    expect(new Set(verdictsAt(quiet.level - 0.01).flat())).toEqual(new Set(['quiet']));
    const [opening, tone] = at(quiet);
    expect(verdictsAt(quiet.level + 0.01)[opening]![tone]).toBe('doubtful');
    expect(quiet.where).toBe(first);
  });

  test('above the other level that opening has passed every onset, and below it none has', () => {
    const { noisy } = told.noise;
    expect(verdictsAt(noisy.level - 0.01).flat()).not.toContain('noisy');
    const [opening, tone] = at(noisy);
    expect(verdictsAt(noisy.level + 0.01)[opening]![tone]).toBe('noisy');
    expect(noisy.level).toBeGreaterThan(told.noise.quiet.level);
  });

  test('the wish to be quiet asks for no less than what is told', () => {
    const drives = driveFor(job.wanted.level);
    const loads = Float64Array.from(variant.loads!, (load) =>
      Math.max(...readingsOf(system, load, band).map((reading, i) => reading * drives[i]!)),
    );
    const wish = variant.wishes.find(({ path }) => path === 'vent.quiet')!;
    const needed = wish.needed(point, loads);
    // Turbulence at the walls is asked for at the lowest tone, where it sets in first.
    expect(needed).toBeLessThan(told.noise.quiet.level + 1e-6);
    if (told.noise.quiet.onset !== 'turbulent walls') expect(needed).toBeCloseTo(told.noise.quiet.level, 6);
  });

  test('the sound falls behind by what core finds at that tone, and nowhere in the band by more', () => {
    const whole = openings.every(({ length }) => length !== undefined);
    expect(told.compression !== undefined).toBe(whole);
    if (!told.compression) return;
    const losses = openings.map(({ section, length }) => ventLoss({ vent: { ...section, length: length! } }));
    const { frequency, ...bands } = told.compression;
    const fallen = (f: number, which: keyof typeof bands) => {
      const each = Object.fromEntries(openings.map(({ of }, i) => [of, losses[i]![which]]));
      const loss = openings.length > 1 ? each : losses[0]![which];
      const driveVoltageRms = si('voltageRms', driveFor(job.wanted.level)[band.indexOf(f as never)]!);
      return respondAtLevel(system, [f], { driveVoltageRms, loss }).compression[0]!;
    };
    for (const which of ['low', 'nominal', 'high'] as const)
      expect(fallen(frequency, which)).toBeCloseTo(bands[which], 9);
    for (let i = 0; i < band.length; i += 7) expect(fallen(band[i]!, 'nominal')).toBeLessThan(bands.nominal + 1e-9);
  });
});

describe.each(boxes.slice(0, 4))('%s %$, played', (name, written, point) => {
  const job = readBrief({ ...written, box: { kinds: [name] } }, standard);
  const variant = standard.find((kind) => kind.name === name)!.variants(job as never, job.choices[0]!)[0]!;
  const box = { ...asPlayed(job, { variant, point }), title: '', called: 'a box', givesOut: {} };
  const { system } = box;
  const [rate, seconds, frequency] = [8000, 2, si('frequency', (job.wanted.lowest + job.wanted.highest) / 2)];
  const last = (voltage: number, asked: 'linear' | 'nonlinear') => {
    const { simulate } = simulatedOf(box, system.network, asked, simulation);
    const timeline = compileTimeline(system, {
      sampleRate: si('frequency', rate),
      vents: box.vents,
      outputs: ['pressure'],
      slice: '0.5 s',
      ...(simulate && { simulate: simulate as never }),
    });
    const tone = Float64Array.from({ length: seconds * rate }, (_, n) =>
      Math.sin((2 * Math.PI * frequency * n) / rate),
    );
    const slices = timeline.take(
      timeline.start(),
      tone.map((value) => Math.SQRT2 * voltage * value),
    );
    const used = timeline.limits.map(({ name: limit }, i) => [limit, slices.at(-1)!.used[i]!] as const);
    return { used: Object.fromEntries(used), pressure: slices.at(-1)!.rms.pressure! };
  };
  const { levelHalfSpace } = respond(system, [frequency]);
  const voltageFor = (level: number) => 10 ** ((level - levelHalfSpace[0]!) / 20);

  test('a tone uses an onset up where the report says that it is reached', () => {
    const told = openingTold(
      system,
      variant.openings!(point),
      frequencyGrid([frequency]),
      levelHalfSpace,
      Float64Array.of(1),
    )!;
    for (const [side, limit] of [
      ['quiet', 'quiet vent'],
      ['noisy', 'noisy vent'],
    ] as const)
      expect(last(voltageFor(told.noise[side].level), 'linear').used[limit]).toBeCloseTo(1, 2);
  });

  test('over time the vents lose what core finds at that level', () => {
    const voltage = voltageFor(job.wanted.level);
    const losses = variant.openings!(point).map(
      ({ of, section, length }) => [of, ventLoss({ vent: { ...section, length: length! } }).nominal] as const,
    );
    const loss = losses.length > 1 ? Object.fromEntries(losses) : losses[0]![1];
    const { compression } = respondAtLevel(system, [frequency], { driveVoltageRms: si('voltageRms', voltage), loss });
    const fallen = 20 * Math.log10(last(voltage, 'linear').pressure / last(voltage, 'nonlinear').pressure);
    expect(Math.abs(compression[0]!)).toBeGreaterThan(0.3);
    // The rms over time has the harmonics too, and the walls count in the sweep alone.
    expect(Math.abs(fallen - compression[0]!)).toBeLessThan(0.1);
  });
});
