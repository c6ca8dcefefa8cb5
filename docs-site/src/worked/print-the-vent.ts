import { si } from '@airspring/core/quantity';
import { preview, stl, threeMf } from '@airspring/workshop/mesh';
import { ventSolid } from '@airspring/workshop/solid';
import { answers, answersOfSolid, box, drawn, inputs, printed, swappable } from '../../examples/print-the-vent.js';
import { once } from '../example/once.js';
import { worked } from '../example/worked.js';
import { bothWidths } from '../figures/both-widths.js';
import { drawTwoParts } from '../figures/two-part-drawing.js';
import { drawVentPieces } from '../figures/vent-pieces-drawing.js';

type Wish = Parameters<typeof drawn>[0];
const ventOf = once(drawn);
const twoOf = once((wish: Wish) => swappable(wish, ventOf(wish).length));
const finely = once((wish: Wish) => swappable(wish, ventOf(wish).length, FINE));
const answered = once((wish: Wish) => answers(wish, ventOf(wish)));
const solidOf = once((wish: Wish) => printed(wish, ventOf(wish)));

/** A picture on a page needs no finer solid, m. */
const COARSE = si('length', 1.5e-3);
/** Of a solid for a printer, m. */
const FINE = si('length', 1e-5);
const panel = Number.parseFloat(box.panelThickness) / 1e3;
const STL = 'model/stl';
const MF = 'model/3mf';

/** Names of files hold letters, digits and hyphens alone. */
const slug = (name: string): string => name.replace(/[^a-z0-9]+/g, '-');

export default worked({
  inputs,
  parts: (wish) => [() => ventOf(wish), () => answered(wish)],
  answers: (wish) => {
    const texts = answered(wish);
    return {
      ...texts,
      said: `The vent is ${texts.length} long and goes through a hole of ${texts.hole}.`,
    };
  },
  figures: {},
  slow: (wish) => {
    const solid = solidOf(wish);
    const texts = answersOfSolid(wish, solid, twoOf(wish));
    const { length, flange } = answered(wish);
    const coarse = ventSolid({ ...ventOf(wish).vent, fineness: COARSE });
    return {
      answers: texts,
      pictures: {
        two: bothWidths((width) =>
          drawTwoParts(
            twoOf(wish),
            panel,
            `A vent in two parts, cut along its axis: a flange of ${texts.twoFlange}, glued into a hole of ${texts.twoHole} in the panel, and a tube that slides through it, ${texts.seat} wide in its seat.`,
            width,
          ),
        ),
        solid: preview(coarse.mesh, {
          title: `The vent as a solid, seen from behind its flange: a tube of ${length} with both ends rounded, and a flange of ${flange}.`,
          azimuth: 2.4,
          elevation: 0.35,
        }),
        pieces: bothWidths((width) =>
          drawVentPieces(
            solid,
            `The vent cut along its axis, in ${texts.pieces} of ${texts.lengths}, pulled apart, with a flange of ${flange}.`,
            width,
          ),
        ),
      },
    };
  },
  files: {
    'vent.3mf': { type: MF, make: (wish) => threeMf(solidOf(wish).parts) },
    'vent-stl.zip': {
      type: 'application/zip',
      make: async (wish) => {
        const { archiveOf } = await import('@airspring/workshop/dossier');
        const files = solidOf(wish).parts.map(({ name, mesh }) => ({ path: `${slug(name)}.stl`, contents: stl(mesh) }));
        return archiveOf(files, 'vent');
      },
    },
    'flange.stl': { type: STL, make: (wish) => stl(finely(wish).flange) },
    'tube.stl': { type: STL, make: (wish) => stl(finely(wish).tube.mesh) },
  },
});
