/** What could be done about a vent that chuffs, ranked by the level up to which it is quiet. */
import { design, rankedVents, reportText, retrofit, retrofitText } from 'airspring';
import { expect, test } from 'vitest';
import whale from '../../../packages/airspring/briefs/whale-bench.json' with { type: 'json' };
import { numbered } from '../../../packages/airspring/src/standing/row.js';
import { phrasing } from '../../../packages/airspring/src/words/phrasing.js';
import { listedVents } from '../../../packages/airspring/src/words/ranked-text.js';
import { ventSentences } from '../../../packages/airspring/src/words/vent-text.js';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { test as property } from '../../arbitrary/property.js';
import { demoStanding, retrofitted, standingBriefs } from '../../arbitrary/standing.js';

const joined = (text: string): string => text.replace(/\s+/g, ' ');
const answer = retrofitted(demoStanding);
const ranked = rankedVents(answer);

test('changes, combinations and tubes are ranked by the level up to which their vents are quiet, then by what these lose', () => {
  expect(new Set(ranked.map(({ what }) => what))).toEqual(new Set(['change', 'design', 'tube']));
  const tenths = ranked.map(({ quiet }) => Math.round(10 * quiet));
  expect(tenths).toEqual([...tenths].sort((a, b) => b - a));
  ranked.forEach(({ account }, i) => {
    const next = ranked[i + 1];
    if (next && tenths[i] === tenths[i + 1])
      expect(account.compression!.nominal).toBeLessThanOrEqual(next.account.compression!.nominal);
  });
  for (const { quiet, louder } of ranked) expect(quiet - louder).toBeCloseTo(answer.now.account.noise!.quiet.level, 12);
});

test('each tube and each design that has a vent is among them', () => {
  const tubes = answer.tubeSets.reduce((sum, { proposed }) => sum + proposed.length, 0);
  expect(ranked.filter(({ what }) => what === 'tube')).toHaveLength(tubes);
  const vented = answer.designs.filter(({ account }) => account.noise);
  expect(ranked.filter(({ what }) => what === 'design')).toHaveLength(vented.length);
});

test('a vent that is quiet at the wanted level leaves nothing to rank', () => {
  const soft = structuredClone(demoStanding) as unknown as { wanted: { level: string }; standing: { keep: string[] } };
  soft.wanted.level = '70 dB';
  soft.standing.keep = ['box', 'drivers', 'wiring', 'holes', 'tuning'];
  const quiet = retrofit(soft);
  expect(rankedVents(quiet)).toEqual([]);
  expect(retrofitText(quiet)).not.toContain('Which vent stays quiet');
});

test('the report ranks them, and says how much louder the new vent plays before it is heard and what it loses', () => {
  const text = joined(retrofitText(answer));
  const [best] = ranked;
  expect(text).toContain('Which vent stays quiet up to the highest level');
  expect(text).toContain(`${best!.quiet.toFixed(1)} +${best!.louder.toFixed(1)}`);
  const first = answer.rows[answer.first!]!;
  if (!first.ok) throw new Error('the first change can be made');
  const [before, after] = [answer.now.account, first.account];
  const louder = after.noise!.quiet.level - before.noise!.quiet.level;
  expect(text).toContain(`${louder.toFixed(1)} dB louder before it may be heard`);
  const [behind, then] = [before.compression!, after.compression!].map(({ nominal }) => nominal.toFixed(1));
  expect(text).toContain(`falls behind at the wanted level by ${behind} dB → ${then} dB`);
});

