import { answers, inputs, solve } from '../../examples/a-box-that-is-no-box.js';
import { once } from '../example/once.js';
import { worked } from '../example/worked.js';
import { drawStepped } from '../figures/stepped-drawing.js';
import { drawWedge } from '../figures/wedge-drawing.js';

type Wish = Parameters<typeof solve>[0];
const solved = once(solve);
const answered = once((wish: Wish) => answers(wish, solved(wish)));

export default worked({
  inputs,
  answers: (wish) => {
    const texts = answered(wish);
    return {
      ...texts,
      said: `The wedge must be ${texts.length} long; a cuboid of its depth and height ${texts.cuboid}.`,
    };
  },
  figures: {},
  pictures: {
    wedge: (wish) => {
      const { length, lower, upper } = answered(wish);
      return drawWedge(
        solved(wish).shape,
        wish.top,
        `A wedge cut across, with its panels meeting in mitres, and its front beside it. It is ${length} long; its slanted panel is cut at ${lower} below and ${upper} above.`,
      );
    },
    stepped: (wish) => {
      const { stepped, opening } = answered(wish);
      return drawStepped(
        solved(wish).stepped,
        `The front of a box with a low end, ${stepped} long in all. Behind it, dashed, is the air: within the panels, and through an opening ${opening} high in the panel where both parts meet.`,
      );
    },
  },
});
