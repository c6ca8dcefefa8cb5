/** Plays recordings through boxes, away from the page: nothing of them leaves this worker but numbers, and half a minute to hear. */
import { faultLine, type InputError, isInputError } from '@airspring/core/fault';
import { type Recording, recordingFrom, sourceOfBlob } from '@airspring/transient/recording';
import { plainJson } from '../../../packages/airspring/src/command/json-fault.js';
import { boxes as ours, type Playable, playableOf } from '../music/boxes.js';
import { type Heard, playThrough } from '../music/heard.js';
import { type Excerpt, excerptOf } from '../music/listening.js';
import { pieces, recordingOf } from '../music/pieces.js';

/** What to play: a piece of the page, or a file of the reader. */
export type Sound = { readonly piece: string } | { readonly file: File };
/** Which box: one of the page, or that of a brief. */
export type Box = { readonly id: string } | { readonly title: string; readonly brief: string };

export type MusicAsked =
  | { readonly type: 'play'; readonly sound: Sound; readonly boxes: readonly Box[] }
  | { readonly type: 'listen'; readonly sound: Sound; readonly boxes: readonly Box[]; readonly from: number };

export type MusicTold =
  | { readonly type: 'ready' }
  | { readonly type: 'progress'; readonly seconds: number; readonly duration?: number }
  | { readonly type: 'heard'; readonly heard: Heard }
  | { readonly type: 'excerpt'; readonly excerpt: Excerpt }
  | { readonly type: 'refused'; readonly because: string };

const tell = (told: MusicTold, transfer: Transferable[] = []) => self.postMessage(told, { transfer });
/** Between two reports of progress, ms. */
const PAUSE = 100;

class Refused extends Error {}

/** Boxes that were worked out: a brief becomes a box in a second, a second recording should not wait for it. */
const known = new Map<string, Playable>();

function boxOf(box: Box): Playable {
  const one =
    'id' in box
      ? ours.find(({ id }) => id === box.id)
      : { called: `“${box.title}”`, short: box.title, brief: box.brief };
  if (!one) throw new Refused('There is no such box.');
  const found = known.get(one.brief);
  if (found) return found;
  const plain = plainJson(one.brief);
  if (!plain.ok)
    throw new Refused(`The brief of ${one.called} is broken in line ${plain.fault.line}: ${plain.fault.says}.`);
  try {
    const made = playableOf(one, JSON.parse(plain.text));
    if (!made.ok) throw new Refused(made.because);
    known.set(one.brief, made.box);
    return made.box;
  } catch (error) {
    if (!isInputError(error)) throw error;
    throw new Refused(
      `The brief of ${one.called} cannot be read: ${error.faults.slice(0, 3).map(faultLine).join(' ')}`,
    );
  }
}

const FORMATS = 'WAV, FLAC, MP3 or Ogg Vorbis';

/** Why a file is not played, in a sentence for the reader. */
function because({ name }: File, { faults: [fault] }: InputError): string {
  if (!fault) return `${name} cannot be played.`;
  const { code, path, got, remedy } = fault;
  if (code === 'unknown-field' && path === 'recording' && remedy.startsWith('Convert')) {
    return `${name} holds no sound that this page can read. Choose a recording as ${FORMATS}.`;
  }
  if (code === 'empty')
    return `${name} holds no sound at all${typeof got === 'string' ? `: ${got}` : ''}. Choose another recording.`;
  return `${name} cannot be played: ${path} is ${String(got)}; expected ${fault.expected}. ${remedy}`;
}

async function recordingIn(sound: Sound): Promise<Recording> {
  if ('file' in sound) return recordingFrom(sourceOfBlob(sound.file));
  const piece = pieces.find(({ id }) => id === sound.piece);
  if (!piece) throw new Refused('There is no such piece.');
  return recordingOf(piece);
}

async function play(sound: Sound, boxes: readonly Box[]): Promise<void> {
  const recording = await recordingIn(sound);
  const { duration } = recording;
  let last = performance.now();
  tell({ type: 'progress', seconds: 0, ...(duration && { duration }) });
  const heard = await playThrough(recording, boxes.map(boxOf), (seconds) => {
    if (performance.now() - last < PAUSE) return;
    last = performance.now();
    tell({ type: 'progress', seconds, ...(duration && { duration }) });
  });
  const columns = heard.boxes.flatMap(({ limits, peak, rms, tone }) => [
    ...limits.map(({ used }) => used),
    ...[...Object.values(peak), ...Object.values(rms), tone],
  ]);
  tell(
    { type: 'heard', heard },
    columns.map(({ buffer }) => buffer),
  );
}

async function listen(sound: Sound, boxes: readonly Box[], from: number): Promise<void> {
  const excerpt = await excerptOf(await recordingIn(sound), boxes.map(boxOf), from);
  tell(
    { type: 'excerpt', excerpt },
    excerpt.tracks.map(({ buffer }) => buffer),
  );
}

self.onmessage = async ({ data }: MessageEvent<MusicAsked>) => {
  const { sound, boxes } = data;
  try {
    await (data.type === 'play' ? play(sound, boxes) : listen(sound, boxes, data.from));
  } catch (error) {
    if (error instanceof Refused) tell({ type: 'refused', because: error.message });
    else if (isInputError(error) && 'file' in sound) tell({ type: 'refused', because: because(sound.file, error) });
    else if ('file' in sound && error instanceof DOMException) {
      tell({
        type: 'refused',
        because: `${sound.file.name} cannot be read any more: choose it again. (${error.message})`,
      });
    } else throw error;
  }
};
tell({ type: 'ready' });
