/** Values of ducts and openings that were read in print: limits of formulas, pipes of textbooks, measured ends. */
import { air, standardAir } from '@airspring/core/air';
import {
  type Chain,
  compileLine,
  compileOpenLine,
  compileRadiation,
  compileSteppedLine,
  conicalProfile,
  finiteFlange,
  flangedRadiation,
  type LineSection,
  lineConstants,
  pistonInFlange,
  pistonRadiation,
  type Radiation,
  radiationLoad,
  roundSection,
  slitSection,
  smallOpening,
  unflanged,
  unflangedRadiation,
  withoutLoss,
} from '@airspring/core/duct';
import { complexColumn } from '@airspring/core/numeric';
import { si } from '@airspring/core/quantity';
import { check } from '../../ledger/check.js';
import { printedChecks } from '../printed.js';
import print from './printed.json' with { type: 'json' };

const read = printedChecks('duct', print);

// Wide tubes: what friction and heat at the walls do to a wave, in centimetres.
interface Tube {
  readonly temperature: number;
  readonly pressure: number;
  readonly radius: number;
  readonly frequency: number;
}
function wide({ temperature, pressure, radius, frequency }: Tube) {
  const medium = air({
    temperature: si('temperature', temperature + 273.15),
    pressure: si('pressure', pressure),
    humidity: si('humidity', 0),
  });
  const section = roundSection({ diameter: si('length', 2 * radius) });
  const { attenuation, phaseVelocity } = lineConstants({ section, frequency: si('frequency', frequency) }, medium);
  const centimetres = 100 * radius;
  return {
    attenuation: ((attenuation / 100) * centimetres) / Math.sqrt(frequency),
    byOmega: (attenuation * radius) / Math.sqrt(2 * Math.PI * frequency),
    slowing: (1 - phaseVelocity / medium.speedOfSound) * centimetres * Math.sqrt(frequency),
  };
}
read('lineConstants', 'wide attenuation', (of) => wide(of).attenuation);
read('lineConstants', 'wide slowing', (of) => wide(of).slowing);
read('lineConstants', 'kirchhoff constant', (of) => wide(of).slowing * 2 * Math.sqrt(Math.PI));
read('roundSection', 'round attenuation', (of) => wide(of).byOmega);

// Narrow tubes and slits: the series impedance of a length, ΓZ, over μ and over ωρ.
function series(section: LineSection, frequency: number) {
  const { attenuation, phaseConstant, impedance } = lineConstants({ section, frequency: si('frequency', frequency) });
  return {
    resistance: ((attenuation * impedance.re - phaseConstant * impedance.im) * section.area) / standardAir.viscosity,
    mass:
      ((attenuation * impedance.im + phaseConstant * impedance.re) * section.area) /
      (2 * Math.PI * frequency * standardAir.density),
  };
}
const low = 20;
/** ωρ/μ at that frequency, 1/m². */
const layer = (2 * Math.PI * low * standardAir.density) / standardAir.viscosity;
read('roundSection', 'narrow tube', ({ ratio }) => {
  const radius = ratio / Math.sqrt(layer);
  return series(roundSection({ diameter: si('length', 2 * radius) }), low).resistance * radius ** 2;
});
function slit(ratio: number) {
  const height = Math.sqrt(ratio / layer);
  const { resistance, mass } = series(slitSection({ width: '1 m', height: si('length', height) }), low);
  return { resistance: resistance * height ** 2, mass };
}
read('slitSection', 'slit resistance', ({ ratio }) => slit(ratio).resistance);
read('slitSection', 'slit mass', ({ ratio }) => slit(ratio).mass);
read('slitSection', 'slit next', ({ ratio }) => ratio ** 2 / (slit(ratio).resistance - 12));

// Pipes of textbooks have no walls that rub, and no end corrections.
const smooth = withoutLoss(roundSection({ diameter: '10 mm' }));
const airOf = (speed: number) => ({ ...standardAir, speedOfSound: si('speed', speed) });
const lineOf = (length: number, speed: number) =>
  compileLine({ section: smooth, length: si('length', length) }, airOf(speed));
