import { decimalText } from '@airspring/core/quantity';
import type { NearAlignment, ReachedGoal } from '../record/alignments.js';
import type { Design } from '../record/design-record.js';
import { table } from './layout.js';
import type { Phrasing } from './phrasing.js';

/** Differences smaller than this are within what saws and drivers do to a box. */
const SAME = { volume: 0.01, frequency: 0.1 } as const;

const decibels = (value: number): string => `${value.toFixed(2)} dB`;

/** A parameter below this is nothing but rounding beside those that a shape has. */
const VANISHING = 5e-4;

/** An alignment with its parameters: 'QB3 (B 1.48)'. */
function named(name: string, parameters: Readonly<Record<string, number>>): string {
  const texts = Object.entries(parameters).map(
    ([parameter, value]) => `${parameter} ${Math.abs(value) < VANISHING ? '0' : decimalText(value, 3)}`,
  );
  return texts.length > 0 ? `${name} (${texts.join(', ')})` : name;
}

/** 'as much as this box', '12 % more than this box'. */
function sizeText(share: number, say: Phrasing): string {
  if (Math.abs(share) < SAME.volume) return 'as much as this box';
  return `${say.percent(Math.abs(share))} ${share < 0 ? 'less' : 'more'} than this box`;
}

/** 'as here', '3.1 Hz lower than here'. */
function placeText(hertz: number, say: Phrasing): string {
  if (Math.abs(hertz) < SAME.frequency) return 'as here';
  return `${say.hertz(Math.abs(hertz))} ${hertz < 0 ? 'lower' : 'higher'} than here`;
}

/** How the box of an alignment differs from the design. */
function differs({ name, box }: NearAlignment, { response, box: own }: Design, say: Phrasing): string {
  if (!box.ok) return `No box gives these drivers that response exactly. ${box.because}`;
  const size = sizeText(box.netVolume / own.netVolume - 1, say);
  const volume = `With these drivers, ${named(name, box.parameters)} takes ${say.volume(box.netVolume)} of air, ${size}`;
  if (box.f3 === undefined || response.f3 === undefined) return `${volume}.`;
  return `${volume}. Its f3 is ${say.hertz(box.f3)}, ${placeText(box.f3 - response.f3, say)}.`;
}

/** What a goal comes to in this box, and what it could be. */
function goalText({ name, value, least }: ReachedGoal, { box }: Design, say: Phrasing): string {
  const here = `The goal ${name} is ${decimalText(value, 4)} in this box.`;
  if (!least.ok) return `${here} ${least.because}`;
  const size = sizeText(least.netVolume / box.netVolume - 1, say);
  return `${here} The least that these drivers reach is ${decimalText(least.value, 4)}, with ${say.volume(least.netVolume)} of air, ${size}.`;
}

/** Which alignment a design comes near to, as a paragraph; `undefined` where the brief does not ask. */
export function alignmentText(design: Design, say: Phrasing): string | undefined {
  const { alignments, goal } = design;
  if (goal !== undefined) return goalText(goal, design, say);
  if (alignments === undefined) return undefined;
  const [first] = alignments;
  if (first === undefined) {
    const { noAlignment } = design.told;
    return noAlignment ? say.phrase(noAlignment) : 'None of the named alignments has the order of this response.';
  }
  const { deviation, name, parameters } = first;
  const near =
    alignments.length > 1
      ? `Of the named alignments, ${named(name, parameters)} is the nearest to this response.`
      : `This response is compared with ${named(name, parameters)}.`;
  return `${near} The two differ by ${decibels(deviation.rms)} (rms) from ${say.edge(deviation.from)} to ${say.edge(deviation.to)}. ${differs(first, design, say)}`;
}

/** The nearest alignments, where there are several. */
export function alignmentTable({ alignments = [] }: Design, say: Phrasing): string[] {
  if (alignments.length < 2) return [];
  const rows = alignments.map(({ name, parameters, deviation, box }) => [
    named(name, parameters),
    decibels(deviation.rms),
    box.ok ? say.volume(box.netVolume) : '',
    box.ok && box.f3 !== undefined ? say.hertz(box.f3) : '',
    box.ok ? '' : box.because,
  ]);
  return [table('lrrrl', [['alignment', 'rms', 'its air', 'its f3', ''], ...rows])];
}
