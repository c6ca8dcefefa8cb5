import type { System } from '../enclosure/index.js';
import type { Impossible } from '../fault/index.js';
import { type FrequencyInput, read } from '../quantity/index.js';
import { complexGradientAt } from './complex-gradient.js';
import type { GradientResult } from './gradient.js';

/** Half the widest distance of the frequencies between which slopes of the phase are compared, in ln f. */
const WIDEST = 0.003;

/** How the phase of the sound changes with each number of a system, and with ln f, which has the name `''`; rad. */
interface Turns {
  readonly byElement: Readonly<Record<string, number>>;
  readonly byNumber: Readonly<Record<string, number>>;
}

function turnsAt(system: System, frequency: number): ({ readonly ok: true } & Turns) | Impossible {
  const found = complexGradientAt(system, 'radiatedFlow', frequency);
  if (!found.ok) return found;
  const { re, im } = found.value;
  const size = Math.hypot(re, im);
  const turn = (change: { re: number; im: number }) =>
    (change.im / size) * (re / size) - (change.re / size) * (im / size);
  const each = (changes: typeof found.byElement) =>
    Object.fromEntries(Object.entries(changes).map(([name, change]) => [name, turn(change)]));
  return {
    ok: true,
    byElement: { ...each(found.byElement), '': turn(found.byFrequency) },
    byNumber: each(found.byNumber),
  };
}

/**
 * Gradient of the group delay at one frequency by every element. The slopes of the phase are exact, from the adjoint equations; how
 * they change with frequency is a difference quotient, extrapolated twice. The greatest delay of a band changes as the delay where it
 * is greatest.
 *
 * $$ \tau = -\frac{1}{2\pi f}\,\frac{\partial\varphi}{\partial\ln f},\qquad
 *    \frac{\partial\tau}{\partial\ln\theta} = -\frac{1}{2\pi f}\,\frac{\partial}{\partial\ln f}\,\frac{\partial\varphi}{\partial\ln\theta} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $\tau$ | `value` | s | group delay of the sound, without that of its way |
 * | $\varphi$ | | rad | its phase |
 * | $\theta$ | `byElement` | SI | a number of the network: `Mms`, `Bl`, `Cab` |
 *
 * @validity small changes, since it is a slope; resonances with a quality factor below about 100
 * @neglects what the network neglects
 * @returns s, and s per relative change; or why there is none
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`
 * @source director1969 adjoint network
 * @source richardson1927 (extrapolated differences)
 * @example groupDelayGradient(system, '30 Hz')
 */
export function groupDelayGradient(system: System, frequency: FrequencyInput): GradientResult {
  const f = read('frequency', frequency, 'frequency');
  const here = turnsAt(system, f);
  if (!here.ok) return here;
  /** Differences over three distances, each half of the one before. */
  const differences: { readonly distance: number; readonly above: Turns; readonly below: Turns }[] = [];
  for (const distance of [WIDEST, WIDEST / 2, WIDEST / 4]) {
    const [above, below] = [turnsAt(system, f * Math.exp(distance)), turnsAt(system, f * Math.exp(-distance))];
    if (!above.ok) return above;
    if (!below.ok) return below;
    differences.push({ distance, above, below });
  }
  const omega = 2 * Math.PI * f;
  const slope = (of: (turns: Turns) => number): number => {
    const [a, b, c] = differences.map(({ distance, above, below }) => (of(above) - of(below)) / (2 * distance)) as [
      number,
      number,
      number,
    ];
    // The errors of second and of fourth order cancel.
    const [ab, bc] = [(4 * b - a) / 3, (4 * c - b) / 3];
    return -(16 * bc - ab) / 15 / omega;
  };
  const each = (by: keyof Turns) =>
    Object.fromEntries(Object.keys(here[by]).map((name) => [name, slope((turns) => turns[by][name]!)]));
  const value = -here.byElement['']! / omega;
  const { '': byPhase = 0, ...byElement } = each('byElement');
  return {
    ok: true,
    value,
    byElement,
    byNumber: each('byNumber'),
    byFrequency: byPhase - value,
  };
}
