import { type Fault, isInputError } from '@airspring/core/fault';
import { si } from '@airspring/core/quantity';
import type { Drawing } from '../drawing/index.js';
import { extentOf, type Mesh, preview, volumeOf } from '../mesh/index.js';
import { driverGasket, massDiscs, terminalCup } from '../solid/index.js';
import { faultsTold } from './made.js';
import { bedOf, PLASTIC } from './printing.js';
import { airText, roughly, type Says } from './says.js';
import { placeText, type Terminals, terminalsOf } from './terminals.js';
import type { Work, WorkTools } from './work.js';

/** A small part to print. */
export interface SmallPart {
  /** 'gasket': its files are called so. */
  readonly name: string;
  readonly count: number;
  /** Left out where the printer is too small for it. */
  readonly mesh?: Mesh;
  readonly picture: string;
  /** Of all of them, printed full of the usual plastic, kg. */
  readonly mass: number;
  /** To cut it instead. */
  readonly drawing?: Drawing;
  /** Its sizes, as rows of a table. */
  readonly sizes: readonly (readonly [string, string])[];
  /** How it is printed and fitted, a sentence each. */
  readonly advice: readonly string[];
  /** Of a cup for the terminals: where it goes. */
  readonly terminals?: Terminals;
}

export interface SmallParts {
  readonly parts: readonly SmallPart[];
  /** What was asked for and cannot be made, in sentences. */
  readonly notes: readonly string[];
}

const metres = (value: number) => si('length', value);
/** How coarse a picture may be, m. */
const COARSE = metres(5e-4);
/** The bolt in the middle of a radiator that takes weights, m; discs over the diameter of its cone (common practice). */
const [MIDDLE_BOLT, OF_CONE] = [6.4e-3, 0.4];

const pictureOf = (mesh: Mesh, title: string): string => preview(mesh, { title, azimuth: 0.6, elevation: 0.7 });

/** Whether a printer takes a part as it stands. */
function fitsBed(mesh: Mesh, tools: WorkTools): boolean {
  const { width, height } = bedOf(tools);
  const [x, y, z] = extentOf(mesh).edges;
  return Math.max(x, y) <= width + 1e-6 && z <= height + 1e-6;
}

/** The printer as a sentence calls it. */
const printerOf = (tools: WorkTools, says: Says): string =>
  tools.printer ? 'the printer' : `a printer that builds ${says(bedOf(tools).height)} in each direction`;

function gasketOf({ drivers, tools, unit }: Work, says: Says): SmallPart | undefined {
  const { bolts } = tools;
  if (bolts === undefined) return undefined;
  const input = {
    inner: metres(drivers.cutoutDiameter),
    outer: metres(drivers.outerDiameter),
    bolts: { count: bolts.count, circle: metres(bolts.circle), hole: metres(bolts.hole) },
  };
  const { mesh, drawing } = driverGasket(input);
  return {
    name: 'gasket',
    count: drivers.count,
    mesh,
    picture: pictureOf(driverGasket({ ...input, fineness: COARSE }).mesh, 'A gasket'),
    mass: drivers.count * volumeOf(mesh) * PLASTIC,
    drawing,
    sizes: [
      ['inner diameter', says(drivers.cutoutDiameter)],
      ['outer diameter', says(drivers.outerDiameter)],
      ['thickness', says(extentOf(mesh).edges[2])],
      ['holes', `${bolts.count} × ${says(bolts.hole)} on a circle of ${says(bolts.circle)}`],
    ],
    advice: [
      `Gasket: ${fitsBed(mesh, tools) ? 'print it of a soft filament, full, and lay it under the frame without glue. Or cut it' : `it is too wide for ${printerOf(tools, says)}. Cut it`} from closed-cell foam of about ${roughly(unit, 2.5e-3)} by its drawing: the file is to the scale 1 : 1.`,
      'Measure the bolts of your driver before you drill: these holes follow the brief.',
    ],
  };
}

