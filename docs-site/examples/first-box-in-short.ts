import { completeDriver } from '@airspring/core/driver';
import { ventedBox } from '@airspring/core/enclosure';
import { format, si } from '@airspring/core/quantity';
import { cutoff } from '@airspring/core/response';
import { sizeForNetVolume } from '@airspring/core/space';
import { lengthForTuning } from '@airspring/core/vent';

// Invented.
const cone = { fs: '27 Hz', Vas: '62 L', Sd: '330 cm²' } as const;
const motor = { Qts: 0.36, Qes: 0.4, Re: '5.6 Ω' } as const;
const sheet = completeDriver({ ...cone, ...motor });
if (!sheet.ok) throw new Error(sheet.because[0]?.text);

const air = { netVolume: '45 L', fb: '28 Hz' } as const;
const tube = { diameter: '70 mm', wall: '3 mm' } as const;
const reach = cutoff(ventedBox({ drivers: sheet.driver, ...air, QL: 7 }));
const vent = lengthForTuning({ ...air, vent: tube });
if (!reach.ok || !vent.ok) throw new Error('no such box');
console.log('reaches', format('frequency', reach.frequency, 'Hz'));
console.log('the tube is', format('length', vent.length, 'mm'), 'long');

const { width, height, depth } = sizeForNetVolume({
  netVolume: '45 L',
  outer: { width: '340 mm', height: '480 mm', depth: '400 mm' },
  shape: 'depth',
  thickness: '18 mm',
  contents: {
    driver: { cutoutDiameter: '232 mm', depthInside: '118 mm' },
    vent: {
      outerDiameter: '76 mm',
      lengthInside: si('length', vent.length - 0.018),
    },
    bracing: { volume: '0.5 L' },
  },
});
const edges = [width, height, depth].map((edge) => Math.round(edge * 1e3));
console.log('the box is', edges.join(' × '), 'mm');
