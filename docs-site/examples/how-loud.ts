import { driver } from '@airspring/core/driver';
import { ventedBox } from '@airspring/core/enclosure';
import {
  coilTemperatureLimit,
  greatestLevelWithLosses,
  greatestProgrammeLevel,
  type Limit,
  motorTravelLimit,
  pinkProgramme,
  quietLimits,
  suspensionTravelLimit,
  travelLimit,
  voltageLimit,
} from '@airspring/core/limit';
import {
  type Frequency,
  format,
  type Length,
  type Level,
  logarithmicGrid,
  si,
} from '@airspring/core/quantity';
import { lengthForTuning, ventLoss } from '@airspring/core/vent';

/** What may be changed. Driver, box and amplifier are invented. */
export const inputs = {
  tone: {
    kind: 'frequency',
    label: 'Steady tone',
    value: '38 Hz',
    least: '24 Hz',
    greatest: '125 Hz',
    step: 1.01,
  },
  diameter: {
    kind: 'length',
    label: 'Inner diameter of the vent',
    value: '75 mm',
    least: '50 mm',
    greatest: '150 mm',
    step: '1 mm',
  },
  crest: {
    kind: 'level',
    label: 'Peaks of the music above its rms',
    value: '12 dB',
    least: '3 dB',
    greatest: '20 dB',
    step: '0.5 dB',
  },
} as const;

interface Wish {
  readonly tone: Frequency;
  readonly diameter: Length;
  readonly crest: Level;
}

const one = driver({
  Sd: '340 cm²',
  Mms: '56 g',
  Cms: '0.58 mm/N',
  Rms: '2.9 kg/s',
  Re: '5.6 Ω',
  Bl: '12 T·m',
  Xmax: '9 mm',
});
/** Force factor and stiffness over the travel x: 12 − 32000 x² … */
const Bl = { coefficients: [12, 0, -3.2e4], upTo: '14 mm' } as const;
const stiffness = { coefficients: [1724, 0, 6e6], upTo: '14 mm' } as const;
/** How the coil warms up. */
const heat = {
  coilToMagnet: '1.2 K/W',
  magnetToAir: '0.6 K/W',
  coilTime: '8 s',
  magnetTime: '1500 s',
} as const;
const [netVolume, fb, QL] = ['60 L', '32 Hz', 7] as const;
/** The tones of the figure; the box is judged from its tuning upwards. */
export const grid = logarithmicGrid(16, 128, 31);
const lowest = si('frequency', 32);
const highest = si('frequency', 128);

/** What happens, in words, and the limits that say when. */
export const happens = {
  noise: 'the vent may be heard',
  compression: 'the vent takes 1 dB of the level',
  motor: 'the motor has lost 18 % of its force factor',
  suspension: 'the suspension has lost a quarter of its compliance',
  travel: 'the cone has reached its Xmax',
  heat: 'the coil settles at 150 K above the air',
  amplifier: 'the amplifier clips',
} as const;
export type Event = keyof typeof happens;
export const events = Object.keys(happens) as Event[];

/** Those that hang on the driver and the amplifier alone. */
const amplifier = voltageLimit('32 V');
const limitsOf: Partial<Record<Event, readonly Limit[]>> = {
  motor: motorTravelLimit(Bl),
  suspension: suspensionTravelLimit(stiffness),
  travel: travelLimit(one),
  heat: [coilTemperatureLimit(one, { heat, rise: '150 K' })],
  amplifier: [amplifier],
};
/** A drive that stands for no limit at all. */
const far = voltageLimit('900 V');

/** The box with one vent, and how loud it plays until each thing happens. */
export function boxWith(diameter: Length) {
  const vent = { diameter };
  const found = lengthForTuning({ vent, netVolume, fb });
  if (!found.ok) throw new Error(found.because[0]?.text);
  const loss = ventLoss({ vent: { ...vent, length: found.length } }).nominal;
  const ventArea = si('area', (Math.PI / 4) * diameter ** 2);
  const box = ventedBox({ drivers: one, netVolume, fb, QL, ventArea });
  const own = { ...limitsOf, noise: quietLimits(vent, { from: lowest }) };
  const steady = (event: Event, tones: ArrayLike<number>) => {
    // How far cone and air move at a level does not hang on the coil.
    const losses =
      event === 'heat' || event === 'amplifier' ? { loss, heat } : { loss };
    return event === 'compression'
      ? greatestLevelWithLosses(box, [far], tones, {
          ...losses,
          ventCompression: '1 dB',
        }).levelHalfSpace
      : greatestLevelWithLosses(box, own[event] ?? [], tones, losses)
          .levelHalfSpace;
  };
  const music = (event: Event, crest: number) => {
    const crestFactor = si('ratio', 10 ** (crest / 20));
    const programme = pinkProgramme({
      from: lowest,
      to: highest,
      crestFactor,
    });
    return greatestProgrammeLevel(box, own[event] ?? [], {
      programme,
      heat,
    }).levelHalfSpace;
  };
  return { length: found.length, steady, music };
}

/** Music has no one tone at which a vent takes a decibel. */
export const ofMusic = events.filter((event) => event !== 'compression');

