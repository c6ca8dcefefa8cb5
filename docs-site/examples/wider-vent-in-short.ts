import { format, si } from '@airspring/core/quantity';
import { lengthForTuning } from '@airspring/core/vent';

const mm = (length: number) => format('length', length, 'mm');
const lengthOf = (diameter: number) => {
  const vent = { diameter: si('length', diameter), wall: '3 mm' } as const;
  const found = lengthForTuning({ vent, netVolume: '45 L', fb: '30 Hz' });
  if (!found.ok) throw new Error(found.because[0]?.text);
  return found.length;
};
const wider = 0.075 * Math.SQRT2; // twice the section
const [narrow, wide] = [lengthOf(0.075), lengthOf(wider)];
console.log('the vent is', mm(narrow), 'long');
console.log('one of', mm(wider), 'is', mm(wide), 'long');
console.log((wide / narrow).toFixed(2), 'times as much');
