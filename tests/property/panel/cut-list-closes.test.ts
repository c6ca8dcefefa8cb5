/**
 * Whoever has nothing but the cut list can build the box. Its boards are laid in place here by the words and sizes of that file alone:
 * each in the middle of its face, since opposite panels are made alike. Every place in the walls is then in one board, and none in two.
 */
import { randomNumbers } from '@airspring/core/numeric';
import {
  birchPlywood,
  butt,
  cutListCsv as csvOf,
  cutList,
  mdf,
  mitre,
  panelBox,
  rabbet,
  windowBrace,
} from '@airspring/workshop/panel';
import { expect } from 'vitest';
import { cases } from '../../arbitrary/fuzz-runs.js';
import { fc, test } from '../../arbitrary/property.js';

/** The axis of each face, 0 width, 1 height, 2 depth, and whether it is the far one. */
const FACES: Readonly<Record<string, readonly [axis: number, far: boolean]>> = {
  left: [0, false],
  right: [0, true],
  bottom: [1, false],
  top: [1, true],
  front: [2, false],
  back: [2, true],
};

interface Board {
  readonly name: string;
  /** Its two sizes as listed, and its thickness, mm. */
  readonly sizes: readonly [number, number];
  readonly thickness: number;
  /** For each face that it meets, what is taken there: a step, or a slope. */
  readonly work: ReadonlyMap<string, { readonly wide: number; readonly deep: number } | { readonly slope: number }>;
}