function chainAt(chain: Chain, frequency: number) {
  const out = { A: complexColumn(1), B: complexColumn(1), C: complexColumn(1), D: complexColumn(1) };
  chain(Float64Array.of(frequency), out);
  return out;
}
interface Pipe {
  readonly length: number;
  readonly speed: number;
}
/** An eighth of a wave in the pipe. Without loss the phase over it, kL, grows with frequency. */
const eighth = ({ length, speed }: Pipe) => speed / (8 * length);
const wave = (speed: number) => (standardAir.density * speed) / smooth.area;
/** kL by A = cos kL, which vanishes where a pipe that is closed at one end sounds: at so many quarter waves. */
const stopped = ({ quarters, ...pipe }: Pipe & { quarters: number }) => {
  const { A } = chainAt(lineOf(pipe.length, pipe.speed), eighth(pipe));
  return (eighth(pipe) * quarters * Math.PI) / 2 / Math.acos(A.re[0]!);
};
/** kL by C = j sin kL/Z, which vanishes where a pipe that is closed at both ends sounds: at so many half waves. */
const shut = ({ halves, ...pipe }: Pipe & { halves: number }) => {
  const { C } = chainAt(lineOf(pipe.length, pipe.speed), eighth(pipe));
  return (eighth(pipe) * halves * Math.PI) / Math.asin(C.im[0]! * wave(pipe.speed));
};
const nothing: Radiation = Object.assign((_o: unknown, _k: number, out: Float64Array) => void out.fill(0), {
  sources: ['own'],
});
/** kL by the impedance j Z tan kL, which vanishes where a pipe that is open at both ends sounds. */
const open = ({ halves, ...pipe }: Pipe & { halves: number }) => {
  const end = { opening: { radius: 0.005 }, radiation: nothing };
  const chain = lineOf(pipe.length, pipe.speed);
  const [re, im] = [new Float64Array(1), new Float64Array(1)];
  compileOpenLine({ chain, inner: end, outer: end }, airOf(pipe.speed))(Float64Array.of(eighth(pipe)), re, im);
  return (eighth(pipe) * halves * Math.PI) / Math.atan(-1 / im[0]! / wave(pipe.speed));
};
for (const name of ['pipe closed', 'pipe organ closed', 'pipe closed 4 m'] as const) read('compileLine', name, stopped);
/** kL by the flow through a section made here, whose area is that of the tube. */
const ofSection = ({ quarters, ...pipe }: Pipe & { quarters: number }) => {
  const section = withoutLoss(roundSection({ diameter: '10 mm' }));
  const { C } = chainAt(compileLine({ section, length: si('length', pipe.length) }, airOf(pipe.speed)), eighth(pipe));
  return (
    (eighth(pipe) * quarters * Math.PI) /
    2 /
    Math.asin((C.im[0]! * standardAir.density * pipe.speed) / 7.853981633974483e-5)
  );
};
read('withoutLoss', 'ear canal', ofSection);
read('withoutLoss', 'pipe closed 4 m next', ofSection);
read('compileLine', 'tube shut', shut);
read('compileLine', 'room modes', ({ length, speed, halves }) =>
  shut({ length: 0.3048 * length, speed: 0.3048 * speed, halves }),
);
for (const name of ['pipe open', 'pipe organ open', 'pipe overtones'] as const) read('compileOpenLine', name, open);

read('compileSteppedLine', 'chamber', ({ chamber, pipe, length }) => {
  const [wide, narrow] = [si('length', chamber), Math.PI * (pipe / 2) ** 2];
  const profile = conicalProfile({ innerDiameter: wide, outerDiameter: wide, length: si('length', length) });
  const { density, speedOfSound } = standardAir;
  const chain = compileSteppedLine(profile, 10, standardAir, withoutLoss);
  const { A, B, C, D } = chainAt(chain, speedOfSound / (4 * length));
  const around = (density * speedOfSound) / narrow;
  const [re, im] = (['re', 'im'] as const).map(
    (part) => A[part][0]! + B[part][0]! / around + C[part][0]! * around + D[part][0]!,
  );
  return 20 * Math.log10(Math.hypot(re!, im!) / 2);
});