/** Until each thing happens, dB: over the tones, at one, and for music. */
export const solve = ({ tone, diameter, crest }: Wish): Solved => {
  const box = boxWith(diameter);
  const of = <T>(list: readonly Event[], each: (event: Event) => T) =>
    Object.fromEntries(list.map((event) => [event, each(event)])) as never;
  return {
    length: box.length,
    curves: of(events, (event) => box.steady(event, grid)),
    levels: of(events, (event) => box.steady(event, [tone])[0]!),
    music: of(ofMusic, (event) => box.music(event, crest)),
    squashed: of(ofMusic, (event) => box.music(event, 3)),
    drums: of(ofMusic, (event) => box.music(event, 20)),
  };
};
export interface Solved {
  readonly length: Length;
  readonly curves: Readonly<Record<Event, Float64Array>>;
  readonly levels: Readonly<Record<Event, number>>;
  readonly music: Readonly<Record<Event, number>>;
  /** With peaks 3 dB and 20 dB above the rms. */
  readonly squashed: Readonly<Record<Event, number>>;
  readonly drums: Readonly<Record<Event, number>>;
}

const decibels = (level: number) => `${level.toFixed(1)} dB`;
const hertz = (f: number) => format('frequency', si('frequency', f), 'Hz');

/** Where a thing happens first as a box is turned up, tone by tone. */
function worstOf(curve: Float64Array) {
  const inBand = [...grid.keys()].filter((i) => grid[i]! >= lowest * 0.999);
  const at = inBand.reduce((least, i) =>
    curve[i]! < curve[least]! ? i : least,
  );
  // A level that no tone of the band leads to stands for none.
  return curve[at]! > 130
    ? 'nowhere in the band'
    : `${decibels(curve[at]!)} at ${hertz(grid[at]!)}`;
}

export function answers(wish: Wish, solved = solve(wish)) {
  const { length, curves, levels, music, squashed, drums } = solved;
  const order = [...events].sort((a, b) => levels[a] - levels[b]);
  const [first, second] = order as [Event, Event];
  const [soonest, next] = [...ofMusic].sort(
    (a, b) => music[a] - music[b],
  ) as [Event, Event];
  const hard = order.filter((event) => !isOfVent(event))[0] as Event;
  const softer = levels[hard] - music[hardOf(music)];
  const ranked = order.flatMap((event, i) => [
    [`event${i + 1}`, happens[event]],
    [`at${i + 1}`, levels[event] > 130 ? 'never' : decibels(levels[event])],
  ]);
  const each = events.flatMap((event) => [
    [`${event}_worst`, worstOf(curves[event])],
    [
      `${event}_music`,
      event === 'compression' ? 'not told' : decibels(music[event]),
    ],
  ]);
  return {
    first: happens[first],
    firstLevel: decibels(levels[first]),
    second: happens[second],
    secondLevel: decibels(levels[second]),
    between: decibels(levels[second] - levels[first]),
    hard: happens[hard],
    hardLevel: decibels(levels[hard]),
    along: alongOf(curves, events),
    hardAlong: alongOf(
      curves,
      events.filter((event) => !isOfVent(event)),
    ),
    squashed: happens[hardOf(squashed)],
    squashedLevel: decibels(squashed[hardOf(squashed)]),
    drums: happens[hardOf(drums)],
    drumsLevel: decibels(drums[hardOf(drums)]),
    length: format('length', length, 'mm'),
    soonest: happens[soonest],
    soonestLevel: decibels(music[soonest]),
    next: happens[next],
    nextLevel: decibels(music[next]),
    musicHard: happens[hardOf(music)],
    musicHardLevel: decibels(music[hardOf(music)]),
    compared:
      Math.abs(softer) < 0.5
        ? 'about as loud as the tone'
        : `${decibels(Math.abs(softer))} ${softer > 0 ? 'softer' : 'louder'} than the tone`,
    ...(Object.fromEntries([...ranked, ...each]) as Record<
      | `event${1 | 2 | 3 | 4 | 5 | 6 | 7}`
      | `at${1 | 2 | 3 | 4 | 5 | 6 | 7}`
      | `${Event}_${'worst' | 'music'}`,
      string
    >),
  };
}

/** What a vent does is heard; the rest is what the box cannot do. */
const isOfVent = (event: Event) =>
  event === 'noise' || event === 'compression';
const hardOf = (music: Solved['music']): Event =>
  ofMusic
    .filter((event) => !isOfVent(event))
    .sort((a, b) => music[a] - music[b])[0] as Event;

/** Which of some things comes first, from the lowest tone of the band up. */
function alongOf(curves: Solved['curves'], some: readonly Event[]): string {
  const inBand = [...grid.keys()].filter((i) => grid[i]! >= lowest * 0.999);
  const first = inBand.map((i) =>
    some.reduce((best, one) =>
      curves[one][i]! < curves[best][i]! ? one : best,
    ),
  );
  const starts = first.flatMap((event, k) =>
    k === 0 || event !== first[k - 1] ? [k] : [],
  );
  return starts
    .map(
      (k) => `from ${Math.round(grid[inBand[k]!]!)} Hz ${happens[first[k]!]}`,
    )
    .join('; ');
}
