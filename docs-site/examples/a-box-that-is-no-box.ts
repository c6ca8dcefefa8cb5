import {
  format,
  type Length,
  si,
  type Volume,
} from '@airspring/core/quantity';
import { longestVent, sizeForNetVolume } from '@airspring/core/space';
import {
  boxModes,
  cuboidAround,
  interiorOf,
  openSize,
  outerVolumeOf,
  panelsOf,
  wedge,
} from '@airspring/workshop/shape';

/** What may be changed. */
export const inputs = {
  top: {
    kind: 'length',
    label: 'Depth at the top, outside',
    value: '150 mm',
    least: '60 mm',
    greatest: '380 mm',
    step: '5 mm',
  },
  air: {
    kind: 'volume',
    label: 'Air in the box',
    value: '30 L',
    least: '15 L',
    greatest: '60 L',
    step: 1.05,
  },
  panel: {
    kind: 'length',
    label: 'Thickness of the panels',
    value: '18 mm',
    least: '9 mm',
    greatest: '30 mm',
    step: '1 mm',
  },
} as const;

interface Wish {
  readonly top: Length;
  readonly air: Volume;
  readonly panel: Length;
}

/** The room under the stair: how deep it is at the floor, and how high. */
export const [depth, height] = [si('length', 0.4), si('length', 0.34)];

/** How long and how high the low end is, under a pipe. */
const [underPipe, low] = [si('length', 0.08), si('length', 0.2)];

// Invented.
const driver = {
  outerDiameter: '200 mm',
  cutoutDiameter: '180 mm',
  depth: '90 mm',
} as const;
const contents = {
  driver: { displacedVolume: '1.2 L' },
  bracing: { volume: '0.4 L' },
} as const;

/** The wedge with a low end that holds the air: two sections on each other. */
function solveStepped({ top, air, panel }: Wish) {
  const section = wedge({ across: depth, up: height, top });
  const back = si('length', depth - ((depth - top) * low) / height);
  const lowEnd = wedge({ across: depth, up: low, top: back });
  const found = openSize({
    box: (length) => ({
      along: 'width',
      outer: [
        { ...lowEnd, length: underPipe },
        { ...section, length },
      ],
      thickness: panel,
    }),
    from: '40 mm',
    to: '10 m',
    netVolume: air,
    contents,
  });
  if (!found.ok) throw new Error(found.because[0]?.text);
  return found.shape;
}

/** The wedge that holds the air, the same with a low end, and the cuboid that would. */
export function solve(wish: Wish) {
  const { top, air, panel } = wish;
  const section = wedge({ across: depth, up: height, top });
  const found = openSize({
    box: (length) => ({
      along: 'width',
      outer: { ...section, length },
      thickness: panel,
    }),
    from: '60 mm',
    to: '10 m',
    netVolume: air,
    contents,
  });
  if (!found.ok) throw new Error(found.because[0]?.text);
  const { shape, size } = found;
  const outer = cuboidAround(shape);
  const cuboid = sizeForNetVolume({
    netVolume: air,
    outer,
    thickness: panel,
    contents,
    shape: 'width',
  });
  const space = {
    outer,
    thickness: panel,
    driver,
    vent: { diameter: '60 mm', bends: 'straight' },
  } as const;
  const interior = interiorOf(shape);
  const inWedge = longestVent({ ...space, interior }).straight;
  const inCuboid = longestVent(space).straight;
  const stepped = solveStepped(wish);
  return { shape, size, stepped, cuboid, inWedge, inCuboid };
}

const degrees = (angle: number) => `${((angle * 180) / Math.PI).toFixed(1)}°`;

export function answers(wish: Wish, found = solve(wish)) {
  const { shape, size, stepped, cuboid, inWedge, inCuboid } = found;
  const whole = cuboidAround(stepped).width;
  const shelf = panelsOf(stepped).find(({ opening }) => opening);
  const ups = shelf?.opening?.map(([, up]) => up) ?? [0];
  const mm = (length: number) => format('length', si('length', length), 'mm');
  const panels = panelsOf(shape);
  const slanted = panels.find(({ name }) => name === 'slanted');
  const [, upper = 0, , lower = 0] = slanted?.angles ?? [];
  const [mode] = boxModes(shape, '5 kHz').modes;
  const tube = (length: number) =>
    length > 0 ? mm(length) : 'none beside the driver';
  return {
    length: mm(size),
    cuboid: mm(cuboid.width),
    stepped: mm(whole),
    longer: mm(whole - size),
    opening: mm(Math.max(...ups) - Math.min(...ups)),
    outer: format('volume', outerVolumeOf(shape), 'L'),
    lean: degrees(Math.atan((depth - wish.top) / height)),
    lower: degrees(lower),
    upper: degrees(upper),
    tilt: degrees(Math.PI / 2 - lower),
    slanted: mm(slanted?.outline[1]?.[0] ?? 0),
    wedgeTube: tube(inWedge),
    cuboidTube: tube(inCuboid),
    mode: mode ? format('frequency', mode.frequency, 'Hz') : 'above 5 kHz',
  };
}
