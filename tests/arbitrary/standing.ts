import { type Retrofit, retrofit } from 'airspring';
import fc from 'fast-check';
import thunderBox from '../../packages/airspring/briefs/old-thunder-box.json' with { type: 'json' };
import { memory } from '../../packages/airspring/src/search/search.js';

/** The brief of the demonstration about a box that stands. */
export const demoStanding = thunderBox;

const answers = memory((brief: string): Retrofit => retrofit(JSON.parse(brief)));
/** The answer to a brief about a box that stands, worked out once for all tests that ask. */
export const retrofitted = (brief: unknown): Retrofit => answers(JSON.stringify(brief));

const mm = (value: number) => `${value} mm`;
const [sheet] = thunderBox.drivers;

/** A radiator that goes with the drivers, invented. */
const radiator = {
  name: 'eight-inch radiator, invented',
  Sd: '200 cm²',
  fs: '18 Hz',
  Vas: '60 L',
  Qms: 6,
  Xmax: '10 mm',
  outerDiameter: '200 mm',
  cutoutDiameter: '180 mm',
  depth: '60 mm',
};

/** Boxes of many sizes that stand, some with every place known, some with the air alone. */
export const standingBriefs = fc
  .record({
    known: fc.constantFrom('places', 'sizes', 'air'),
    width: fc.integer({ min: 200, max: 420 }),
    height: fc.integer({ min: 380, max: 600 }),
    depth: fc.integer({ min: 160, max: 420 }),
    litres: fc.integer({ min: 14, max: 60 }),
    drivers: fc.constantFrom(1, 2),
    diameter: fc.integer({ min: 36, max: 70 }),
    length: fc.integer({ min: 60, max: 200 }),
    measured: fc.option(fc.integer({ min: 85, max: 115 }), { nil: undefined }),
    keep: fc.subarray(['drivers', 'wiring', 'holes', 'tuning']),
    saws: fc.subarray([57, 68, 76, 92]),
    second: fc.option(fc.integer({ min: 24, max: 34 }), { nil: undefined, freq: 3 }),
    lowest: fc.integer({ min: 36, max: 55 }),
    level: fc.integer({ min: 90, max: 102 }),
  })
  .map(
    ({
      known,
      width,
      height: any,
      depth,
      litres,
      drivers,
      diameter,
      length,
      measured,
      keep,
      saws,
      second,
      lowest,
      level,
    }) => {
      // Two cutouts and the hole of the vent stand one above the other.
      const height = drivers > 1 ? Math.max(any, 445) : any;
      return {
        ...thunderBox,
        drivers: [{ ...sheet, wirings: [{ parallel: drivers }] }],
        standing: {
          ...(known === 'air'
            ? { air: `${litres} L` }
            : { outer: { width: mm(width), height: mm(height), depth: mm(depth) } }),
          panelThickness: '15 mm',
          vents: [
            {
              diameter: mm(diameter),
              length: mm(Math.min(length, known === 'air' ? 200 : depth)),
              hole: mm(diameter + 6),
              ...(known === 'places' && { place: { face: 'front', across: mm(width / 2), up: mm(60) } }),
            },
            // A narrow one in the back of some, unlike the first.
            ...(second === undefined
              ? []
              : [
                  {
                    diameter: mm(second),
                    length: mm(60),
                    hole: mm(second + 6),
                    ...(known === 'places' && { place: { face: 'back', across: mm(width / 2), up: mm(height / 2) } }),
                  },
                ]),
          ],
          ...(known === 'places' && {
            drivers: Array.from({ length: drivers }, (_, i) => ({
              face: 'front',
              across: mm(width / 2),
              up: mm(height - 100 - i * 170),
            })),
          }),
          ...(measured !== undefined && { measured: { tuning: `${measured * 0.35} Hz` } }),
          keep: ['box', ...keep],
        },
        workshop: { holeSaws: saws.map(mm) },
        radiators: [radiator],
        wanted: { lowest: `${lowest} Hz`, highest: '150 Hz', level: `${level} dB`, fall: '6 dB' },
      };
    },
  );
