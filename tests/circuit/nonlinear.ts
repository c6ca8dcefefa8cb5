/** The nonlinear vented box as a circuit with behavioural sources: a second road to every number of a simulation over time. */
import { type Network, netlist } from '@airspring/core/network';
import { simulateOverTime } from './simulator.js';

/** Polynomials over displacement, over the value at rest, as {@link PolynomialInput} has them, reach in m. */
export interface Curve {
  readonly reach: number;
  readonly coefficients: readonly number[];
}

export interface NonlinearCircuit {
  readonly network: Network;
  readonly forceFactor: Curve;
  readonly stiffness: Curve;
  readonly inductance?: Curve;
  readonly vent: { readonly area: number; readonly density: number; readonly outward: number; readonly inward: number };
}

const text = (value: number) => value.toExponential(16);
const polynomial = ({ reach, coefficients }: Curve, of: string): string =>
  ['1', ...coefficients.map((c, i) => `(${text(c / reach ** (i + 1))})*${`${of}*`.repeat(i)}${of}`)].join('+');
const slope = ({ reach, coefficients }: Curve, of: string): string =>
  coefficients.map((c, i) => `(${text(((i + 1) * c) / reach ** (i + 1))})${`*${of}`.repeat(i)}`).join('+');

/** Lines of a netlist: the linear ones as core writes them, those of motor, suspension, coil and vent as sources. */
function linesOf({ network, forceFactor, stiffness, inductance, vent }: NonlinearCircuit): readonly string[] {
  const value = (name: string) => network.values[name] as number;
  // Displacement in mm and flux in mV·s, so that the tolerances of the simulator are small against them.
  const x = '(v(x)/1000)';
  const Bl = `${text(value('Bl'))}*(${polynomial(forceFactor, x)})`;
  const loss = (K: number) => text((vent.density * K) / (2 * vent.area ** 2));
  const [U, L] = ['i(v_vent)', inductance ? `${text(value('Le'))}*(${polynomial(inductance, x)})` : ''];
  const coil = inductance
    ? [
        'C_flux flux 0 1',
        'B_flux 0 flux i=1000*(v(coil)-v(gap))',
        `B_Le coil gap i=v(flux)/1000/(${L})`,
        `B_pull 0 cone i=0.5*${text(value('Le'))}*(${slope(inductance, x)})*(v(flux)/1000/(${L}))*(v(flux)/1000/(${L}))`,
      ]
    : [];
  const replaced = (line: string): readonly string[] => {
    if (line.startsWith('E_Bl ')) return [`B_Bl sensed_Bl 0 v=${Bl}*v(cone)`];
    if (line.startsWith('F_Bl ')) return [`B_force 0 cone i=${Bl}*i(v_sense_bl)`];
    if (line.startsWith('L_Cms '))
      return [`B_Cms cone 0 i=${text(1 / value('Cms'))}*(${polynomial(stiffness, x)})*${x}`];
    if (inductance && line.startsWith('L_Le ')) return coil;
    if (line.startsWith('L_vent ')) {
      const [, box, mouth, mass] = line.split(' ') as [string, string, string, string];
      const sign = `(${U}>0 ? ${loss(vent.outward)} : ${loss(vent.inward)})`;
      return [`L_vent ${box} jet ${mass}`, 'V_vent jet lost 0', `B_vent lost ${mouth} v=${sign}*${U}*abs(${U})`];
    }
    return line.startsWith('.options') ? [] : [line];
  };
  const [, ...own] = netlist(network, 'title').split('\n');
  return [...own.flatMap(replaced), 'C_x x 0 1', 'B_x 0 x i=1000*v(cone)'];
}

/** Drive by a sum of sines from rest; columns `time`, displacement `v(x)` in mm, `v(cone)`, `i(v_vent)`, `i(v_drive)`. */
export function simulateCircuit(
  circuit: NonlinearCircuit,
  tones: readonly { readonly volts: number; readonly frequency: number }[],
  until: number,
  step: number,
) {
  const sines = tones.map(
    ({ volts, frequency }, i) => `V_tone${i} tone${i} tone${i + 1} SIN(0 ${volts} ${text(frequency)})`,
  );
  const lines = linesOf(circuit).map((line) => line.replace(/^V_drive drive 0 .*/, 'V_drive drive tone0 0'));
  return simulateOverTime([
    ...lines.map((line) => line),
    ...sines.map((line) => line.replace(`tone${tones.length} SIN`, '0 SIN')),
    '.options reltol=1e-7 abstol=1e-15 vntol=1e-12 chgtol=1e-20 method=trap',
    `.tran ${text(step)} ${text(until)} 0 ${text(step)} uic`,
  ]);
}
