import { airSpeedLimit, thermalModel, voltageLimit } from '../../packages/core/src/limit/index.js';
import { pinkNoise } from '../../packages/transient/src/signal/index.js';
import {
  compileLinear,
  compileNonlinear,
  forceFactorCurve,
  inductanceCurve,
  quadraticVentLoss,
  stiffnessCurve,
  stop,
} from '../../packages/transient/src/simulation/index.js';
import { compileTimeline } from '../../packages/transient/src/timeline/index.js';
import { simulateCircuit } from '../../tests/circuit/nonlinear.js';
import { system } from '../box.js';
import { runRow, type Work } from '../measure.js';

const RATE = 48_000;
const SOUND = 0.1;
const tones = [
  { volts: 25, frequency: 30 },
  { volts: 10, frequency: 100 },
];
/** A tenth of a second, three and ten whole periods: calls go on where the one before ended. */
const drive = Float64Array.from({ length: RATE * SOUND }, (_, n) =>
  tones.reduce((sum, { volts, frequency }) => sum + volts * Math.sin((2 * Math.PI * frequency * n) / RATE), 0),
);
const one = ['pressure'];
const four = ['pressure', 'displacement', 'ventAirSpeed', 'current'];
const reach = 0.012;
const curves = {
  forceFactor: { reach, coefficients: [0.05, -0.4, 0, -0.1] },
  stiffness: { reach, coefficients: [0.1, 0.9] },
};
const loss = { outward: 1.5, inward: 1.1 };
const some = {
  sampleRate: '48 kHz',
  forceFactor: forceFactorCurve({ ...curves.forceFactor, reach: '12 mm' }),
  stiffness: stiffnessCurve({ ...curves.stiffness, reach: '12 mm' }),
  losses: { vent: quadraticVentLoss({ area: '60 cm²', ...loss }) },
} as const;
const all = {
  ...some,
  inductance: inductanceCurve({ reach: '12 mm', coefficients: [-0.35, 0.05] }),
  heat: thermalModel({ coilToMagnet: '1.2 K/W', magnetToAir: '0.8 K/W', coilTime: '20 s', magnetTime: '1800 s' }),
  stop: stop({ outward: '14 mm', inward: '13 mm', stiffness: 200 }),
};

const work =
  <State>(
    compiled: () => {
      readonly start: () => State;
      readonly run: (s: State, u: Float64Array, out: Float64Array[]) => unknown;
    },
    outputs: number,
  ): Work =>
  () => {
    const { start, run } = compiled();
    const state = start();
    const out = Array.from({ length: outputs }, () => new Float64Array(drive.length));
    return { call: () => run(state, drive, out), per: SOUND };
  };
const linear = (outputs: string[]) =>
  work(() => compileLinear(system, { sampleRate: '48 kHz', outputs }), outputs.length);
const nonlinear = (outputs: string[], options: Omit<Parameters<typeof compileNonlinear>[1], 'outputs'>) =>
  work(() => compileNonlinear(system, { ...options, outputs }), outputs.length);

/** Five minutes of pink noise in the place of music, in blocks of a second. */
const MINUTES = 5;
const timeline: Work = () => {
  const compiled = compileTimeline(system, {
    sampleRate: '48 kHz',
    limits: [voltageLimit('30 V'), airSpeedLimit('10 m/s')],
    vents: [{ vent: { diameter: '87 mm' } }],
  });
  const music = pinkNoise({ seed: 1 }).compile(RATE);
  const seconds = Array.from({ length: 60 }, (_, n) => {
    const block = new Float64Array(RATE);
    music(n * RATE, block);
    return block.map((sample) => 8 * sample);
  });
  return {
    call: () => {
      const hearing = compiled.start();
      for (let minute = 0; minute < MINUTES; minute++) for (const block of seconds) compiled.take(hearing, block);
      compiled.end(hearing);
      return compiled.account(hearing);
    },
    per: 60 * MINUTES,
  };
};

await runRow({
  timeline,
  'linear-1': linear(one),
  'linear-4': linear(four),
  nonlinear: nonlinear(one, some),
  'nonlinear-4': nonlinear(four, some),
  everything: nonlinear(four, all),
  oversampled: nonlinear(one, { ...some, oversampling: 4 }),
  'oversampled-4': nonlinear(four, { ...some, oversampling: 4 }),
  circuit: () => ({
    call: () =>
      simulateCircuit(
        { network: system.network, ...curves, vent: { area: 0.006, density: system.air.density, ...loss } },
        tones,
        SOUND,
        1 / RATE,
      ),
    per: SOUND,
  }),
});
// The simulator's thread never ends by itself.
process.exit(0);
