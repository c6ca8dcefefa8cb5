/** Source and boxes, played together from one moment on: only one of them is heard, and another takes over in its place. */
import type { Excerpt } from '../music/listening.js';

/** How long a sound takes to swell or to fade, s. */
const [SWELL, FADE] = [0.6, 0.06];

export class MusicPlayer {
  #context: AudioContext | undefined;
  #master: GainNode | undefined;
  #gains: readonly GainNode[] = [];
  #ended: (() => void) | undefined;
  #level = 0;

  /** Begins at the start of an excerpt, from silence. A browser lets nobody call it but a hand. */
  play({ rate, tracks }: Excerpt, heard: number, ended: () => void): void {
    this.stop();
    const context = this.#context ?? new AudioContext();
    this.#context = context;
    void context.resume();
    const master = context.createGain();
    master.gain.setValueAtTime(0, context.currentTime);
    master.gain.linearRampToValueAtTime(this.#level, context.currentTime + SWELL);
    master.connect(context.destination);
    const start = context.currentTime + 0.05;
    this.#gains = tracks.map((track, i) => {
      const buffer = context.createBuffer(1, Math.max(1, track.length), rate);
      buffer.copyToChannel(track, 0);
      const [source, gain] = [context.createBufferSource(), context.createGain()];
      source.buffer = buffer;
      gain.gain.value = i === heard ? 1 : 0;
      source.connect(gain).connect(master);
      source.start(start);
      if (i === 0) source.onended = () => this.#master === master && this.stop();
      return gain;
    });
    this.#master = master;
    this.#ended = ended;
  }

  get isPlaying(): boolean {
    return this.#master !== undefined;
  }

  hear(track: number): void {
    const { currentTime = 0 } = this.#context ?? {};
    this.#gains.forEach(({ gain }, i) => gain.setTargetAtTime(i === track ? 1 : 0, currentTime, FADE / 3));
  }

  /** A factor on the samples, never above 1. */
  set level(to: number) {
    this.#level = Math.min(1, Math.max(0, to));
    if (!this.#master || !this.#context) return;
    this.#master.gain.cancelScheduledValues(this.#context.currentTime);
    this.#master.gain.setTargetAtTime(this.#level, this.#context.currentTime, FADE);
  }

  stop(): void {
    const [context, master, ended] = [this.#context, this.#master, this.#ended];
    this.#master = this.#ended = undefined;
    this.#gains = [];
    if (!context || !master) return;
    master.gain.cancelScheduledValues(context.currentTime);
    master.gain.setTargetAtTime(0, context.currentTime, FADE / 3);
    setTimeout(() => master.disconnect(), 1000 * 4 * FADE);
    ended?.();
  }
}
