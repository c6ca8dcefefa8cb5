/** Boxes that the tests of time simulation play. All invented. */
import { driver } from '@airspring/core/driver';
import { closedBox, ventedBox } from '@airspring/core/enclosure';

export const tenInch = driver({
  Sd: '330 cm²',
  Mms: '86 g',
  Cms: '0.4 mm/N',
  Rms: '3.6 N·s/m',
  Re: '5.6 ohm',
  Le: '0.9 mH',
  Bl: '14.3 T·m',
});
const { Le: _, ...without } = tenInch;
export const withoutInductance = driver(without);

export const vented = ventedBox({
  drivers: tenInch,
  netVolume: '60 L',
  fb: '28 Hz',
  ventArea: '60 cm²',
  QL: 7,
  QA: 50,
  QP: 60,
  sourceResistance: '0.1 ohm',
});
export const plainVented = ventedBox({
  drivers: withoutInductance,
  netVolume: '60 L',
  fb: '28 Hz',
  ventArea: '60 cm²',
});
export const closed = closedBox({ drivers: tenInch, netVolume: '40 L', QL: 10 });