test.each(['60 dB', '82 dB', '88 dB', '98 dB'])(
  'at %s the report says whether the vent may still be heard, and whether the impedance tells the change',
  (level) => {
    const asked = retrofit({ ...demoStanding, wanted: { ...demoStanding.wanted, level } });
    const first = asked.rows[asked.first ?? -1];
    const text = joined(retrofitText(asked));
    const noise = first?.ok ? first.account.noise : undefined;
    const [wanted, told] = [Number(level.split(' ')[0]), / dB it (may still be heard|is still noisy)/.exec(text)?.[1]];
    const heard = noise === undefined || noise.quiet.level >= wanted ? undefined : noise.noisy.level < wanted;
    expect(told).toBe(heard === undefined ? undefined : heard ? 'is still noisy' : 'may still be heard');
    if (!first?.ok) return;
    const peaks = [asked.now, first].map(({ impedance }) => impedance!.maxima.map(({ frequency }) => frequency));
    const isAlike =
      peaks[0]!.length === peaks[1]!.length && peaks[0]!.every((one, i) => Math.abs(peaks[1]![i]! / one - 1) < 0.05);
    expect(text.includes('does not tell the changed box from the old one')).toBe(isAlike);
  },
);

test('the list has every choice that stays quiet up to a higher level than now, also the one that is proposed first', () => {
  const text = joined(retrofitText(answer));
  const listed = listedVents(answer);
  const proposed = numbered(answer.rows).find(([, row]) => row === answer.rows[answer.first!])!;
  expect(listed.map(({ name }) => name)).toContain(String(proposed[0]));
  expect(listed).toEqual(ranked.filter(({ louder }) => louder >= 0.1));
  for (const { what, name } of listed) if (what === 'tube') expect(text).toContain(`tube ${name}`);
});

test('the report of a new box says what the loss does to the tuning at the wanted level', () => {
  const told = design(whale);
  if (!told.ok) throw new Error('the whale bench can be built');
  const { tuning } = told.designs[0]!.opening!;
  expect(tuning!.large.Q!).toBeLessThan(tuning!.small.Q!);
  expect(joined(reportText(told))).toContain(
    `has a quality factor of ${tuning!.large.Q!.toFixed(1)} instead of ${tuning!.small.Q!.toFixed(1)}`,
  );
});

test('what a loss does not move is not told as moved', () => {
  const told = design(whale);
  if (!told.ok) throw new Error('the whale bench can be built');
  const { opening } = told.designs[0]!;
  const { small, large, drive } = opening!.tuning!;
  const say = phrasing({ length: 'mm', volume: 'L' });
  const still = { ...large, fb: small.fb, leastImpedance: small.leastImpedance! };
  const place = `${small.fb.toFixed(1)} Hz`;
  expect(ventSentences({ ...opening!, tuning: { drive, small, large: still } }, false, say)).toMatch(
    new RegExp(`and stays at ${place}\\. The second values .* The dip of the impedance stays at `),
  );
  const unmoved = ventSentences({ ...opening!, tuning: { drive, small, large: small } }, false, say);
  expect(unmoved).not.toMatch(/instead of|second values/);
});

property.prop([standingBriefs], { numRuns: Math.min(30, Math.ceil(fuzzRuns / 20)) })(
  'of any box with one vent or two, nothing that keeps a vent is quieter than the first of the ranking',
  (brief) => {
    const told = retrofitted(brief);
    const { account, box, tuning } = told.now;
    const all = rankedVents(told);
    const names = all.map(({ what, name }) => `${what} ${name}`);
    expect(new Set(names).size).toBe(names.length);
    const now = account.noise!.quiet.level;
    if (now >= told.asked.level) expect(all).toEqual([]);
    else {
      const quiets = told.rows.flatMap((row) =>
        row.ok && row.account.noise && row.box.level === undefined ? [row.account.noise.quiet.level] : [],
      );
      const most = Math.max(...quiets, ...told.designs.map((one) => one.account.noise?.quiet.level ?? -Infinity));
      if (most > -Infinity) expect(Math.round(10 * all[0]!.quiet)).toBeGreaterThanOrEqual(Math.round(10 * most));
      for (const { quiet, louder, account: one } of all) {
        expect(Number.isFinite(quiet) && Number.isFinite(one.compression!.nominal)).toBe(true);
        expect(louder).toBeCloseTo(quiet - now, 12);
      }
    }
    if (box.tubes.length === 1) {
      expect(tuning!.small.fb).toBeCloseTo(account.fb!, 6);
      expect(tuning!.large.Q!).toBeLessThan(tuning!.small.Q!);
    } else expect(tuning).toBeUndefined();
  },
  600_000,
);
