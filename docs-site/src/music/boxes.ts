import type { Air } from '@airspring/core/air';
import { lumpedFit, type Network } from '@airspring/core/network';
import { si } from '@airspring/core/quantity';
import oldThunderBox from '../../../packages/airspring/briefs/old-thunder-box.json?raw';
import whaleBench from '../../../packages/airspring/briefs/whale-bench.json?raw';
import { type PlayedBox, playedBox } from '../../../packages/airspring/src/command/played-box.js';

/** The vent that the page of the old box proposes behind its larger hole, and the air that it leaves. */
export const wider = { diameter: '69 mm', length: '433 mm', air: '20.42 L' } as const;

function withWiderVent(written: string): string {
  const brief = JSON.parse(written);
  const { diameter, length, air } = wider;
  return JSON.stringify({ ...brief, standing: { ...brief.standing, air, vents: [{ diameter, length }] } });
}

/** A box that the reader can choose. */
export interface BoxChoice {
  readonly id: string;
  /** As a sentence calls it, and as a table heads its column. */
  readonly called: string;
  readonly short: string;
  readonly brief: string;
}

export const boxes: readonly BoxChoice[] = [
  { id: 'old', called: 'the old thunder box as it stands', short: 'as it stands', brief: oldThunderBox },
  {
    id: 'wider',
    called: 'the old thunder box with a vent of 69 mm',
    short: 'vent of 69 mm',
    brief: withWiderVent(oldThunderBox),
  },
  { id: 'whale', called: 'the whale bench', short: 'whale bench', brief: whaleBench },
];

/** A box as it is played: lumped, with all that limits it. */
export interface Playable extends Pick<PlayedBox, 'limits' | 'vents' | 'filter' | 'voltage'> {
  readonly called: string;
  readonly short: string;
  readonly network: Network;
  readonly air: Air;
  /** Greatest error of coil and suspension where lumped parts stand for them, 5 Hz to 5 kHz. */
  readonly lumpedError: number;
}

export type Played = { readonly ok: true; readonly box: Playable } | { readonly ok: false; readonly because: string };

/**
 * The box of a brief: the first design, or the box that stands.
 *
 * @throws InputError with every fault of the brief
 */
export function playableOf({ called, short }: Pick<BoxChoice, 'called' | 'short'>, brief: unknown): Played {
  const found = playedBox(brief, undefined, () => {});
  if (!found.ok) return { ok: false, because: `No box meets this brief: ${found.lines.join('; ')}` };
  const { system, limits, vents, filter, voltage } = found;
  const fit = lumpedFit(system.network, { from: 5, to: 5000 });
  if (!fit.ok) {
    return {
      ok: false,
      because: `${called} cannot be played over time: ${fit.because.map(({ text }) => text).join('; ')}`,
    };
  }
  const { network, greatestError: lumpedError } = fit;
  return {
    ok: true,
    box: {
      called,
      short,
      network,
      lumpedError,
      air: system.air,
      limits,
      vents,
      voltage: si('voltageRms', voltage),
      ...(filter && { filter }),
    },
  };
}
