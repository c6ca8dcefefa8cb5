import type { Workers } from './workers.js';

/** Lets the program do other things, such as to cancel. */
const turn = () => new Promise<void>((resolve) => setTimeout(resolve));

/** Does the work in the program itself. */
export const inPlace: Workers = {
  run: async (chunk, inputs, { progress, signal, ...options }) => {
    const results = [];
    for (const input of inputs) {
      await turn();
      signal?.throwIfAborted();
      results.push(chunk.work(input, options));
      progress?.({ what: chunk.name, count: results.length, of: inputs.length });
    }
    return results;
  },
  end: async () => {},
};