function weightOf({ weights }: Work, says: Says): SmallPart | undefined {
  if (weights === undefined) return undefined;
  const diameter = metres(Math.round(1e3 * OF_CONE * weights.coneDiameter) / 1e3);
  const input = { mass: si('mass', weights.mass), diameter, hole: metres(MIDDLE_BOLT) };
  const { mesh, count, height, massRange } = massDiscs(input);
  const grams = (mass: number) => `${Math.round(1e3 * mass)} g`;
  const many = weights.count > 1;
  return {
    name: 'weight',
    count: count * weights.count,
    mesh,
    picture: pictureOf(massDiscs({ ...input, fineness: COARSE }).mesh, 'A disc of added mass'),
    mass: weights.count * weights.mass,
    sizes: [
      ['diameter', says(diameter)],
      ['hole', says(MIDDLE_BOLT)],
      ['height', says(Math.round(1e4 * height) / 1e4)],
      [`${many ? 'for each radiator' : 'for the radiator'}`, `${count} ${count > 1 ? 'discs' : 'disc'}`],
      ['they shall weigh together', grams(weights.mass)],
    ],
    advice: [
      `Weights: print them of PLA with 100 % infill. ${count > 1 ? `The ${count} discs of a radiator` : 'A disc'} will weigh ${grams(massRange[0])} to ${grams(massRange[1])}, as printers lay plastic. With less infill only a scale knows. Weigh what you add, bolt included: ${grams(weights.mass)} is what the tuning asks for. Sand off what is too much, add washers where it is too little.`,
      'Bolt them to the middle of the cone with a locking nut, or glue them where the maker allows that. Steel washers of the same mass are flatter.',
    ],
  };
}

function cupOf(work: Work, says: Says): SmallPart | undefined {
  const { box, tools } = work;
  if (tools.terminals === undefined || box === undefined) return undefined;
  const { hole = 8e-3, apart = 0.019 } = tools.terminals;
  const input = { posts: { hole: metres(hole), apart: metres(apart) } };
  const cup = terminalCup(input);
  const terminals = terminalsOf(work, box, cup);
  const taken = cup.displaced(metres(box.thickness));
  return {
    name: 'terminal-cup',
    count: 1,
    mesh: cup.mesh,
    picture: pictureOf(terminalCup({ ...input, fineness: COARSE }).mesh, 'The cup for the terminals'),
    mass: volumeOf(cup.mesh) * PLASTIC,
    sizes: [
      ['hole in the panel', says(cup.hole)],
      ['flange', says(cup.flangeDiameter)],
      ['reaches behind the outer surface', says(cup.reach)],
      ['posts', `2 × ${says(hole)}, ${says(apart)} apart`],
    ],
    advice: [
      `Cup: print it standing on its flange, with four walls, and brush the inside with thinned glue: it must be airtight. Seal the posts with their washers, and the flange with sealant or a strip of foam. Its hole goes ${placeText(terminals, says)}. It takes ${airText(work, taken)} of air, which the tuning does not count.`,
    ],
    terminals,
  };
}

/** Where the brief says what a small part is made of. */
const FIELDS = [
  [/^gasket\.bolts\b/, 'workshop.bolts'],
  [/^gasket\.outer\b/, 'drivers[].outerDiameter'],
  [/^gasket\.inner\b/, 'drivers[].cutoutDiameter'],
  [/^cup(\.posts)?\b/, 'workshop.terminals'],
] as const;

/** Faults by the fields of the brief. */
const asWritten = (faults: readonly Fault[], says: Says): string =>
  faultsTold(
    faults.map((fault) => ({
      ...fault,
      path: FIELDS.reduce((path, [own, field]) => path.replace(own, field), fault.path),
    })),
    says,
  );

/** The small parts that a box needs: gaskets, weights of radiators, a cup for the terminals. */
export function smallPartsOf(work: Work, says: Says): SmallParts {
  const notes: string[] = [];
  const parts = [gasketOf, weightOf, cupOf].flatMap((make): SmallPart[] => {
    try {
      const found = make(work, says);
      return found === undefined ? [] : [found];
    } catch (error) {
      if (!isInputError(error)) throw error;
      notes.push(`A small part is not made: ${asWritten(error.faults, says)}`);
      return [];
    }
  });
  const fitting = parts.map(({ mesh, ...part }): SmallPart => {
    if (fitsBed(mesh!, work.tools)) return { ...part, mesh: mesh! };
    const wide = `The ${part.name}, ${says(extentOf(mesh!).edges[0])} wide, is too large for ${printerOf(work.tools, says)}`;
    notes.push(part.drawing ? `${wide}: cut it by its drawing.` : `${wide}.`);
    return part;
  });
  return { parts: fitting, notes };
}
