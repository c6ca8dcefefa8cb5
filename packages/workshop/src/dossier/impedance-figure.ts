import type { Work } from './work.js';

const [WIDE, TALL] = [640, 240];
const [LEFT, BOTTOM, TOP, RIGHT] = [48, 34, 14, 12];

/** Marks of a logarithmic axis: 1, 2 and 5 in each decade. */
const marksOf = (from: number, to: number): number[] =>
  Array.from({ length: 8 }, (_, decade) => [1, 2, 5].map((one) => one * 10 ** (decade - 1)))
    .flat()
    .filter((mark) => mark >= from && mark <= to);

/** The magnitude of the impedance over frequency, as a paper on which a measured curve can be drawn. */
export function impedanceFigure(
  { impedance: { frequencies, magnitude, peaks, dips } }: Pick<Work, 'impedance'>,
  label = 'The impedance that the finished box should have',
): string {
  const [from, to] = [frequencies[0]!, frequencies.at(-1)!];
  const greatest = Math.max(...magnitude);
  const step = [1, 2, 5, 10, 20, 50, 100, 200].find((one) => greatest / one <= 8) ?? 500;
  // Room above the highest peak for its frequency.
  const top = Math.ceil((1.08 * greatest) / step) * step;
  const x = (f: number) => LEFT + ((WIDE - LEFT - RIGHT) * Math.log(f / from)) / Math.log(to / from);
  const y = (ohms: number) => TALL - BOTTOM - ((TALL - BOTTOM - TOP) * ohms) / top;
  const at = (value: number) => value.toFixed(1);
  const across = marksOf(from, to).map(
    (f) =>
      `<path class="grid" d="M${at(x(f))} ${TOP}V${TALL - BOTTOM}"/><text x="${at(x(f))}" y="${TALL - BOTTOM + 15}" text-anchor="middle">${f}</text>`,
  );
  const upwards = Array.from({ length: Math.round(top / step) + 1 }, (_, i) => i * step).map(
    (ohms) =>
      `<path class="grid" d="M${LEFT} ${at(y(ohms))}H${WIDE - RIGHT}"/><text x="${LEFT - 6}" y="${at(y(ohms) + 4)}" text-anchor="end">${ohms}</text>`,
  );
  const curve = frequencies.map((f, i) => `${i === 0 ? 'M' : 'L'}${at(x(f))} ${at(y(magnitude[i]!))}`).join('');
  const dots = [...peaks, ...dips]
    .filter(({ frequency }) => frequency >= from && frequency <= to)
    .map(({ frequency, value }) => {
      return `<circle class="dot" cx="${at(x(frequency))}" cy="${at(y(value))}" r="3"/><text class="told" x="${at(x(frequency))}" y="${at(y(value) - 7)}" text-anchor="middle">${frequency.toFixed(1)} Hz</text>`;
    });
  return `<svg class="chart" role="img" aria-label="${label}" viewBox="0 0 ${WIDE} ${TALL}" xmlns="http://www.w3.org/2000/svg">${across.join('')}${upwards.join('')}<path class="curve" d="${curve}"/>${dots.join('')}<text x="${WIDE - RIGHT}" y="${TALL - 4}" text-anchor="end">frequency, Hz</text><text x="6" y="11">Ω</text></svg>`;
}