/** The fields of a line of comma-separated values, of which some stand between quotes. */
const fieldsOf = (line: string): string[] =>
  [...line.matchAll(/("(?:[^"]|"")*"|[^,]*)(?:,|$)/g)].map(([, field]) => field!.replace(/^"|"$/g, ''));

/** The boards of a cut list, one by one. */
function boardsOf(text: string): Board[] {
  return text
    .trim()
    .split('\r\n')
    .slice(1)
    .flatMap((line) => {
      const [names = '', count, length, width, thickness, , , edges = ''] = fieldsOf(line);
      const work: [string, { wide: number; deep: number } | { slope: number }][] = [];
      for (const words of edges.split('; ').filter((one) => one !== '')) {
        const [what = '', where = ''] = words.split(': ');
        const step = /^rabbet ([\d.]+) mm wide, ([\d.]+) mm deep$/.exec(what);
        const slope = /^bevel ([\d.]+)°$/.exec(what);
        expect(step ?? slope).not.toBe(null);
        for (const face of where.split(', '))
          work.push([
            face,
            step
              ? { wide: Number(step[1]), deep: Number(step[2]) }
              : { slope: Math.tan((Number(slope![1]) * Math.PI) / 180) },
          ]);
      }
      const each = names.split(' + ');
      expect(each.length).toBe(Number(count));
      return each.map((name) => ({
        name,
        sizes: [Number(length), Number(width)] as const,
        thickness: Number(thickness),
        work: new Map(work),
      }));
    });
}

type Place = readonly number[];
/** A board in its face: from where to where along each axis. */
interface Laid {
  readonly board: Board;
  readonly least: Place;
  readonly greatest: Place;
}

const EXACT = 1e-6;

/** Both ways to lay a board in the middle of its face, as far as it is neither wider than the box nor loose between the panels. */
function waysOf(board: Board, outer: Place, walls: readonly (readonly [number, number])[]): Laid[] {
  const [axis, far] = FACES[board.name]!;
  const [one, other] = [0, 1, 2].filter((k) => k !== axis) as [number, number];
  const ways = [board.sizes, [board.sizes[1], board.sizes[0]] as const].flatMap(([first, second]): Laid[] => {
    const least: number[] = [];
    const greatest: number[] = [];
    least[axis] = far ? outer[axis]! - board.thickness : 0;
    greatest[axis] = least[axis]! + board.thickness;
    for (const [k, size] of [
      [one, first],
      [other, second],
    ] as const) {
      const clear = outer[k]! - walls[k]![0] - walls[k]![1];
      if (size > outer[k]! + EXACT || size < clear - EXACT) return [];
      least[k] = (outer[k]! - size) / 2;
      greatest[k] = (outer[k]! + size) / 2;
    }
    return [{ board, least, greatest }];
  });
  return board.sizes[0] === board.sizes[1] ? ways.slice(0, 1) : ways;
}

/** Whether a place is in the wood of a board that is laid. */
function isIn({ board, least, greatest }: Laid, at: Place): boolean {
  if (at.some((x, k) => x < least[k]! || x > greatest[k]!)) return false;
  const [axis, far] = FACES[board.name]!;
  const depth = far ? greatest[axis]! - at[axis]! : at[axis]! - least[axis]!;
  for (const [face, taken] of board.work) {
    const [k, high] = FACES[face]!;
    const along = high ? greatest[k]! - at[k]! : at[k]! - least[k]!;
    if ('slope' in taken ? along < depth * taken.slope : along < taken.wide && depth > board.thickness - taken.deep)
      return false;
  }
  return true;
}

/** Places in a box, as many in its walls, edges and corners as in its air. */
function placesIn(outer: Place, walls: readonly (readonly [number, number])[], seed: number): Place[] {
  const next = randomNumbers(seed);
  const at = (k: number, i: number) => {
    const part = next();
    const where = Math.floor(i / 3 ** k) % 3;
    const [near, far] = walls[k]!;
    if (where === 0) return part * near;
    return where === 1 ? outer[k]! - part * far : near + part * (outer[k]! - near - far);
  };
  return Array.from({ length: 27 * 12 }, (_, i) => [at(0, i), at(1, i), at(2, i)]);
}

/** All choices of one way for each board. */
const choices = (ways: readonly (readonly Laid[])[]): Laid[][] =>
  ways.reduce<Laid[][]>((all, some) => all.flatMap((before) => some.map((way) => [...before, way])), [[]]);

const edge = fc.integer({ min: 1500, max: 9000 }).map((tenths) => tenths / 10);
const thin = fc.integer({ min: 60, max: 400 }).map((tenths) => tenths / 10);
const millimetres = (value: number) => `${value} mm` as const;
const pairs = [
  ['front', 'back'],
  ['top', 'bottom'],
  ['left', 'right'],
] as const;

test.prop(
  [
    fc.record({
      outer: fc.tuple(edge, edge, edge),
      thickness: fc.tuple(thin, thin, thin),
      joint: fc.constantFrom('butt', 'rabbet', 'mitre'),
      depth: fc.double({ min: 0.1, max: 0.9, noNaN: true }),
      order: fc.shuffledSubarray([0, 1, 2], { minLength: 3 }),
      grained: fc.boolean(),
      brace: fc.option(fc.tuple(fc.constantFrom(0, 1, 2), fc.double({ min: 0.3, max: 0.7, noNaN: true })), {
        nil: undefined,
      }),
    }),
    fc.nat(),
  ],
  { numRuns: cases(300) },
)(
  'the boards of a cut list fill the walls of the box once',
  ({ outer, thickness, joint, depth, order, grained, brace }, seed) => {
    // A mitre of unequal boards has a slope of odd degrees, which the file rounds.
    const thick = joint === 'mitre' ? [thickness[0], thickness[0], thickness[0]] : thickness;
    const [across, up, inwards] = thick as [number, number, number];
    const step = Math.max(0.1, Math.floor(10 * depth * Math.min(...thick)) / 10);
    const names = ['width', 'height', 'depth'] as const;
    const box = panelBox({
      outer: { width: millimetres(outer[0]), height: millimetres(outer[1]), depth: millimetres(outer[2]) },
      thickness: {
        left: millimetres(across),
        right: millimetres(across),
        bottom: millimetres(up),
        top: millimetres(up),
        front: millimetres(inwards),
        back: millimetres(inwards),
      },
      joint: joint === 'rabbet' ? rabbet({ depth: millimetres(step) }) : joint === 'mitre' ? mitre : butt,
      covering: order.flatMap((one) => [...pairs[one]!]),
      ...(brace && {
        braces: [
          {
            across: names[brace[0]]!,
            at: millimetres(Math.round(outer[brace[0]]! * brace[1])),
            thickness: '6 mm',
            form: windowBrace({ border: '15 mm' }),
          },
        ],
      }),
      board: grained ? birchPlywood : mdf,
    });
    if (!box.ok) throw new Error(box.because[0]!.text);
    const boards = boardsOf(csvOf(cutList(box)));
    const walls = thick.map((wall) => [wall, wall] as const);
    const inside = boards.filter(({ name }) => FACES[name] === undefined);
    expect(inside).toHaveLength(brace ? 1 : 0);
    for (const { sizes, thickness: own } of inside) {
      // It stands between the four panels around it, with no gap.
      const clear = [0, 1, 2].filter((k) => k !== brace![0]).map((k) => outer[k]! - 2 * thick[k]!);
      const sorted = (list: readonly number[]) =>
        [...list].sort((a, b) => a - b).map((size) => Number(size.toFixed(3)));
      expect(sorted(sizes)).toEqual(sorted(clear));
      expect(own).toBe(6);
    }
    const panels = boards.filter(({ name }) => FACES[name] !== undefined);
    expect(panels.map(({ name }) => name).sort()).toEqual(Object.keys(FACES).sort());
    const places = placesIn(outer, walls, seed);
    const closes = (laid: readonly Laid[]) =>
      places.every((at) => {
        const solid = at.some((x, k) => x < thick[k]! || x > outer[k]! - thick[k]!);
        return laid.filter((one) => isIn(one, at)).length === Number(solid);
      });
    expect(choices(panels.map((board) => waysOf(board, outer, walls))).some(closes)).toBe(true);
  },
);
