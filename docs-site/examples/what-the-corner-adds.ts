import { driver } from '@airspring/core/driver';
import { closedBox } from '@airspring/core/enclosure';
import {
  butterworthShape,
  highPass,
  linkwitzRileyShape,
  lowPass,
} from '@airspring/core/filter';
import { bracketedRoot } from '@airspring/core/numeric';
import {
  format,
  type Length,
  logarithmicGrid,
  read,
  si,
  type Volume,
} from '@airspring/core/quantity';
import { cutoff, referenceLevel, respond } from '@airspring/core/response';
import {
  bestDelay,
  boundaryPower,
  compileCorner,
  compileRoomGain,
  gainLevel,
  joinMains,
  mainPressure,
  pressureZoneCorner,
  solidAngleGain,
  solidAngles,
  soundPressure,
} from '@airspring/core/room';

/** What may be changed. Box and driver are invented. */
export const inputs = {
  wall: {
    kind: 'length',
    label: 'From the drivers to each of two walls',
    value: '0.5 m',
    least: '0.05 m',
    greatest: '3 m',
    step: '0.05 m',
  },
  volume: {
    kind: 'volume',
    label: 'Air of the closed cabin',
    value: '4 m³',
    least: '2 m³',
    greatest: '80 m³',
    step: 1.03,
  },
  distance: {
    kind: 'length',
    label: 'From the box to the listener',
    value: '1.5 m',
    least: '0.8 m',
    greatest: '6 m',
    step: '0.1 m',
  },
} as const;

interface Wish {
  readonly wall: Length;
  readonly volume: Volume;
  readonly distance: Length;
}

export const grid = logarithmicGrid(20, 320, 97);
export const deep = logarithmicGrid(10, 160, 97);
const floor = { distance: si('length', 0) };

// In the corner the same power goes into a quarter of the space.
const { halfSpace, eighthSpace } = solidAngles;
const narrower =
  solidAngleGain(eighthSpace).pressureOfPower -
  solidAngleGain(halfSpace).pressureOfPower;
const onFloor = boundaryPower([floor], grid);

/** What two walls add to the floor alone, as a mean over all directions. */
export const cornerAdds = (wall: Length) =>
  boundaryPower([floor, { distance: wall }, { distance: wall }], grid).map(
    (power, i) => power - onFloor[i]! + narrower,
  );

/** The same for one listener alone, four metres out of the corner. */
export function atOnePlace(wall: Length) {
  const out = 4 / Math.SQRT2;
  const near = { distance: wall };
  const listener = [1.1, wall + out, wall + out].map((one) =>
    si('length', one),
  ) as [Length, Length, Length];
  const corner = compileCorner({ walls: [floor, near, near], listener });
  const alone = compileCorner({
    walls: [floor],
    listener: [si('length', 1.1), si('length', out), si('length', out)],
  });
  const without = gainLevel(alone, grid);
  return gainLevel(corner, grid).map((level, i) => level - without[i]!);
}

const box = closedBox({
  drivers: driver({
    Sd: '340 cm²',
    Mms: '56 g',
    Cms: '0.58 mm/N',
    Rms: '2.9 kg/s',
    Re: '5.6 Ω',
    Bl: '12 T·m',
  }),
  netVolume: '30 L',
});
const leakCorner = read('frequency', '5 Hz');
const sweep = respond(box, deep, { driveVoltageRms: '2.83 V' });
const alone = cutoff(box, { drop: 6 });
const flat = referenceLevel(box) + 20 * Math.log10(2.83);
export const inTheOpen = sweep.levelHalfSpace;

/** What a cabin and the distance change, dB; above all its walls stand far. */
const cabin = ({ volume, distance }: Pick<Wish, 'volume' | 'distance'>) =>
  compileRoomGain({ volume, distance, leakCorner });
export const inTheCabin = (wish: Pick<Wish, 'volume' | 'distance'>) => {
  const gain = gainLevel(cabin(wish), deep);
  return inTheOpen.map((level, i) => level + gain[i]!);
};

