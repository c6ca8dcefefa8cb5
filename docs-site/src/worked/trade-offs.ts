import text from '../../examples/printed/trade-offs.txt?raw';
import { worked } from '../example/worked.js';
import { axisOf } from '../figures/axis.js';

/** What the example prints, as the tests pinned it: the search takes longer than a page may. */
const boxes = text
  .trim()
  .split('\n')
  .map((line) => {
    const [lowest, level, volume] = line.split('\t').map(Number.parseFloat) as [number, number, number];
    return { lowest, level, volume };
  });
const levels = [...new Set(boxes.map(({ level }) => level))];
const at = (wanted: number) => boxes.filter(({ level }) => level === wanted);
const [softest, loudest] = [levels[0]!, levels.at(-1)!];
const loud = at(loudest);
const [deepest, highest] = [loud[0]!, loud.at(-1)!];
/** The same depth at the lowest and at the highest level. */
const quiet = at(softest)[0]!;
const percent = (ratio: number) => `${Math.round(Math.abs(ratio - 1) * 100)} %`;
const times = (deepest.volume / highest.volume).toFixed(1);
const more = deepest.volume / quiet.volume;
const said = `To begin at ${deepest.lowest} Hz instead of ${highest.lowest} Hz the box must be ${times} times as large. To play ${loudest - softest} dB louder from ${deepest.lowest} Hz upwards, it must be ${percent(more)} ${more > 1 ? 'larger' : 'smaller'}.`;
const dashes = ['2 4', '7 4', 'none'];

export default worked({
  inputs: {},
  answers: () => ({ said }),
  figures: {
    front: {
      title: 'The smallest box for each depth and level',
      chart: () => ({
        label: `A box that plays ${loudest} dB must have ${deepest.volume.toFixed(1)} L outside to begin at ${deepest.lowest} Hz, and ${highest.volume.toFixed(1)} L to begin at ${highest.lowest} Hz.`,
        x: { domain: [25, 50], ticks: [25, 30, 40, 50], between: [35, 45], log: true, words: 'lowest tone, Hz' },
        y: axisOf(0, Math.max(...boxes.map(({ volume }) => volume)), 'L'),
        traces: levels.map((level, i) => ({
          name: `level${i}`,
          x: at(level).map(({ lowest }) => lowest),
          y: at(level).map(({ volume }) => volume),
          colour: 'var(--length)',
          dash: dashes[i % dashes.length]!,
          thick: i === levels.length - 1,
        })),
        marks: [
          {
            name: 'loudest',
            x: deepest.lowest,
            y: deepest.volume,
            words: `${loudest} dB`,
            colour: 'var(--length)',
            side: 'right',
          },
          {
            name: 'softest',
            x: quiet.lowest,
            y: quiet.volume,
            words: `${softest} dB`,
            colour: 'var(--length)',
            side: 'left',
            under: true,
          },
        ],
      }),
      data: () => ({
        heads: ['from', ...levels.map((level) => `${level} dB`)],
        rows: [...new Set(boxes.map(({ lowest }) => lowest))].map((lowest) => [
          `${lowest} Hz`,
          ...levels.map((level) => {
            const found = at(level).find((box) => box.lowest === lowest);
            return found ? `${found.volume.toFixed(1)} L` : '–';
          }),
        ]),
      }),
      note: `Full line: ${loudest} dB; dashes: ${levels[1]} dB; dots: ${softest} dB. A line ends where a louder box is as small.`,
    },
  },
});
