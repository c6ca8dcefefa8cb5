/**
 * What a stranger writes who installed the packages: one number from each subpath. `.config/release.mjs` compiles and runs
 * this text as an ES module and as CommonJS, in folders that know nothing of the workspace.
 */
import { dryAirSpeedOfSound, standardAir } from '@airspring/core/air';
import { butterworth, solveAlignment } from '@airspring/core/alignment';
import { completeDriver } from '@airspring/core/driver';
import { flanged } from '@airspring/core/duct';
import { boxCompliance, closedBox, closedFamily } from '@airspring/core/enclosure';
import { isInputError } from '@airspring/core/fault';
import { butterworthShape, filterLevel, highPass } from '@airspring/core/filter';
import { endCorrectionLaws } from '@airspring/core/laws';
import { voltageLimit } from '@airspring/core/limit';
import { compileNetwork } from '@airspring/core/network';
import { besselJ0 } from '@airspring/core/numeric';
import { frequencyGrid, read, si } from '@airspring/core/quantity';
import { cutoffGradient, features } from '@airspring/core/response';
import { levelAtDistance } from '@airspring/core/room';
import { simdSweep } from '@airspring/core/simd';
import { estimatedDriverVolume } from '@airspring/core/space';
import { sensitivity } from '@airspring/core/tolerance';
import { airSpeedPeak } from '@airspring/core/vent';
import { meanBurstLevel } from '@airspring/transient/burst';
import { mixDown } from '@airspring/transient/recording';
import { shapedBurst } from '@airspring/transient/signal';
import { firstOrderHold, holdTransfer } from '@airspring/transient/simulation';
import { compileTimeline } from '@airspring/transient/timeline';
import { filesToBuildFrom } from '@airspring/workshop/dossier';
import { pieceDrawing } from '@airspring/workshop/drawing';
import { volumeOf } from '@airspring/workshop/mesh';
import { nest } from '@airspring/workshop/nesting';
import { areaOf } from '@airspring/workshop/outline';
import { panelBox } from '@airspring/workshop/panel';
import { cylinder } from '@airspring/workshop/shape';
import { ventSolid } from '@airspring/workshop/solid';
import { design } from 'airspring';

const middleOfBurst = new Float64Array(1);
shapedBurst({ frequency: '100 Hz' }).compile(10_000)(325, middleOfBurst);

/** Whether what a function throws is an InputError of '@airspring/core/fault', whichever subpath threw it. */
function refused(call: () => unknown): number {
  try {
    call();
    return 0;
  } catch (error) {
    return Number(isInputError(error));
  }
}

// @ts-expect-error: the published types refuse a wrong unit
const wrongUnit = () => dryAirSpeedOfSound({ temperature: '62 kg' });

// Invented, and chosen so that a box of Vas gives Qtc = 1/√2: then f3 is the resonance, √2 · fs.
const sheet = completeDriver({ fs: '30 Hz', Qts: 0.5, Qes: 0.6, Vas: '50 L', Sd: '330 cm²', Re: '5.6 Ω' });
if (!sheet.ok) throw new Error(sheet.because[0]?.text);
const box = closedBox({ drivers: sheet.driver, netVolume: '50 L' });

const half = sensitivity(
  ({ volume }) => closedBox({ drivers: sheet.driver, netVolume: si('volume', volume) }),
  { volume: 0.025 },
  cutoffGradient,
);
const flat = solveAlignment(butterworth(2), closedFamily, { drivers: sheet.driver });

/** The real part of the last of 32 frequencies, in a vector of the processor where there is one. */
function sweptBySimd(): number | undefined {
  const { ok, sweepRows } = simdSweep();
  const column = () => ({ re: new Float64Array(32), im: new Float64Array(32) });
  const out = column();
  sweepRows(Float64Array.of(1, 1, 3, 1), 2, 2 * Math.PI, new Float64Array(32).fill(1), [out], column());
  return ok ? out.re[31] : undefined;
}

/** How much louder a second of 1 V may be until the amplifier gives the peak of a sine of 1 V. */
function louder(): number | undefined {
  const timeline = compileTimeline(box, { sampleRate: '48 kHz', limits: [voltageLimit('1 V')] });
  const hearing = timeline.start();
  timeline.take(hearing, new Float64Array(48_000).fill(1));
  return timeline.account(hearing).limits[0]?.louder;
}

const panels = panelBox({ outer: { width: '300 mm', height: '400 mm', depth: '350 mm' }, thickness: '18 mm' });
const sheets = nest({
  parts: [{ name: 'side', length: '400 mm', width: '300 mm', count: 2 }],
  sheets: [{ length: '2500 mm', width: '1250 mm' }],
  kerf: '3 mm',
});
const tube = ventSolid({ diameter: '70 mm', wall: '3 mm', length: '200 mm' });

const f3Slope = half.ok ? half.byPercent.volume : undefined;

