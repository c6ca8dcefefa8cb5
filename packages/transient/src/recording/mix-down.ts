import { InputError } from '@airspring/core/fault';

/**
 * Several channels as one: their mean, or a sum with weights of your own.
 *
 * $$ y_n = \sum_c w_c\, x_{c,n},\quad w_c = 1/C \text{ unless given} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $x_c$ | `channels` | 1 | samples of a channel |
 * | $w_c$ | `weights` | 1 | its weight |
 * | $C$ | | 1 | number of channels |
 *
 * The bass of most recordings is the same in all channels; their mean is then what a loudspeaker for bass alone is given.
 *
 * @validity channels of one length
 * @neglects nothing
 * @returns the samples of one channel
 * @throws InputError `empty`, `inconsistent`, `not-finite`
 * @source oppenheim1997 §1.2 (definition)
 * @example mixDown([left, right])
 */
export function mixDown(channels: readonly Float64Array[], weights?: readonly number[]): Float64Array {
  const count = channels.length;
  const first = channels[0];
  if (!first) throw wrong('empty', 'channels', count, 'at least one channel', 'Give the channels.');
  if (channels.some(({ length }) => length !== first.length)) {
    const got = channels.slice(0, 8).map(({ length }) => length);
    throw wrong('inconsistent', 'channels', got.join(', '), 'channels of one length', 'Give channels of one block.');
  }
  if (weights && weights.length !== count) {
    const remedy = 'Give a weight for each channel.';
    throw wrong('inconsistent', 'weights', weights.length, `${count} weights`, remedy);
  }
  const bad = weights?.find((weight) => !Number.isFinite(weight));
  if (bad !== undefined) throw wrong('not-finite', 'weights', bad, 'finite numbers', 'Replace NaN or infinity.');
  const out = new Float64Array(first.length);
  channels.forEach((channel, c) => {
    const weight = weights?.[c] ?? 1 / count;
    for (let i = 0; i < out.length; i++) out[i]! += weight * channel[i]!;
  });
  return out;
}

const wrong = (
  code: 'empty' | 'inconsistent' | 'not-finite',
  path: string,
  got: unknown,
  expected: string,
  remedy: string,
) => new InputError([{ code, path, got, expected, remedy }]);
