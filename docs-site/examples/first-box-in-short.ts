import { completeDriver } from '@airspring/core/driver';
import { ventedBox } from '@airspring/core/enclosure';
import { cutoff } from '@airspring/core/response';
import { lengthForTuning } from '@airspring/core/vent';

// Invented.
const cone = { fs: '27 Hz', Vas: '62 L', Sd: '330 cm²' } as const;
const motor = { Qts: 0.36, Qes: 0.4, Re: '5.6 Ω' } as const;
const sheet = completeDriver({ ...cone, ...motor });
if (!sheet.ok) throw new Error(sheet.because[0]?.text);

const box = { netVolume: '45 L', fb: '28 Hz' } as const;
const reach = cutoff(ventedBox({ drivers: sheet.driver, ...box, QL: 7 }));
const vent = lengthForTuning({ ...box, vent: { diameter: '70 mm' } });
if (reach.ok) console.log('three decibels down at', reach.frequency, 'Hz');
if (vent.ok) console.log('the tube is', vent.length, 'm long');
