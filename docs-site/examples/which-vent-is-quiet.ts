import { standardAir } from '@airspring/core/air';
import { driver } from '@airspring/core/driver';
import { type FlowLoss, flared } from '@airspring/core/duct';
import { ventedBox } from '@airspring/core/enclosure';
import {
  format,
  frequencyGrid,
  type Length,
  type Level,
  logarithmicGrid,
  read,
  si,
} from '@airspring/core/quantity';
import {
  type Columns,
  compileAtLevel,
  respond,
} from '@airspring/core/response';
import {
  lengthForTuning,
  noiseOnsets,
  onsetSpeed,
  openingOf,
  type VentSection,
  ventLoss,
  ventNoise,
} from '@airspring/core/vent';

/** What may be changed. Driver and box are invented. */
export const inputs = {
  diameter: {
    kind: 'length',
    label: 'Inner diameter of the vent',
    value: '50 mm',
    least: '35 mm',
    greatest: '120 mm',
    step: '1 mm',
  },
  level: {
    kind: 'level',
    label: 'Level at one metre',
    value: '96 dB',
    least: '70 dB',
    greatest: '106 dB',
    step: '0.5 dB',
  },
} as const;

interface Wish {
  readonly diameter: Length;
  readonly level: Level;
}

export const drivers = driver({
  Sd: '340 cm²',
  Mms: '56 g',
  Cms: '0.58 mm/N',
  Rms: '2.9 kg/s',
  Re: '5.6 Ω',
  Bl: '12 T·m',
});

const netVolume = read('volume', '60 L');
const fb = read('frequency', '35 Hz');
/** The tones that are judged, and those of the figure. */
const band = logarithmicGrid(35, 120, 25);
export const grid = logarithmicGrid(20, 120, 34);

// In a vent of one square metre the speed of the air is its flow. All vents
// below tune the box alike, so the flow is the same in each of them.
const ventArea = si('area', 1);
const box = ventedBox({ drivers, netVolume, fb, QL: 7, ventArea });
const inBand = respond(box, band);
const inFigure = respond(box, grid);
const atTuning = compileAtLevel(box, frequencyGrid([fb]));
const perVolt = respond(box, [fb]);
const levelPerVolt = perVolt.levelHalfSpace[0]!;
const airFlowPerVolt = perVolt.airSpeedPeak![0]!;

const circle = (diameter: number) => (Math.PI / 4) * diameter ** 2;

/** The vent as it is, and four others; the last has twice the section. */
export function ventsOf(diameter: Length) {
  // The sides of a slot that is five times as wide as high.
  const height = si('length', Math.sqrt(circle(diameter) / 5));
  const end = flared({ radius: si('length', diameter / 5) });
  return {
    now: { diameter },
    rounded: { diameter, innerEnd: end, outerEnd: end },
    four: { diameter: si('length', diameter / 2), count: 4 },
    slot: { width: si('length', 5 * height), height },
    wider: { diameter: si('length', diameter * Math.SQRT2) },
  } as const satisfies Record<string, VentSection>;
}

const lengthOf = (vent: VentSection) => {
  const found = lengthForTuning({ vent, netVolume, fb });
  if (!found.ok) throw new Error(found.because[0]?.text);
  return found.length;
};

/** Levels at which each tone reaches its lowest and its highest onset. */
function onsetsIn({ levelHalfSpace, airSpeedPeak, frequencies }: Columns) {
  const flow = airSpeedPeak!;
  return (vent: VentSection, area: number) => {
    const opening = openingOf(vent);
    const conditions = noiseOnsets.map(({ at }) => at(opening, standardAir));
    const quiet = new Float64Array(flow.length);
    const noisy = new Float64Array(flow.length);
    frequencies.forEach((f, i) => {
      const speeds = conditions.map((at) => onsetSpeed(at, f, standardAir));
      const levelAt = (speed: number) =>
        levelHalfSpace[i]! + 20 * Math.log10((speed * area) / flow[i]!);
      quiet[i] = levelAt(Math.min(...speeds));
      noisy[i] = levelAt(Math.max(...speeds));
    });
    return { quiet, noisy };
  };
}
const onsetsInBand = onsetsIn(inBand);
export const onsetsInFigure = onsetsIn(inFigure);

/** How far a level at the tuning falls behind: by low, nominal and high. */
function lossesOf(vent: VentSection, area: number, length: Length) {
  const losses = ventLoss({ vent: { ...vent, length } });
  return (level: number) => {
    // The drive that would give the level if the vent lost nothing.
    const drive = 10 ** ((level - levelPerVolt) / 20);
    const behind = ({ resistance, ...loss }: FlowLoss) =>
      atTuning.at(
        {
          ...loss,
          // The same pressure for each flow, in one square metre.
          resistance: (flow, f, air) =>
            resistance(flow / area, f, air) / area,
        },
        drive,
      ).compression[0]!;
    const { low, nominal, high } = losses;
    const each = [behind(low), behind(nominal), behind(high)] as const;
    // Where the vent is all but shut, more loss changes nothing.
    return {
      low: Math.min(...each),
      nominal: each[1],
      high: Math.max(...each),
    };
  };
}

