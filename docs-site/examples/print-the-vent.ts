import { finiteFlange, flanged, flared } from '@airspring/core/duct';
import { format, type Length, si } from '@airspring/core/quantity';
import { lengthForTuning, tuning } from '@airspring/core/vent';
import { volumeOf } from '@airspring/workshop/mesh';
import {
  holeBySaw,
  printedTuning,
  roundFlare,
  twoPartVent,
  type VentSolidInput,
  ventSegments,
  ventSolid,
} from '@airspring/workshop/solid';

/** What may be changed. */
export const inputs = {
  diameter: {
    kind: 'length',
    label: 'Inner diameter of the vent',
    value: '68 mm',
    least: '50 mm',
    greatest: '80 mm',
    step: '1 mm',
    from: 'box C of the whale bench',
  },
  flare: {
    kind: 'length',
    label: 'Radius of the rounding at both ends',
    value: '10 mm',
    least: '4 mm',
    greatest: '18 mm',
    step: '1 mm',
  },
  height: {
    kind: 'length',
    label: 'Height that the printer builds',
    value: '200 mm',
    least: '120 mm',
    greatest: '300 mm',
    step: '10 mm',
    from: 'the printer of the whale bench',
  },
} as const;

interface Wish {
  readonly diameter: Length;
  readonly flare: Length;
  readonly height: Length;
}

/** Box C of the whale bench, before its vent is in it. Invented. */
export const box = {
  volumeBeforeVent: '38.62 L',
  panelThickness: '18 mm',
} as const;
export const fb = '30.1 Hz';
/** Another tuning, for a second tube in the same flange. */
const deeper = '27 Hz';
const wall = '3 mm' as const;
const bed = '200 mm';
/** Usual hole saws and circle cutters (common practice). */
const saws = [
  ...['60 mm', '68 mm', '76 mm', '83 mm', '92 mm', '102 mm'],
  ...['114 mm', '127 mm', '140 mm', '152 mm'],
] as const;
/** How much too narrow a printed bore may be (common practice). */
const shrink = si('length', 0.0004);
/** Of PLA, the usual plastic of printers (common practice). */
const density = 1240;

const endsOf = (radius: Length) => ({
  innerEnd: flared({ radius, end: finiteFlange }),
  outerEnd: flared({ radius, end: flanged }),
});

type Vent = Parameters<typeof lengthForTuning>[0]['vent'];

function lengthFor(vent: Vent, frequency: `${number} Hz` = fb) {
  const section = { ...vent, wall };
  const found = lengthForTuning({ vent: section, fb: frequency, ...box });
  if (!found.ok) throw new Error(found.because[0]?.text);
  return found;
}

/** The vent as it is drawn, with the hole that lets its inner end through. */
export function drawn({ diameter, flare }: Wish) {
  const ends = endsOf(flare);
  const { length, netVolume } = lengthFor({ diameter, ...ends });
  const mouth = si('length', diameter + 2 * (flare + 0.003));
  const hole = holeBySaw({ through: mouth, saws });
  if (!hole.ok) throw new Error(hole.because[0]?.text);
  const rounded = roundFlare({ radius: flare });
  const vent: VentSolidInput = {
    diameter,
    length,
    wall,
    outerFlare: rounded,
    innerFlare: rounded,
    flange: { diameter: hole.flangeDiameter },
  };
  return { vent, length, netVolume, mouth, hole };
}

/**
 * The same vent in two parts: a flange that stays, a tube to swap. Sizes
 * and pictures need no fine solid.
 */
export function swappable(
  { diameter, flare }: Wish,
  length: Length,
  fineness: Length = si('length', 2e-4),
) {
  const rounded = roundFlare({ radius: flare });
  const two = twoPartVent({
    diameter,
    length,
    panelThickness: box.panelThickness,
    wall,
    outerFlare: rounded,
    innerFlare: rounded,
    saws,
    fineness,
  });
  if (!two.ok) throw new Error(two.because[0]?.text);
  return two;
}

/** The vent in pieces, and to what its solid tunes: takes a moment. */
export function printed(wish: Wish, { vent, netVolume } = drawn(wish)) {
  const printer = { width: bed, depth: bed, height: wish.height } as const;
  const pieces = ventSegments({ vent, printer });
  if (!pieces.ok) throw new Error(pieces.because[0]?.text);
  const tuned = printedTuning({ vent: ventSolid(vent), netVolume });
  return { ...pieces, tuned };
}

const mm = (length: number) => format('length', si('length', length), 'mm');
const counted = ['no', 'one', 'two', 'three', 'four', 'five', 'six'];

/** What follows from the drawing alone. */
export function answers(wish: Wish, vent = drawn(wish)) {
  const { diameter, flare } = wish;
  const ends = endsOf(flare);
  const { length, netVolume, mouth, hole } = vent;
  const narrow = tuning({
    vent: {
      diameter: si('length', diameter - shrink),
      wall: si('length', 0.003 + shrink / 2),
      length,
      ...ends,
    },
    netVolume,
  });
  const hertz = (value: number) =>
    format('frequency', si('frequency', value), 'Hz', 4);
  const sharp = lengthFor({ diameter }).length;
  return {
    length: mm(length),
    sharp: mm(sharp),
    longer: mm(length - sharp),
    mouth: mm(mouth),
    hole: mm(hole.diameter),
    gap: mm(hole.gap),
    flange: mm(hole.flangeDiameter),
    narrow: narrow.ok ? hertz(narrow.fb) : 'no frequency',
    deeper: mm(lengthFor({ diameter, ...ends }, deeper).length),
  };
}

/** What only the solids tell. */
export function answersOfSolid(
  wish: Wish,
  solid = printed(wish),
  two = swappable(wish, drawn(wish).length),
) {
  const { parts, cuts, drawing, tuned } = solid;
  const ends = [0, ...cuts, drawing.length];
  const lengths = parts.map((_, i) => mm(ends[i + 1]! - ends[i]!));
  const off = Math.abs(tuned.printed - tuned.drawn);
  const volume = parts.reduce((sum, { mesh }) => sum + volumeOf(mesh), 0);
  const last = lengths.pop() as string;
  const listed = `${lengths.length > 0 ? `${lengths.join(', ')} and ` : ''}${last}`;
  const higher = tuned.printed > tuned.drawn ? 'higher' : 'lower';
  return {
    pieces: `${counted[parts.length]} ${parts.length > 1 ? 'pieces' : 'piece'}`,
    lengths: listed,
    off:
      off < 5e-4
        ? 'within 0.001 Hz of'
        : `${off.toFixed(3)} Hz ${higher} than`,
    mass: `${Math.round(volume * density * 1e3)} g`,
    twoHole: mm(two.hole),
    twoFlange: mm(two.flangeDiameter),
    proud: mm(two.proud),
    seat: mm(two.seat),
    cord: mm(two.cord.length),
  };
}
