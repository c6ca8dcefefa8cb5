import { completeDriver } from '@airspring/core/driver';
import { closedBox, ventedBox } from '@airspring/core/enclosure';
import { respond } from '@airspring/core/response';

// Invented.
const cone = { fs: '27 Hz', Vas: '62 L', Sd: '330 cm²' } as const;
const motor = { Qts: 0.36, Qes: 0.4, Re: '5.6 Ω' } as const;
const sheet = completeDriver({ ...cone, ...motor });
if (!sheet.ok) throw new Error(sheet.because[0]?.text);
const box = { drivers: sheet.driver, netVolume: '50 L', QL: 7 } as const;
const tones = [10, 14, 20, 25, 30, 35, 40, 50, 70, 100, 140, 200];
const drive = { driveVoltageRms: '2.83 V' } as const;
const vented = respond(ventedBox({ ...box, fb: '30 Hz' }), tones, drive);
const closed = respond(closedBox(box), tones, drive);
for (const [i, tone] of tones.entries()) {
  const [open, shut] = [vented.levelHalfSpace[i]!, closed.levelHalfSpace[i]!];
  console.log([tone, open.toFixed(1), shut.toFixed(1)].join('\t'));
}
