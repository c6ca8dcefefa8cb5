import { standardAir } from '@airspring/core/air';
import { driver } from '@airspring/core/driver';
import { lineVentedBox, ventedBox } from '@airspring/core/enclosure';
import {
  type Frequency,
  format,
  type Length,
  logarithmicGrid,
  si,
  type Volume,
} from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import { solidAngles } from '@airspring/core/room';
import { compileVentWithWaves, lengthForTuning } from '@airspring/core/vent';

/** What may be changed. The driver is invented. */
export const inputs = {
  diameter: {
    kind: 'length',
    label: 'Inner diameter of the vent',
    value: '80 mm',
    least: '50 mm',
    greatest: '100 mm',
    step: '1 mm',
  },
  netVolume: {
    kind: 'volume',
    label: 'Air in the box',
    value: '30 L',
    least: '20 L',
    greatest: '40 L',
    step: 1.02,
  },
  fb: {
    kind: 'frequency',
    label: 'Tuning',
    value: '32 Hz',
    least: '28 Hz',
    greatest: '40 Hz',
    step: 1.01,
  },
} as const;

interface Box {
  readonly diameter: Length;
  readonly netVolume: Volume;
  readonly fb: Frequency;
}

export const drivers = driver({
  Sd: '214 cm²',
  Mms: '36 g',
  Cms: '0.7 mm/N',
  Rms: '2 kg/s',
  Re: '5.4 Ω',
  Bl: '10.5 T·m',
});

/** The vent at which the box resonates at the tuning: waves counted. */
export function ventOf({ diameter, netVolume, fb }: Box) {
  const { length, tube } = compileVentWithWaves({ diameter });
  return tube(length(netVolume, fb));
}

/** The box with waves in its vent. */
export const piped = (at: Box, wallLoss: 0 | 1 = 1) =>
  lineVentedBox({
    drivers,
    netVolume: at.netVolume,
    vent: { ...ventOf(at), wallLoss, solidAngle: solidAngles.halfSpace },
    QL: 7,
  });

/** The same tuning, with a vent whose air moves as one mass. */
export const massed = ({ diameter, netVolume, fb }: Box) =>
  ventedBox({
    drivers,
    netVolume,
    fb,
    QL: 7,
    ventArea: si('area', (Math.PI * diameter ** 2) / 4),
  });

export const grid = logarithmicGrid(20, 1500, 301);

/** Around the tone at which half a wave fits into the vent. */
function nearPipe(at: Box): readonly number[] {
  const { length, innerCorrection, outerCorrection } = ventOf(at);
  const acting = length + innerCorrection + outerCorrection;
  const half = standardAir.speedOfSound / (2 * acting);
  return Array.from({ length: 61 }, (_, i) => (0.88 + 0.004 * i) * half);
}

/** A vent of its diameter, one of four fifths of it, and one of five fourths. */
const widths = { narrower: 0.8, asked: 1, wider: 1.25 } as const;

export function solveVent(at: Box, share = 1) {
  const box = { ...at, diameter: si('length', share * at.diameter) };
  const [pipe, mass] = [piped(box), massed(box)];
  const near = nearPipe(box);
  const above = respond(mass, near).levelHalfSpace;
  const out = respond(pipe, near).levelHalfSpace.map(
    (level, i) => level - above[i]!,
  );
  const most = Math.max(...out);
  const tuned = (system: Parameters<typeof respond>[0]) =>
    respond(system, [at.fb], { driveVoltageRms: '10 V' });
  const atTuning = tuned(pipe);
  return {
    length: ventOf(box).length,
    ring: near[out.indexOf(most)]!,
    out: most,
    friction:
      tuned(piped(box, 0)).levelHalfSpace[0]! - atTuning.levelHalfSpace[0]!,
    airSpeed: atTuning.airSpeedPeak![0]!,
    box,
    pipe,
    mass,
  };
}

/** The three vents, each alone: they need nothing of each other. */
export const parts = Object.values(widths).map(
  (share) => (at: Box) => solveVent(at, share),
);

export function solve(at: Box, vents = parts.map((part) => part(at))) {
  const [narrower, asked, wider] = vents as [Vent, Vent, Vent];
  const options = { driveVoltageRms: '2.83 V' } as const;
  return {
    narrower,
    asked,
    wider,
    pipe: respond(asked.pipe, grid, options).levelHalfSpace,
    mass: respond(asked.mass, grid, options).levelHalfSpace,
  };
}
type Vent = ReturnType<typeof solveVent>;

export function answers(at: Box, found = solve(at)) {
  const told = ({ box, length, ring, out, friction, airSpeed }: Vent) => ({
    diameter: format('length', box.diameter, 'mm', 3),
    length: format('length', length, 'mm', 3),
    ring: format('frequency', si('frequency', ring), 'Hz', 3),
    out: `${out.toFixed(1)} dB`,
    friction: `${friction.toFixed(2)} dB`,
    speed: `${airSpeed.toFixed(1)} m/s`,
  });
  const named = (name: 'narrower' | 'wider') =>
    Object.fromEntries(
      Object.entries(told(found[name])).map(([what, text]) => [
        `${name}_${what}`,
        text,
      ]),
    );
  const { length: asMass } = lengthForTuning({
    vent: { diameter: at.diameter },
    netVolume: at.netVolume,
    fb: at.fb,
  }) as { readonly length: Length };
  const { asked } = found;
  return {
    ...told(asked),
    ...named('narrower'),
    ...named('wider'),
    asMass: format('length', asMass, 'mm', 3),
    shorter: format('length', si('length', asMass - asked.length), 'mm', 2),
    second: format('frequency', si('frequency', 2 * asked.ring), 'Hz', 2),
  };
}
