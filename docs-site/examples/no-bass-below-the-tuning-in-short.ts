import { completeDriver } from '@airspring/core/driver';
import { closedBox, ventedBox } from '@airspring/core/enclosure';
import { respond } from '@airspring/core/response';

// Invented.
const cone = { fs: '27 Hz', Vas: '62 L', Sd: '330 cm²' } as const;
const motor = { Qts: 0.36, Qes: 0.4, Re: '5.6 Ω' } as const;
const sheet = completeDriver({ ...cone, ...motor });
if (!sheet.ok) throw new Error(sheet.because[0]?.text);
const { driver: drivers } = sheet;

const vented = ventedBox({ drivers, netVolume: '50 L', fb: '30 Hz', QL: 7 });
const closed = closedBox({ drivers, netVolume: '50 L' });
const tones = [10, 15, 30, 60];
const [one, other] = [respond(vented, tones), respond(closed, tones)];
console.log('with the vent open', one.levelHalfSpace);
console.log('with the vent shut', other.levelHalfSpace);
