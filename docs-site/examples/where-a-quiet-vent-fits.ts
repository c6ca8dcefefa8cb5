import { completeDriver } from '@airspring/core/driver';
import { ventedBox } from '@airspring/core/enclosure';
import { type VentVerdict, ventMap } from '@airspring/core/limit';
import {
  type Frequency,
  format,
  type Level,
  read,
  type Volume,
} from '@airspring/core/quantity';

/** What may be changed. Bench and driver are invented. */
export const inputs = {
  level: {
    kind: 'level',
    label: 'Level at one metre',
    value: '98 dB',
    least: '84 dB',
    greatest: '106 dB',
    step: '0.5 dB',
  },
} as const;

const sheet = completeDriver({
  fs: '24 Hz',
  Qts: 0.36,
  Qes: 0.4,
  Vas: '70 L',
  Sd: '330 cm²',
  Re: '5.6 Ω',
  Le: '0.9 mH',
  Xmax: '9 mm',
});
if (!sheet.ok) throw new Error(sheet.because[0]?.text);
const { driver: drivers } = sheet;

/** The driver, the panels and the room under the seat. */
const space = {
  outer: { width: '480 mm', height: '340 mm', depth: '420 mm' },
  thickness: '18 mm',
  driver: {
    outerDiameter: '262 mm',
    cutoutDiameter: '232 mm',
    depth: '118 mm',
  },
} as const;

/** The smallest vents for some volumes and tunings, volume by volume. */
export const mapOf = (
  level: Level,
  netVolumes: readonly Volume[],
  tunings: readonly Frequency[],
) =>
  ventMap({
    box: (netVolume, fb) =>
      ventedBox({
        drivers,
        sourceResistance: '0.1 Ω',
        netVolume,
        fb,
        QL: 7,
        // The speed in a vent of one square metre is the flow.
        ventArea: '1 m²',
      }),
    netVolumes,
    tunings,
    level,
    from: '30 Hz',
    to: '120 Hz',
    airSpeedPeak: '12 m/s',
    space,
    displaced: '2.1 L',
    wall: '3 mm',
  });

/** The first box that the brief of the bench leads to. */
export const found = {
  netVolume: read('volume', '35.9 L'),
  fb: read('frequency', '24.1 Hz'),
  diameter: read('length', '74 mm'),
};

/** How a vent fits, as it stands after 'it'. */
const fitting: Readonly<Record<VentVerdict, string>> = {
  straight: 'fits straight',
  bent: 'fits with one bend',
  'too long': 'is too long for this box, even with a bend',
  'too wide': 'is too wide: beside the driver there is no place for it',
  'box too large':
    'takes up so much room that the box is too large for the space',
  'drivers too large': 'has no box: even the drivers alone do not fit',
  'no length': 'has no length that gives this tuning',
};

export const fits = (verdict: VentVerdict) =>
  verdict === 'straight' || verdict === 'bent';

export function answers({ level }: { readonly level: Level }) {
  const { netVolume, fb } = found;
  const [cell] = mapOf(level, [netVolume], [fb]);
  if (!cell) throw new Error('a map of one cell has a cell');
  const { diameter, length, pipeResonance, verdict } = cell;
  return {
    netVolume: format('volume', netVolume, 'L'),
    fb: format('frequency', fb, 'Hz'),
    diameter: format('length', diameter, 'mm'),
    length:
      length === undefined ? 'of no length' : format('length', length, 'mm'),
    verdict: fitting[verdict],
    pipe:
      pipeResonance === undefined
        ? 'nowhere'
        : format('frequency', pipeResonance, 'Hz'),
  };
}
