import * as v from 'valibot';
import { most, oneOrMore, size, wall } from './bounds.js';
import { described } from './described.js';
import { quantity, wholeNumber, words } from './quantity-text.js';

const opt = v.exactOptional;
const length = quantity('length', { ...size, example: '76 mm' });
const margin = (example: string) =>
  quantity('length', { least: 0, greatest: 100, unit: 'mm', example }, 'not-negative');
const list = <const S extends v.GenericSchema>(one: S) => v.pipe(v.array(one), most());
const hole = (text: string, example: string) =>
  described(quantity('length', { least: 1, greatest: 50, unit: 'mm', example }), text);
const depth = described(
  quantity('length', { ...wall, example: '9 mm' }),
  'depth of the rabbet in the front and the back',
);

/** Tools, boards and pipes at hand. They change how a box is built, and what its vents take of room and air; what it shall sound like is asked elsewhere. */
export const workshopField = described(
  v.strictObject({
    holeSaws: opt(described(list(length), 'diameters of the hole saws at hand, for the holes of round vents')),
    pipes: opt(
      described(
        list(
          v.strictObject({
            inner: described(length, 'inner diameter'),
            outer: described(quantity('length', { ...size, example: '82 mm' }), 'outer diameter'),
          }),
        ),
        'pipes at hand, by inner and outer diameter; they count for a box that stands, not for a new one',
      ),
    ),
    joint: opt(
      described(
        v.pipe(
          v.strictObject({
            butt: opt(described(v.strictObject({}), 'edges against faces')),
            rabbet: opt(described(v.strictObject({ depth }), 'front and back take the others in a rabbet')),
            mitre: opt(described(v.strictObject({}), 'edges cut at 45°')),
          }),
          v.minEntries(1, 'empty\none of butt, rabbet, mitre\nGive one, or leave the field out.'),
          v.maxEntries(1, 'conflict\nonly one of butt, rabbet, mitre\nKeep one of them.'),
        ),
        'how the panels meet: one of butt, rabbet and mitre; default butt',
      ),
    ),
    sheets: opt(
      described(
        oneOrMore(
          v.strictObject({
            length: described(
              quantity('length', { least: 50, greatest: 10_000, unit: 'mm', example: '2500 mm' }),
              'along the grain, where there is one',
            ),
            width: described(
              quantity('length', { least: 50, greatest: 10_000, unit: 'mm', example: '1250 mm' }),
              'across it',
            ),
            count: opt(described(wholeNumber(1, 100), 'how many there are; default as many as are needed')),
          }),
          'at least one sheet',
        ),
        'sheets of board at hand; default sheets of 2500 × 1250 mm',
      ),
    ),
    kerf: opt(described(margin('3 mm'), 'width of the cut of the saw; default 3 mm')),
    trim: opt(described(margin('10 mm'), 'what is cut off around a sheet first; default 10 mm')),
    board: opt(
      described(words(80, 'birch plywood'), 'what the panels are cut from, as the pages call it; default board'),
    ),
    grain: opt(described(v.boolean(), 'whether the board has a grain that panels must follow; default false')),
    density: opt(
      described(
        quantity('density', { least: 50, greatest: 5000, unit: 'kg/m³', example: '680 kg/m³' }),
        'of the board, for the mass of the box; default 700 kg/m³ (common practice)',
      ),
    ),
    nozzle: opt(
      described(
        quantity('length', { least: 0.1, greatest: 3, unit: 'mm', example: '0.4 mm' }),
        'diameter of the nozzle of the printer, in whole lines of which it lays walls; default 0.4 mm',
      ),
    ),
    bolts: opt(
      described(
        v.strictObject({
          count: described(wholeNumber(2, 24), 'how many each driver has'),
          circle: described(length, 'diameter of the circle through their middles'),
          hole: hole('diameter of the holes in the frame', '5 mm'),
        }),
        'bolts of the frames of the drivers: holes in the panels and a gasket are made for them',
      ),
    ),
    recess: opt(
      hole(
        'depth of a step in which the frame of each driver lies flush with its panel; default none, the frame lies on the panel',
        '6 mm',
      ),
    ),
    roundOver: opt(
      hole(
        'radius of the inner edge of the hole of each driver, so that air gets behind its cone; default none, a sharp edge',
        '9 mm',
      ),
    ),
    terminals: opt(
      described(
        v.strictObject({
          hole: opt(hole('diameter of the hole for a binding post; default 8 mm', '8 mm')),
          apart: opt(
            described(
              quantity('length', { least: 5, greatest: 100, unit: 'mm', example: '19 mm' }),
              'distance of their middles; default 19 mm',
            ),
          ),
        }),
        'a cup for two binding posts is printed, and its hole is in the back',
      ),
    ),
    brace: opt(
      described(
        v.strictObject({
          across: opt(
            described(
              v.picklist(['width', 'height', 'depth']),
              'the edge of the box that it divides; default the one where it helps most',
            ),
          ),
          at: opt(
            described(
              length,
              'its middle, from the left, bottom or front outer edge; default as near to the middle as there is room',
            ),
          ),
          border: opt(described(length, 'how wide it is around its opening; default up to 80 mm')),
        }),
        'a window brace is cut of the same board; it takes air, which "bracing" of the space counts',
      ),
    ),
  }),
  'tools, boards and pipes at hand; they change how a box is built, not what is wanted of it',
);

/** The section, read into SI units and as it is written. */
export type ReadWorkshop = v.InferOutput<typeof workshopField>;
export type WrittenWorkshop = v.InferInput<typeof workshopField>;
