import { once } from '../example/once.js';
import { worked } from '../example/worked.js';
import { answers, inputs, solve } from '../home/bench.js';
import { drawBench } from '../home/bench-drawing.js';

type Values = Parameters<typeof solve>[0];
const solved = once((values: Values) => solve(values));

export default worked({
  inputs,
  answers: (values) => {
    const texts = answers(values, solved(values));
    return { ...texts, said: `${texts.verdict} It must be ${texts.length} long.` };
  },
  figures: {},
  pictures: {
    bench: (values) => {
      const { verdict, length, shape } = answers(values, solved(values));
      return drawBench(
        solved(values),
        `A bench with the box under its seat drawn as if of glass. Its vent, ${length} long, ${shape}. ${verdict}`,
      );
    },
  },
});
