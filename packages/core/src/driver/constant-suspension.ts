import type { SuspensionModel } from './suspension.js';

/**
 * A suspension of the same compliance Cms at every frequency. A driver without `suspension` has this one.
 *
 * @validity small signals at frequencies around the resonance
 * @neglects creep, and losses that are not proportional to velocity
 * @source small1972direct circuit of the driver: Cms and Rms
 * @example driver({ ...ten, suspension: constantSuspension })
 */
export const constantSuspension: SuspensionModel = {
  name: 'constant',
  parameters: {},
  sources: ['small1972direct'],
  compliance: (_, __, out) => {
    out[0] = 1;
    out[1] = 0;
  },
  scaled: () => constantSuspension,
};