/** The onsets by the names that the page gives them. */
const named = {
  jets: 'jets form',
  radius: 'the air moves by a radius',
  advised: '10 m/s',
  rms: '10 m/s rms',
  share: '5 % of the speed of sound',
  walls: 'turbulent walls',
} as const;

type Onset = keyof typeof named;

/** At the tuning: the speed of the air, and of each onset. */
function speedsOf({ diameter, level }: Wish) {
  const area = circle(diameter);
  const flow = airFlowPerVolt * 10 ** ((level - levelPerVolt) / 20);
  const speed = si('airSpeedPeak', flow / area);
  const { onsets } = ventNoise({
    vent: { diameter },
    frequency: fb,
    airSpeedPeak: speed,
  });
  const told = Object.entries(named).flatMap(([key, name]) => {
    const found = onsets.find(({ onset }) => onset.name === name);
    if (!found) throw new Error(`There is no onset ${name}`);
    return [
      [key, format('airSpeedPeak', found.airSpeedPeak, 'm/s')],
      [`${key}_passed`, found.passed ? 'passed' : 'not reached'],
    ];
  });
  return {
    speed: format('airSpeedPeak', speed, 'm/s'),
    ...(Object.fromEntries(told) as Record<
      Onset | `${Onset}_passed`,
      string
    >),
  };
}

const least = (column: Float64Array) => Math.min(...column);

/** What is known of a vent: its length, its onsets and its losses. */
export function judged(vent: VentSection, area: number) {
  const { quiet, noisy } = onsetsInBand(vent, area);
  const length = lengthOf(vent);
  return {
    length,
    quiet: least(quiet),
    noisy: least(noisy),
    losses: lossesOf(vent, area, length),
  };
}
type Judged = ReturnType<typeof judged>;

/** The smallest round vent that is quiet at a level, to the millimetre. */
export function quietDiameter(level: number): Length {
  const quietUpTo = (diameter: number) =>
    least(
      onsetsInBand({ diameter: si('length', diameter) }, circle(diameter))
        .quiet,
    );
  let [low, high] = [10, 500];
  while (high - low > 1) {
    const middle = Math.round((low + high) / 2);
    if (quietUpTo(middle / 1e3) < level) low = middle;
    else high = middle;
  }
  return si('length', high / 1e3);
}

/** All that does not hang on the level. */
export function solve({ diameter }: Pick<Wish, 'diameter'>) {
  const vents = ventsOf(diameter);
  const area = circle(diameter);
  return {
    now: judged(vents.now, area),
    rounded: judged(vents.rounded, area),
    four: judged(vents.four, area),
    slot: judged(vents.slot, area),
    wider: judged(vents.wider, 2 * area),
  };
}

/** What a level is for a vent, as a sentence goes on after 'it'. */
const verdictOf = (level: number, { quiet, noisy }: Judged) =>
  level <= quiet ? 'is quiet' : level <= noisy ? 'may be heard' : 'is noisy';

const mm = (length: number) => format('length', si('length', length), 'mm');
const decibels = (level: number) => `${level.toFixed(1)} dB`;

/** What is told of each vent. */
type Cell = 'length' | 'quiet' | 'noisy' | 'lost' | 'between' | 'verdict';

export function answers(
  { diameter, level }: Wish,
  solved = solve({ diameter }),
) {
  const silent = quietDiameter(level);
  const all = {
    ...solved,
    silent: judged({ diameter: silent }, circle(silent)),
  };
  const cells = Object.entries(all).flatMap(([name, vent]) => {
    const { low, nominal, high } = vent.losses(level);
    return [
      [`${name}_length`, mm(vent.length)],
      [`${name}_quiet`, decibels(vent.quiet)],
      [`${name}_noisy`, decibels(vent.noisy)],
      [`${name}_lost`, decibels(nominal)],
      [`${name}_between`, `${low.toFixed(1)} to ${high.toFixed(1)}`],
      [`${name}_verdict`, verdictOf(level, vent)],
    ];
  });
  const { now, wider, four } = solved;
  return {
    silent: mm(silent),
    wider: mm(diameter * Math.SQRT2),
    small: mm(diameter / 2),
    gains: decibels(wider.quiet - now.quiet),
    loses: decibels(now.quiet - four.quiet),
    ...speedsOf({ diameter, level }),
    ...(Object.fromEntries(cells) as Record<
      `${keyof typeof all}_${Cell}`,
      string
    >),
  };
}
