import { completeDriver } from '@airspring/core/driver';
import { ventedBox } from '@airspring/core/enclosure';
import { type VentVerdict, ventMap, ventOnsets } from '@airspring/core/limit';
import {
  type Frequency,
  format,
  type Level,
  logarithmicGrid,
  read,
  si,
  type Volume,
} from '@airspring/core/quantity';
import { noiseOnsets } from '@airspring/core/vent';

/** What may be changed. Bench and driver are invented. */
export const inputs = {
  level: {
    kind: 'level',
    label: 'Level at one metre',
    value: '88 dB',
    least: '76 dB',
    greatest: '100 dB',
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

const boxWith = (netVolume: Volume, fb: Frequency, area: number) =>
  ventedBox({
    drivers,
    sourceResistance: '0.1 Ω',
    netVolume,
    fb,
    QL: 7,
    ventArea: si('area', area),
  });

/** The smallest quiet vents for some volumes and tunings, volume by volume. */
export const mapOf = (
  level: Level,
  netVolumes: readonly Volume[],
  tunings: readonly Frequency[],
) =>
  ventMap({
    // Any area will do: the map finds its own.
    box: (netVolume, fb) => boxWith(netVolume, fb, 1),
    netVolumes,
    tunings,
    level,
    from: '30 Hz',
    to: '120 Hz',
    onsets: noiseOnsets,
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

/** Up to which level the vent of that box is quiet at every tone. */
function quietUpTo({ netVolume, fb, diameter }: typeof found) {
  const box = boxWith(netVolume, fb, (Math.PI / 4) * diameter ** 2);
  const tones = logarithmicGrid(30, 120, 32);
  const { quiet } = ventOnsets(box, { diameter }, tones);
  return Math.min(...quiet.levelHalfSpace);
}

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
    own: `${quietUpTo(found).toFixed(1)} dB`,
    pipe:
      pipeResonance === undefined
        ? 'nowhere'
        : format('frequency', pipeResonance, 'Hz'),
  };
}
