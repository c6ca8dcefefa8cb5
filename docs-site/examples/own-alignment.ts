import {
  type Alignment,
  boxesThatSuit,
  butterworth,
  candidate,
  quasiThirdOrder,
} from '@airspring/core/alignment';
import { completeDriver } from '@airspring/core/driver';
import { ventedFamily } from '@airspring/core/enclosure';
import { format, logarithmicGrid, si } from '@airspring/core/quantity';
import { cutoff, respond } from '@airspring/core/response';

const grid = logarithmicGrid(10, 200, 80);
// The deepest box whose group delay keeps a limit.
const delayAtMost = (seconds: number): Alignment => ({
  name: `delay of ${1000 * seconds} ms`,
  order: 4,
  parameters: { seconds },
  sources: ['own'],
  target: {
    least: (system) => {
      const reach = cutoff(system);
      const delay = Math.max(...respond(system, grid).groupDelay);
      const excess = Math.max(0, delay / seconds - 1);
      return (reach.ok ? reach.frequency : 1000) * (1 + 20 * excess);
    },
  },
});

const sheet = completeDriver({
  fs: '28 Hz',
  Qts: 0.36,
  Qms: 5,
  Vas: '75 L',
  Sd: '330 cm²',
  Re: '5.6 Ω',
});
if (!sheet.ok) throw new Error(sheet.because[0]?.text);
const alignments = [quasiThirdOrder, butterworth(4), delayAtMost(0.016)];
const rows = boxesThatSuit(
  sheet.driver,
  alignments.map((one) => candidate(one, ventedFamily, { QL: 7 })),
);
for (const { alignment, result } of rows) {
  if (!result.ok || !result.f3.ok) {
    const why = result.ok ? 'it reaches nowhere' : result.because[0]?.text;
    console.log(`${alignment.name}: ${why}`);
    continue;
  }
  const reach = format('frequency', result.f3.frequency, 'Hz');
  const delay = Math.max(...respond(result.system, grid).groupDelay);
  const late = format('time', si('time', delay), 'ms');
  const goal =
    result.least === undefined
      ? ''
      : `; its goal is ${result.least.toFixed(2)}`;
  console.log(
    `${alignment.name}: down to ${reach}, at most ${late} late${goal}`,
  );
}
