import type { EndCorrection } from '@airspring/core/duct';
import { type Fault, isInputError } from '@airspring/core/fault';
import type { Length } from '@airspring/core/quantity';
import * as v from 'valibot';
import { most } from '../brief/bounds.js';
import { described } from '../brief/described.js';
import { quantity } from '../brief/quantity-text.js';
import { metres } from './placing.js';

/** How a vent widens at one end, in plain SI numbers: a curve from the throat at 0 to the mouth at 1. */
export interface VentFlare {
  readonly name: string;
  readonly depth: number;
  readonly widening: number;
  readonly curve: (t: number) => readonly [along: number, widening: number];
  readonly sources: readonly string[];
}

interface Sizes {
  readonly depth: Length;
  readonly widening: Length;
}

/** What makes flares that are no quarter rounds, and knows the air in them: `@airspring/workshop/solid` does. */
export interface FlareMaker {
  ellipticFlare(sizes: Sizes): VentFlare;
  exponentialFlare(sizes: Sizes): VentFlare;
  flareThrough(points: readonly (readonly [number, number])[]): VentFlare;
  flareEnd(flare: VentFlare, end?: EndCorrection): EndCorrection;
}

const opt = v.exactOptional;
const length = (example: string) =>
  quantity('length', { least: 0, greatest: 500, unit: 'mm', example }, 'not-negative');
const sizes = v.strictObject({
  depth: described(length('30 mm'), 'length along the tube, a part of the length of the vent'),
  widening: described(length('15 mm'), 'how much wider the mouth is than the tube, on each side'),
});

/** The field of a brief for an end that is no quarter round. */
export const formField = (end: string) =>
  opt(
    described(
      v.pipe(
        v.strictObject({
          ellipse: opt(described(sizes, 'a quarter of an ellipse')),
          exponential: opt(described(sizes, 'a widening that grows exponentially from the throat')),
          profile: opt(
            v.pipe(
              v.array(v.strictTuple([length('0 mm'), length('0 mm')])),
              v.minLength(2, 'empty\nat least two points, the first of them the throat\nAdd points.'),
              most(),
              v.description(
                'points from the throat outwards, each by its distance from the throat and by the widening there',
              ),
              v.examples([
                [
                  ['0 mm', '0 mm'],
                  ['20 mm', '4 mm'],
                  ['30 mm', '15 mm'],
                ],
              ] as never),
            ),
          ),
        }),
        v.minEntries(1, 'empty\none of ellipse, exponential, profile\nGive one, or leave the field out.'),
        v.maxEntries(1, 'conflict\nonly one of ellipse, exponential, profile\nKeep one of them.'),
      ),
      `form of the ${end} end, where it is no quarter round, in place of flare.${end}: one of ellipse, exponential and profile`,
    ),
  );

/** A form as it is read, m. One of the three. */
export interface FlareForm {
  readonly ellipse?: { readonly depth: number; readonly widening: number };
  readonly exponential?: { readonly depth: number; readonly widening: number };
  readonly profile?: readonly (readonly [along: number, widening: number])[];
}

/** An end of a form that a maker made. */
export interface FormedEnd {
  readonly form: FlareForm;
  readonly flare: VentFlare;
  /** Points of its curve: the ends of equal steps, and their middles. */
  readonly points: readonly (readonly [along: number, widening: number])[];
  readonly correction: (end: EndCorrection) => EndCorrection;
}

/** Steps in which the air beside a flare is added up. */
const STEPS = 200;

function flareOf({ ellipse, exponential, profile = [] }: FlareForm, maker: FlareMaker): VentFlare {
  const sized = ({ depth, widening }: { readonly depth: number; readonly widening: number }): Sizes => ({
    depth: metres(depth),
    widening: metres(widening),
  });
  if (ellipse) return maker.ellipticFlare(sized(ellipse));
  return exponential ? maker.exponentialFlare(sized(exponential)) : maker.flareThrough(profile);
}

/** An end of a form. @throws InputError of the maker */
export function formedEnd(form: FlareForm, maker: FlareMaker): FormedEnd {
  const flare = flareOf(form, maker);
  const points = Array.from({ length: 2 * STEPS + 1 }, (_, i) => flare.curve(i / (2 * STEPS)));
  return { form, flare, points, correction: (end) => maker.flareEnd(flare, end) };
}

/** Faults of a form at its path: nobody makes it, or its points lead back. */
export function formFaults(form: FlareForm, path: string, maker: FlareMaker | undefined): Fault[] {
  const [name = ''] = Object.keys(form);
  if (maker === undefined) {
    const remedy = 'Pass in flares, such as those of @airspring/workshop/solid.';
    return [
      {
        code: 'inconsistent',
        path,
        got: name,
        expected: 'a quarter round, since no other flares were passed in',
        remedy,
      },
    ];
  }
  try {
    flareOf(form, maker);
    return [];
  } catch (error) {
    if (!isInputError(error)) throw error;
    return error.faults.map((fault) => ({
      ...fault,
      path: `${path}.${name}${fault.path.replace(/^[^.[]*/, '')}`,
    }));
  }
}

/** Air that a flare takes in addition to its tube, as far as it is from the throat, m³. */
export function formTaken({ points }: FormedEnd, outerRadius: number, inside: number): number {
  let sum = 0;
  for (let i = 0; i < points.length - 2; i += 2) {
    const [from, y, to] = [points[i]![0], points[i + 1]![1], points[i + 2]![0]];
    sum += Math.PI * (2 * outerRadius * y + y ** 2) * Math.max(0, Math.min(to, inside) - from);
  }
  return sum;
}
