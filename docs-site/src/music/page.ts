import type { Input } from '../example/input.js';
import { boxes, type Playable, playableOf } from './boxes.js';
import { type Heard, playThrough } from './heard.js';
import { pieces, recordingOf } from './pieces.js';
import { type MusicTold, musicTold } from './told.js';

/** The two numbers of the page: either moves the other. */
export const musicInputs = (level: number, voltage: number): { readonly drive: Input; readonly level: Input } => ({
  drive: {
    kind: 'voltageRms',
    label: 'Voltage of a sine of full scale',
    value: `${voltage} V`,
    least: '0.1 V',
    greatest: '200 V',
    step: 10 ** (0.5 / 20),
    from: 'the amplifier of the old thunder box',
  },
  level: {
    kind: 'level',
    label: 'Level of the loudest tenth of a second at one metre',
    value: `${Number(level.toFixed(1))} dB`,
    least: '30 dB',
    greatest: '140 dB',
    step: '0.5 dB',
    from: 'what follows from that voltage',
  },
});

/** The page as it is made: our storm in the old thunder box, as it stands and with its wider vent. */
export async function playedHere() {
  const piece = pieces[0]!;
  const chosen = [boxes[0]!, boxes[1]!] as const;
  const played = chosen.map((choice): Playable => {
    const made = playableOf(choice, JSON.parse(choice.brief));
    if (!made.ok) throw new Error(made.because);
    return made.box;
  });
  const heard: Heard = await playThrough(recordingOf(piece), played);
  const told: MusicTold = musicTold(heard, heard.boxes[0]!.voltage);
  return { piece, chosen, heard, told };
}