/** Got, expected by other means, relative tolerance. */
const answers: Readonly<Record<string, readonly [got: number | undefined, expected: number, relative: number]>> = {
  // ISO 9613-1 gives 343.2 m/s at 20 °C, and the root of the absolute temperature
  '@airspring/core/air': [dryAirSpeedOfSound({ temperature: '0 °C' }), 343.2 * Math.sqrt(273.15 / 293.15), 1e-3],
  // Qtc = √2 Qts where the air is as springy as the suspension
  '@airspring/core/alignment': [flat.ok ? flat.system.spec.netVolume : undefined, 0.05, 1e-6],
  // 1/Qts = 1/Qes + 1/Qms
  '@airspring/core/driver': [sheet.parameters.Qms, 3, 1e-9],
  // 0.8217 radii, as printed for an infinite flange
  '@airspring/core/duct': [flanged({ radius: 0.05 }, 0), 0.8217 * 0.05, 1e-3],
  '@airspring/core/enclosure': [boxCompliance(0.05, 1, standardAir), 0.05 / (1.2 * 343.9 ** 2), 0.01],
  '@airspring/core/fault': [refused(wrongUnit), 1, 0],
  '@airspring/core/filter': [
    filterLevel(highPass(butterworthShape(2), '25 Hz'), frequencyGrid([25]))[0],
    -10 * Math.log10(2),
    1e-9,
  ],
  // the published end correction obeys every law
  '@airspring/core/laws': [endCorrectionLaws(flanged).filter(({ holds }) => !holds).length, 0, 0],
  '@airspring/core/limit': [voltageLimit('20 V').greatestRms, 20, 0],
  // without coil inductance a closed box is of second order: three powers of s
  '@airspring/core/network': [compileNetwork(box.network).polynomials?.width, 3, 0],
  // Handbook of Mathematical Functions, table 9.1
  '@airspring/core/numeric': [besselJ0(1), 0.7651976865579666, 1e-14],
  // international foot, exact
  '@airspring/core/quantity': [read('volume', '1 ft³', 'volume'), 0.3048 ** 3, 1e-12],
  '@airspring/core/response': [features(box).f3, 30 * Math.SQRT2, 1e-3],
  // half the pressure at twice the distance
  '@airspring/core/room': [levelAtDistance({ level: '90 dB', distance: '2 m' }), 90 - 20 * Math.log10(2), 1e-12],
  // (3 + s)/(1 + s) at s = j: 2 − j, by the kernel in WebAssembly
  '@airspring/core/simd': [sweptBySimd(), 2, 1e-15],
  // 7π/48 · 0.2² · 0.1: a cone of half the cutout's diameter at its tip
  '@airspring/core/space': [estimatedDriverVolume(0.2, 0.1), (7 * Math.PI * 0.2 ** 2 * 0.1) / 48, 1e-12],
  // half of Vas: fc² = 3 fs², Qtc² = 3 Qts², f3² = fc² (x + √(x² + 1)) with 2 x = 1/Qtc² − 2, differentiated by hand
  '@airspring/core/tolerance': [f3Slope, 30 * Math.sqrt(3 * 0.720759) * -0.122512 * 0.01, 1e-3],
  '@airspring/core/vent': [
    airSpeedPeak({ diameter: si('length', 0.075), flowPeak: '60 L/s' }),
    0.06 / (Math.PI * 0.0375 ** 2),
    1e-9,
  ],
  // the mean of 1 and 3
  '@airspring/transient/recording': [mixDown([Float64Array.of(1), Float64Array.of(3)])[0], 2, 0],
  // 3.25 cycles: the middle of a burst of 6.5, where the tone has a peak of its own
  '@airspring/transient/signal': [middleOfBurst[0], 1, 1e-12],
  // sinc² at half the sample rate: (2/π)²
  '@airspring/transient/simulation': [holdTransfer(firstOrderHold, 24_000, 48_000).re, 4 / Math.PI ** 2, 1e-12],
  '@airspring/transient/burst': [meanBurstLevel([100, 100]), 100, 1e-12],
  '@airspring/transient/timeline': [louder(), Math.SQRT2, 1e-12],
  // half the product of the legs
  '@airspring/workshop/dossier': [filesToBuildFrom.length, 1, 0],
  // a panel as wide as the box, and the scale of its drawing has no number
  '@airspring/workshop/drawing': [panels.ok ? pieceDrawing(panels.pieces[0]!).shapes.length : 0, 1, 0],
  // between two cylinders
  '@airspring/workshop/mesh': [volumeOf(tube.mesh), (Math.PI / 4) * (0.076 ** 2 - 0.07 ** 2) * 0.2, 1e-9],
  '@airspring/workshop/nesting': [sheets.ok ? sheets.sheets.length : 0, 1, 0],
  '@airspring/workshop/panel': [panels.ok ? panels.inner.width : 0, 0.264, 1e-12],
  '@airspring/workshop/solid': [tube.drawing.length, 0.2, 1e-12],
  '@airspring/workshop/outline': [
    areaOf([
      [0, 0],
      [3, 0],
      [0, 4],
    ]),
    6,
    0,
  ],
  // one bent panel
  '@airspring/workshop/shape': [cylinder({ diameter: '300 mm' }).bent?.length, 1, 0],
  airspring: [refused(() => design({ version: 1 })), 1, 0],
};

const wrong = Object.entries(answers).filter(
  ([, [got, expected, relative]]) => got === undefined || !(Math.abs(got - expected) <= relative * Math.abs(expected)),
);
console.log(JSON.stringify({ subpaths: Object.keys(answers), wrong }));
