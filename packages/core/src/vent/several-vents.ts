import { type Air, readAir, standardAir } from '../air/index.js';
import { lumpedWarnings } from '../duct/resonance.js';
import { type Fault, type Impossible, impossible, refuse, type Warning } from '../fault/index.js';
import {
  type AcousticMass,
  type Area,
  decimalText,
  type Field,
  type Frequency,
  type Length,
  readFields,
  si,
  type Volume,
} from '../quantity/index.js';
import { NANOMETRE } from '../quantity/nanometre.js';
import { type AirVolumeInput, airVolumeShape, volumeFaults } from './air-volume.js';
import { lengthFaults, movingLength } from './effective-length.js';
import { fixedWaveNumber } from './tuning.js';
import { geometry, type VentInput, ventField } from './vent-input.js';
import { ventWarnings } from './vent-warnings.js';

export interface SeveralVentsInput extends AirVolumeInput {
  /** 1 to 100 vents, equal or different. Each may stand for several equal ones by its `count`. */
  readonly vents: readonly VentInput[];
}

/** The share of one entry of the list. */
export interface VentShare {
  /** Fraction of the total volume flow, 0 to 1. */
  readonly flow: number;
  /** Ratio of its air speed to the mean air speed, which is total flow over total area. */
  readonly airSpeed: number;
  readonly area: Area;
  readonly effectiveLength: Length;
  readonly acousticMass: AcousticMass;
}

export interface SeveralVents {
  readonly ok: true;
  readonly fb: Frequency;
  readonly netVolume: Volume;
  /** Acoustic mass of all vents together. */
  readonly area: Area;
  readonly acousticMass: AcousticMass;
  /** One share for each entry, in the order of the vents. */
  readonly shares: readonly VentShare[];
  readonly warnings: readonly Warning[];
}

type Vent = NonNullable<ReturnType<typeof ventField.read>>;

const ventList: Field<readonly Vent[]> = {
  optional: false,
  read: (faults, value, path) => {
    if (Array.isArray(value) && value.length >= 1 && value.length <= 100) {
      const read = value.map((vent, i) => ventField.read(faults, vent, `${path}[${i}]`));
      return read.every((vent) => vent !== undefined) ? read : undefined;
    }
    const expected = 'a list of 1 to 100 vents';
    faults.push({ code: 'empty', path, got: value, expected, remedy: 'Give the vents.' });
    return undefined;
  },
};

/**
 * Frequency to which several vents, equal or different, tune one box, and how they share the flow.
 *
 * $$ f_b = \frac{c}{2\pi}\sqrt{\frac1V\sum_i\frac{n_i S_i}{\ell_i(k_b)}},\qquad
 *    \frac{U_i}{U} = \frac{n_i S_i/\ell_i}{\sum_j n_j S_j/\ell_j} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $V$ | `netVolume` | m³ | air volume with the vents in place |
 * | $S_i, n_i$ | `vents` | m², 1 | cross-section of one vent, and number of such vents |
 * | $\ell_i$ | `effectiveLength` | m | length with both end corrections |
 * | $U_i/U$ | `flow` | 1 | share of the volume flow; the air is faster in the shorter vent |
 *
 * @validity as `tuning`; vents in the same air, below the first standing wave of each.
 * @neglects what `tuning` neglects; the interaction of the vents, unless an end includes it (`withNeighbours`); losses, which
 *   shift the phase of a narrow vent relative to a wide one.
 * @returns tuning and shares, or why there are none: `vent-fills-box`
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `inconsistent`, `conflict`, `unknown-field`
 * @source rayleigh1896 secs. 303-307: masses side by side
 * @example severalVents({ vents: [{ diameter: '75 mm', length: '15 cm' }, { diameter: '50 mm', length: '8 cm' }], netVolume: '60 L' })
 */
export function severalVents(input: SeveralVentsInput, air: Air = standardAir): SeveralVents | Impossible {
  readAir(air);
  const fields = readFields('', input, { vents: ventList, ...airVolumeShape });
  const panel = fields.panelThickness ?? 0;
  const faults: Fault[] = volumeFaults(fields);
  const vents = fields.vents.map((vent, i) => {
    const own: Fault[] = [];
    const found = geometry(own, vent);
    own.push(...lengthFaults(found, vent.length));
    if (vent.length < panel - NANOMETRE) {
      const expected = `at least the thickness of the panel, ${panel} m`;
      const remedy = 'Measure the length from the outer surface of the panel.';
      own.push({ code: 'inconsistent', path: 'vent.length', got: vent.length, expected, remedy });
    }
    faults.push(...own.map((fault) => ({ ...fault, path: fault.path.replace('vent', `vents[${i}]`) })));
    return { vent: found, length: vent.length };
  });
  refuse(faults);
  const taken = vents.reduce((sum, { vent, length }) => sum + vent.outerArea * (length - panel), 0);
  const volume = fields.netVolume ?? (fields.volumeBeforeVent ?? 0) - taken;
  if (!(volume > 0)) {
    const text = `The vents take up ${decimalText(1000 * taken, 3)} L, but the box has ${decimalText(1000 * (fields.volumeBeforeVent ?? 0), 3)} L.`;
    return impossible('vent-fills-box', text);
  }
  const conductance = (k: number) =>
    vents.reduce((sum, { vent, length }) => sum + vent.area / movingLength(vent, length, k), 0);
  const k = fixedWaveNumber((last) => Math.sqrt(conductance(last) / volume));
  const whole = conductance(k);
  const area = vents.reduce((sum, { vent }) => sum + vent.area, 0);
  const lengths = vents.map(({ vent, length }) => movingLength(vent, length, k));
  const shares = vents.map(({ vent }, i): VentShare => {
    const length = lengths[i]!;
    const flow = vent.area / length / whole;
    return {
      flow,
      airSpeed: (flow * area) / vent.area,
      area: si('area', vent.area),
      effectiveLength: si('length', length),
      acousticMass: si('acousticMass', (air.density * length) / vent.area),
    };
  });
  const named = vents.flatMap(({ vent }, i) =>
    ventWarnings(vent, k).map((warning) => ({ ...warning, path: warning.path.replace('vent', `vents[${i}]`) })),
  );
  return {
    ok: true,
    fb: si('frequency', (k * air.speedOfSound) / (2 * Math.PI)),
    netVolume: si('volume', volume),
    area: si('area', area),
    acousticMass: si('acousticMass', air.density / whole),
    shares,
    warnings: [...lumpedWarnings(k, Math.max(...lengths), volume), ...named],
  };
}
