import { completeDriver } from '@airspring/core/driver';
import { closedBox, ventedBox } from '@airspring/core/enclosure';
import { features } from '@airspring/core/response';

// Invented.
const cone = { fs: '27 Hz', Vas: '62 L', Sd: '330 cm²' } as const;
const motor = { Qts: 0.36, Qes: 0.4, Re: '5.6 Ω' } as const;
const sheet = completeDriver({ ...cone, ...motor });
if (!sheet.ok) throw new Error(sheet.because[0]?.text);
const { driver: drivers } = sheet;

const open = ventedBox({ drivers, netVolume: '45 L', fb: '30 Hz', QL: 7 });
const shut = closedBox({ drivers, netVolume: '45 L' });
const [low, high] = features(open).impedanceMaxima.map((m) => m.frequency);
const [only] = features(shut).impedanceMaxima.map((m) => m.frequency);
if (low && high && only)
  console.log('tuned to', Math.sqrt(low ** 2 + high ** 2 - only ** 2));