/** Where the level in the cabin last lies 6 dB below the flat part. */
function reachIn(wish: Wish): string {
  const levels = inTheCabin(wish);
  const wanted = flat - 20 * Math.log10(wish.distance) - 6;
  let i = deep.length - 1;
  while (i > 0 && levels[i - 1]! >= wanted) i--;
  if (i === 0) return 'below 10 Hz';
  const spare = (f: number) =>
    respond(box, [f], { driveVoltageRms: '2.83 V' }).levelHalfSpace[0]! +
    gainLevel(cabin(wish), [f])[0]! -
    wanted;
  const root = bracketedRoot(spare, deep[i - 1]!, deep[i]!, 1e-6);
  return hertz(root.ok ? root.x : deep[i]!);
}

/** Main speakers one metre farther away, crossed at 80 Hz. */
function joined({ distance }: Wish) {
  const about = logarithmicGrid(20, 320, 97);
  const shape = linkwitzRileyShape(4);
  const far = si('length', distance + 1);
  const pressure = soundPressure(
    respond(box, about, { driveVoltageRms: '2.83 V' }),
  );
  const level = (metres: number) => si('level', 20 * Math.log10(metres));
  const both = joinMains(
    {
      box: {
        pressure,
        filter: lowPass(shape, '80 Hz'),
        distance,
        level: level(distance),
      },
      main: {
        pressure: mainPressure(
          {
            level: si('level', flat),
            highPass: highPass(butterworthShape(2), '60 Hz'),
          },
          about,
        ),
        filter: highPass(shape, '80 Hz'),
        distance: far,
        level: level(far),
      },
    },
    about,
  );
  const band = { from: '40 Hz', to: '160 Hz' } as const;
  const best = bestDelay(both, band);
  const { polarity, mainDelay, boxDelay, shortfall } = best;
  const asItIs = bestDelay(both, { ...band, most: si('time', 1e-9) });
  const untouched =
    asItIs.polarity === 'normal' ? asItIs : asItIs.otherPolarity;
  return {
    far,
    polarity: polarity === 'normal' ? 'as they are' : 'the other way round',
    delayed: boxDelay > mainDelay ? 'the box' : 'the main speakers',
    delay: format('time', si('time', Math.max(boxDelay, mainDelay)), 'ms'),
    shortfall,
    untouched: untouched.shortfall,
  };
}

const decibels = (level: number) =>
  `${level.toFixed(1).replace('-', '−')} dB`;
const hertz = (f: number) => format('frequency', si('frequency', f), 'Hz');

export function answers(wish: Wish) {
  const adds = cornerAdds(wish.wall);
  const least = adds.reduce((at, gain, i) => (gain < adds[at]! ? i : at), 0);
  const most = adds.reduce((at, gain, i) => (gain > adds[at]! ? i : at), 0);
  const uneven = adds[most]! - adds[least]!;
  const gain = gainLevel(cabin(wish), [20, 40, 80]);
  const path = -20 * Math.log10(wish.distance);
  const { far, shortfall, untouched, ...joining } = joined(wish);
  return {
    deepest: decibels(adds[0]!),
    least: decibels(adds[least]!),
    leastAt: hertz(grid[least]!),
    uneven: decibels(uneven),
    even:
      uneven < 3
        ? 'The corner lifts all tones about alike'
        : 'The corner lifts some tones far more than others',
    open: alone.ok ? hertz(alone.frequency) : 'nowhere',
    reach: reachIn(wish),
    at20: decibels(gain[0]! - path),
    at40: decibels(gain[1]! - path),
    at80: decibels(gain[2]! - path),
    path: decibels(path),
    zone: hertz(
      pressureZoneCorner({ volume: wish.volume, distance: wish.distance }),
    ),
    mains: format('length', far, 'm'),
    shortfall: decibels(shortfall),
    untouched: decibels(untouched),
    ...joining,
  };
}
