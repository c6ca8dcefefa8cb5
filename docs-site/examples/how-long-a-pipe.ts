import { standardAir } from '@airspring/core/air';
import { driver } from '@airspring/core/driver';
import { flanged } from '@airspring/core/duct';
import { lineBox } from '@airspring/core/enclosure';
import {
  type Area,
  type FlowResistivity,
  type Frequency,
  format,
  logarithmicGrid,
  si,
} from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';

/** What may be changed. The driver is invented. */
export const inputs = {
  tone: {
    kind: 'frequency',
    label: 'Lowest tone',
    value: '30 Hz',
    least: '20 Hz',
    greatest: '80 Hz',
    step: 1.01,
  },
  area: {
    kind: 'area',
    label: 'Cross-section of the pipe',
    value: '250 cm²',
    least: '60 cm²',
    greatest: '600 cm²',
    step: 1.03,
  },
  fill: {
    kind: 'flowResistivity',
    label: 'Flow resistivity of the fill',
    value: '600 Pa·s/m²',
    least: '50 Pa·s/m²',
    greatest: '10000 Pa·s/m²',
    step: 1.06,
  },
} as const;

interface Pipe {
  readonly tone: Frequency;
  readonly area: Area;
  readonly fill: FlowResistivity;
}

export const drivers = driver({
  Sd: '214 cm²',
  Mms: '36 g',
  Cms: '0.8 mm/N',
  Rms: '2 kg/s',
  Re: '5.6 Ω',
  Bl: '9 T·m',
});

const { speedOfSound } = standardAir;

/** How much longer the air is than the pipe: it moves with the air outside. */
export const endOf = (area: Area) =>
  si('length', flanged({ radius: Math.sqrt(area / Math.PI) }, 0));

/** A quarter of a wave, less what the air outside adds. */
export const lengthFor = ({ tone, area }: Pipe) =>
  si('length', speedOfSound / (4 * tone) - endOf(area));

export const pipe = ({ tone, area, fill }: Pipe, isFilled: boolean) =>
  lineBox({
    drivers,
    parts: [
      {
        length: lengthFor({ tone, area, fill }),
        area,
        ...(isFilled && { flowResistivity: fill }),
      },
    ],
    opening: { endCorrection: endOf(area) },
  });

export const grid = logarithmicGrid(15, 400, 101);

/** Points of the grid in a sixth of an octave. */
const SIXTH = 4;

/** Levels of bands a third of an octave wide: by ear, a narrow hole is shallow. */
const inThirds = (levels: Float64Array) =>
  levels.map((_, i) => {
    const near = levels.slice(Math.max(0, i - SIXTH), i + SIXTH + 1);
    const power = near.reduce((sum, one) => sum + 10 ** (one / 10), 0);
    return 10 * Math.log10(power / near.length);
  });

export function solve(at: Pipe) {
  const options = { driveVoltageRms: '2.83 V' } as const;
  const [empty, filled] = [false, true].map((isFilled) => {
    const system = pipe(at, isFilled);
    const swept = respond(system, grid, options);
    const heard = inThirds(swept.levelHalfSpace).filter(
      (_, i) => grid[i]! > 1.3 * at.tone && grid[i]! < 8 * at.tone,
    );
    return {
      swept,
      swing: Math.max(...heard) - Math.min(...heard),
      tone: respond(system, [at.tone], options),
    };
  }) as [Solved, Solved];
  return { empty, filled };
}

interface Solved {
  readonly swept: ReturnType<typeof respond>;
  readonly swing: number;
  readonly tone: ReturnType<typeof respond>;
}

export function answers(at: Pipe, { empty, filled } = solve(at)) {
  const travel = ({ tone }: Solved) => tone.displacementPeak[0]! * 1e3;
  const lost = empty.tone.levelHalfSpace[0]! - filled.tone.levelHalfSpace[0]!;
  const length = lengthFor(at);
  return {
    length: format('length', length, 'm', 3),
    end: format('length', endOf(at.area), 'mm', 3),
    air: format('volume', length * at.area, 'L', 3),
    swing: `${empty.swing.toFixed(1)} dB`,
    left: `${filled.swing.toFixed(1)} dB`,
    evens:
      filled.swing < 0.6 * empty.swing
        ? 'evens most of that out'
        : filled.swing < 0.9 * empty.swing
          ? 'evens some of that out'
          : 'hardly changes that',
    lost: `${Math.abs(lost).toFixed(1)} dB ${lost < 0 ? 'louder' : 'softer'}`,
    third: format('frequency', si('frequency', 3 * at.tone), 'Hz'),
    fifth: format('frequency', si('frequency', 5 * at.tone), 'Hz'),
    travel: `${travel(empty).toFixed(2)} mm`,
    moved: `${travel(filled).toFixed(2)} mm`,
    more: travel(filled) > travel(empty) ? 'more' : 'less',
  };
}
