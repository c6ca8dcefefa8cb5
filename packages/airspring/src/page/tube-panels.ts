import type { TubeSet } from '../standing/tubes.js';
import { axis } from './axis.js';
import { colourOf } from './limit-colours.js';
import { stretches, type TubeFacts } from './tube-words.js';

/** One of the diagrams over the length of the tube: its scale, its lines, and the wish that they are compared with. */
export interface Panel {
  readonly title: string;
  readonly unit: string;
  readonly domain: readonly [number, number];
  readonly ticks: readonly number[];
  readonly rule?: { readonly at: number; readonly words: string };
  readonly lines: readonly {
    readonly name?: string;
    readonly colour: string;
    readonly x: readonly number[];
    readonly y: readonly number[];
    readonly thin?: boolean;
  }[];
}

/** What each diagram shows of the tubes of one diameter. */
export function panelsOf({ answer: { asked }, say }: TubeFacts, { options }: TubeSet): Panel[] {
  const x = options.map(({ length }) => length);
  const tuning = options.map(({ account }) => account.fb ?? 0);
  const deep = options.filter(({ account }) => account.reach !== undefined);
  const reach = deep.map(({ account }) => account.reach ?? 0);
  const level = options.map(({ account }) => account.loudest.level);
  const speed = options.map(({ account }) => account.wanted.airSpeed?.value ?? 0);
  const tones = axis([Math.min(...tuning, ...reach, asked.lowest), Math.max(...tuning, ...reach)], 10);
  const levels = axis([Math.min(...level), Math.max(...level, asked.level)], 5);
  // Short tubes are so fast that nothing else could be seen.
  const speeds = axis([0, Math.min(Math.max(...speed, asked.airSpeedPeak), 3 * asked.airSpeedPeak)], 10);
  const heard = options.flatMap(({ length, account: { noise } }) => (noise ? [{ length, noise }] : []));
  const [quiet, noisy] = [heard.map(({ noise }) => noise.quiet.level), heard.map(({ noise }) => noise.noisy.level)];
  const onsets = axis([Math.min(...quiet, asked.level), Math.max(...noisy, asked.level)], 10);
  const binding = stretches(options, ({ account }) => account.loudest.binding);
  return [
    {
      title: 'Tuning and reach',
      unit: 'Hz',
      ...tones,
      rule: { at: asked.lowest, words: `wanted: reach ${say.edge(asked.lowest)} or lower` },
      lines: [
        { name: 'tuning', colour: 'var(--soft)', x, y: tuning, thin: true },
        { name: 'reach', colour: 'var(--level)', x: deep.map(({ length }) => length), y: reach },
      ],
    },
    {
      title: 'Greatest level of a steady tone',
      unit: 'dB',
      ...levels,
      rule: { at: asked.level, words: `wanted: ${say.decibels(asked.level)}` },
      lines: binding.map(({ from, to, what }) => {
        // Each part ends where the next begins.
        const inside = x.flatMap((length, i) => (length >= from && length <= to ? [i] : []));
        const at = [...inside, (inside.at(-1) ?? 0) + 1].filter((i) => i < x.length);
        return { colour: colourOf(what), x: at.map((i) => x[i]!), y: at.map((i) => level[i]!) };
      }),
    },
    {
      title: `Air in the vent at ${say.decibels(asked.level)}`,
      unit: 'm/s',
      ...speeds,
      rule: { at: asked.airSpeedPeak, words: `your limit: ${say.speed(asked.airSpeedPeak)} peak` },
      lines: [{ colour: 'var(--speed)', x, y: speed }],
    },
    {
      title: 'Onsets of noise in the vent',
      unit: 'dB',
      ...onsets,
      rule: { at: asked.level, words: `wanted: ${say.decibels(asked.level)}` },
      lines: [
        { name: 'noisy above', colour: 'var(--soft)', x: heard.map(({ length }) => length), y: noisy, thin: true },
        { name: 'quiet up to', colour: 'var(--speed)', x: heard.map(({ length }) => length), y: quiet },
      ],
    },
  ];
}