// Pistons and openings that are small: resistance over x² and reactance over x, with x = 2ka and a = 1 m.
function normalised(radiation: Radiation, k: number) {
  const room = new Float64Array(2);
  radiation({ radius: 1 }, k, room);
  return { re: room[0]!, im: room[1]! };
}
const { density, speedOfSound } = standardAir;
function compiled(x: number) {
  const out = complexColumn(1);
  const frequency = ((x / 2) * speedOfSound) / (2 * Math.PI);
  compileRadiation({ diameter: '2 m', radiation: pistonRadiation })(Float64Array.of(frequency), out);
  const unit = Math.PI / (density * speedOfSound);
  return { re: out.re[0]! * unit, im: out.im[0]! * unit };
}
function load(x: number) {
  const omega = (x / 2) * speedOfSound;
  const { mass, resistance } = radiationLoad({ diameter: '2 m', frequency: si('frequency', omega / (2 * Math.PI)) });
  const unit = Math.PI / (density * speedOfSound);
  return { re: resistance * unit, im: omega * mass * unit };
}
const ofPiston = {
  pistonRadiation: (x: number) => normalised(pistonRadiation, x / 2),
  smallOpening: (x: number) => normalised(smallOpening(pistonInFlange, 2 * Math.PI), x / 2),
  compileRadiation: compiled,
  radiationLoad: load,
};
for (const [formula, impedance] of Object.entries(ofPiston)) {
  read(formula, 'piston resistance', ({ x }) => x ** 2 / impedance(x).re, formula);
  read(formula, 'piston reactance', ({ x }) => (3 * Math.PI * impedance(x).im) / x, formula);
}
read('pistonInFlange', 'piston reactance', ({ x }) => (3 * Math.PI * pistonInFlange({ radius: 1 }, x / 2)) / 2);

// Ends of tubes, at low frequency.
const diameters = ({ ka }: { ka: number }) => unflanged({ radius: 1 }, ka) / 2;
read('unflanged', 'quoted ends', diameters);
read('unflanged', 'measured end', diameters);
read('unflanged', 'textbook end', ({ ka }) => unflanged({ radius: 1 }, ka));
read('unflanged', 'cone end', ({ ka }) => 2 * unflanged({ radius: 1 }, ka));
read('finiteFlange', 'flange ends', ({ ratio }) => finiteFlange({ radius: 1, flangeRadius: ratio }, 0));
read('unflangedRadiation', 'unflanged reactance', ({ ka }) => normalised(unflangedRadiation, ka).im / ka);
read('flangedRadiation', 'flanged reactance', ({ ka }) => normalised(flangedRadiation, ka).im / ka);

// The definition and both functions in it are printed; the arithmetic between them is ours.
const ofTables = {
  formula: 'duct/pistonRadiation',
  status: 'derived',
  kind: 'table',
  given: { ka: { value: [0.5, 1, 2, 4.5, 6], unit: '1' } },
  unit: '1',
  tolerance: { absolute: 1e-14, why: 'the tables have sixteen digits and more' },
} as const;
check('duct.piston.tables.re', {
  ...ofTables,
  source: { key: 'as1964', locator: 'table 9.1: 1 − 2 J₁(2ka)/(2ka)' },
  got: ({ ka }) => normalised(pistonRadiation, ka).re,
  expected: [0.119898828510133, 0.4232751922431266, 1.0330216640117746, 0.9454862696503722, 1.0372411840817712],
});
check('duct.piston.tables.im', {
  ...ofTables,
  source: { key: 'macleod1996', locator: 'test table of STRVH1: 2 H₁(2ka)/(2ka)' },
  got: ({ ka }) => normalised(pistonRadiation, ka).im,
  expected: [0.3969146724038888, 0.6467637282835621, 0.5348633306544597, 0.16634276387801714, 0.09730955410707398],
});
