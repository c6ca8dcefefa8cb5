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
import { bracketedRoot, complexColumn } from '@airspring/core/numeric';
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
/** The frequency within 30 % of a guess at which a value crosses zero. */
function crossing(value: (frequency: number) => number, guess: number): number {
  const root = bracketedRoot(value, guess * 0.9, guess * 1.1);
  return root.ok ? root.x : Number.NaN;
}
interface Pipe {
  readonly length: number;
  readonly speed: number;
}
/** A is 0 where the pressure vanishes at one end and the flow at the other. */
const stopped = ({ length, speed, quarters }: Pipe & { quarters: number }) => {
  const chain = lineOf(length, speed);
  return crossing((f) => chainAt(chain, f).A.re[0]!, (quarters * speed) / (4 * length));
};
/** C is 0 where the flow vanishes at both. */
const shut = ({ length, speed, halves }: Pipe & { halves: number }) => {
  const chain = lineOf(length, speed);
  return crossing((f) => chainAt(chain, f).C.im[0]!, (halves * speed) / (2 * length));
};
const nothing: Radiation = Object.assign((_o: unknown, _k: number, out: Float64Array) => void out.fill(0), {
  sources: ['own'],
});
/** The impedance is 0 where the pressure vanishes at both. */
const open = ({ length, speed, halves }: Pipe & { halves: number }) => {
  const end = { opening: { radius: 0.005 }, radiation: nothing };
  const admittance = compileOpenLine({ chain: lineOf(length, speed), inner: end, outer: end }, airOf(speed));
  const [re, im] = [new Float64Array(1), new Float64Array(1)];
  const reactance = (f: number) => {
    admittance(Float64Array.of(f), re, im);
    return -im[0]! / (re[0]! ** 2 + im[0]! ** 2);
  };
  return crossing(reactance, (halves * speed) / (2 * length));
};
for (const name of ['pipe closed', 'pipe organ closed', 'pipe closed 4 m'] as const) read('compileLine', name, stopped);
read('withoutLoss', 'ear canal', stopped);
read('withoutLoss', 'pipe closed 4 m next', stopped);
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
  const wave = (density * speedOfSound) / narrow;
  const [re, im] = (['re', 'im'] as const).map(
    (part) => A[part][0]! + B[part][0]! / wave + C[part][0]! * wave + D[part][0]!,
  );
  return 20 * Math.log10(Math.hypot(re!, im!) / 2);
});

// Pistons and openings that are small: resistance over x² and reactance over x, with x = 2ka and a = 1 m.
const room = new Float64Array(2);
function normalised(radiation: Radiation, k: number) {
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
