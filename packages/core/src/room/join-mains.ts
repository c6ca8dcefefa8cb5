import { type Air, readAir, standardAir } from '../air/index.js';
import { type Fault, refuse } from '../fault/index.js';
import { compileFilter, type Filter } from '../filter/index.js';
import { type ComplexColumn, complexColumn } from '../numeric/index.js';
import {
  type Frequency,
  type FrequencyGrid,
  frequencyGrid,
  given,
  type Level,
  optional,
  readFieldsInto,
  si,
} from '../quantity/index.js';
import { filterField } from './filter-field.js';
import { type PathInput, pathKernel, pathShape } from './path.js';
import { copyOf, pressureLevel, unlessPressure } from './pressure.js';

/** One of the two that are joined. */
export interface JoinedInput extends PathInput {
  /** At 1 m in half space, Pa rms: of a box by `soundPressure`, of a main speaker by `mainPressure`. */
  readonly pressure: ComplexColumn;
  /** What the crossover does to its signal: `lowPass(linkwitzRileyShape(4), '80 Hz')`; none unless given. */
  readonly filter?: Filter | undefined;
}

export interface JoinInput {
  readonly box: JoinedInput;
  readonly main: JoinedInput;
}

/** Where the box hands over to the main speaker. */
export interface Crossing {
  readonly frequency: Frequency;
  /** Of the box re the main speaker, −π to π rad. At 0 they add fully, at ±π they cancel. */
  readonly phaseDifference: number;
  /** Of each of the two alone. */
  readonly level: Level;
}

/** A box and a main speaker at the listener, Pa rms. */
export interface Joined {
  readonly frequencies: FrequencyGrid;
  readonly sum: ComplexColumn;
  readonly box: ComplexColumn;
  readonly main: ComplexColumn;
  /** The highest frequency at which the main speaker becomes the louder of the two; left out if it never does. */
  readonly crossing?: Crossing;
}

const shape = { ...pathShape, pressure: given<ComplexColumn>(), filter: optional(filterField) };

/**
 * A bass box and a main speaker at the listener: each alone, their sum, and how they stand to each other where they cross.
 *
 * $$ p = p_b H_b\,g_b + p_m H_m\,g_m,\qquad |p_b H_b\,g_b|_{f_x} = |p_m H_m\,g_m|_{f_x},\qquad
 *    \Delta\varphi = \arg\frac{p_b H_b\,g_b}{p_m H_m\,g_m} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $p_b, p_m$ | `box.pressure`, `main.pressure` | Pa | at 1 m in half space |
 * | $H_b, H_m$ | `box.filter`, `main.filter` | 1 | crossover |
 * | $g_b, g_m$ | `box`, `main` | 1 | ways to the listener, as `compilePath` |
 * | $f_x$ | `crossing.frequency` | Hz | crossing; between two frequencies of the grid, levels and phases are drawn straight over $\ln f$ |
 * | $\Delta\varphi$ | `crossing.phaseDifference` | rad | phase of the box re the main speaker there |
 *
 * @validity small sources in a free field; a grid of at least 24 frequencies per octave for the crossing
 * @neglects the room, which changes phases about the crossing: measure there before you trust a delay
 * @returns the record {@link Joined}
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unsorted`, `unknown-field`, `inconsistent`
 * @source linkwitz1976 sum of low-pass and high-pass, delays, polarity
 * @example joinMains({ box: { pressure, filter: lowPass(linkwitzRileyShape(4), '80 Hz'), distance: '3 m' }, main }, grid).crossing
 */
export function joinMains(input: JoinInput, frequencies: ArrayLike<number>, air: Air = standardAir): Joined {
  const grid = frequencyGrid(frequencies);
  readAir(air);
  const faults: Fault[] = [];
  const parts = readFieldsInto(faults, '', input, { box: given<JoinedInput>(), main: given<JoinedInput>() });
  const read = (name: 'box' | 'main') => {
    const part = parts && readFieldsInto(faults, name, parts[name], shape);
    if (part !== undefined) faults.push(...unlessPressure(`${name}.pressure`, part.pressure, grid.length));
    return part;
  };
  const both = [read('box'), read('main')];
  refuse(faults);
  const [box, main] = both.map((part) => {
    const { pressure, filter, ...path } = part!;
    const there = copyOf(pressure);
    if (filter !== undefined) compileFilter(filter)(grid, there);
    pathKernel(path, air)(grid, there);
    return there;
  }) as [ComplexColumn, ComplexColumn];
  const sum = complexColumn(grid.length);
  for (let i = 0; i < grid.length; i++) {
    sum.re[i] = box.re[i]! + main.re[i]!;
    sum.im[i] = box.im[i]! + main.im[i]!;
  }
  const crossing = crossingOf(grid, box, main);
  return { frequencies: grid, sum, box, main, ...(crossing && { crossing }) };
}

function crossingOf(grid: FrequencyGrid, box: ComplexColumn, main: ComplexColumn): Crossing | undefined {
  const [boxLevel, mainLevel] = [pressureLevel(box), pressureLevel(main)];
  const ahead = (i: number) => boxLevel[i]! - mainLevel[i]!;
  let i = grid.length - 1;
  while (i > 0 && !(ahead(i - 1) > 0 && ahead(i) <= 0)) i--;
  if (i === 0) return undefined;
  const share = ahead(i - 1) / (ahead(i - 1) - ahead(i));
  const between = (low: number, high: number) => low + share * (high - low);
  const angle = (k: number) => Math.atan2(box.im[k]!, box.re[k]!) - Math.atan2(main.im[k]!, main.re[k]!);
  const before = angle(i - 1);
  const turned = angle(i) - before;
  const phase = before + share * (turned - 2 * Math.PI * Math.round(turned / (2 * Math.PI)));
  return {
    frequency: si('frequency', grid[i - 1]! * (grid[i]! / grid[i - 1]!) ** share),
    phaseDifference: phase - 2 * Math.PI * Math.round(phase / (2 * Math.PI)),
    level: si('level', between(boxLevel[i - 1]!, boxLevel[i]!)),
  };
}
