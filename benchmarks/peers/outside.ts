import { spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { DRIVE, frequencies, networkA, networkB, POINTS, polynomials, system, VENT_AREA, values } from '../box.js';
import type { PeerName } from '../table.js';

const path = (relative: string) => fileURLToPath(new URL(relative, import.meta.url));
const made = path('../../.cache/bench/peers');

/** A peer in another language: how it is started, or why it is not there. */
export type Peer =
  | { readonly ok: true; readonly version: string; readonly command: (words: readonly string[]) => readonly string[] }
  | { readonly ok: false; readonly because: string };

const run = (command: readonly string[]) => {
  const [program = '', ...words] = command;
  return spawnSync(program, words, { env: numpyEnvironment(), maxBuffer: 1 << 28 });
};

/** A setting that makes numpy's kernels those of another processor is not handed on. */
function numpyEnvironment(): NodeJS.ProcessEnv {
  const { OPENBLAS_CORETYPE: _, OPENBLAS_L2_SIZE: __, ...rest } = process.env;
  return rest;
}

const firstLine = (text: Buffer | null) => String(text ?? '').split('\n')[0] ?? '';

/** The box as other languages read it: doubles for C, JSON for numpy. */
function writeCases(): void {
  mkdirSync(made, { recursive: true });
  const grid = frequencies(POINTS);
  const sets = Object.fromEntries(
    Object.entries({ A: networkA, B: networkB }).map(([name, network]) => {
      const { width, scale, probes, coefficients } = polynomials(network);
      const rows = 1 + probes.length;
      const head = [rows, width, scale, POINTS, system.air.density, DRIVE];
      writeFileSync(
        `${made}/${name}.bin`,
        new Uint8Array(Float64Array.from([...head, ...coefficients, ...grid]).buffer),
      );
      const row = (r: number) => Array.from(coefficients.subarray(r * width, (r + 1) * width));
      return [name, { scale, rows: Array.from({ length: rows }, (_, r) => row(r)) }];
    }),
  );
  const rest = {
    values: values(),
    frequencies: Array.from(grid),
    drive: DRIVE,
    density: system.air.density,
    ventArea: VENT_AREA,
  };
  writeFileSync(`${made}/case.json`, JSON.stringify({ ...sets, ...rest }));
}

/** The C sweep, compiled with some options; words: what, form (A, F, B), seconds. */
function c(name: string, options: readonly string[]): Peer {
  const version = run(['gcc', '--version']);
  if (version.status !== 0) return { ok: false, because: 'no gcc' };
  const binary = `${made}/${name}`;
  const built = run(['gcc', '-std=c11', ...options, '-o', binary, path('sweep.c'), '-lm']);
  if (built.status !== 0) return { ok: false, because: `gcc: ${firstLine(built.stderr)}` };
  return {
    ok: true,
    version: `${firstLine(version.stdout)} ${options.join(' ')}`,
    command: ([what = '', form = '', ...rest]) => [
      binary,
      `${made}/${form === 'B' ? 'B' : 'A'}.bin`,
      what,
      form,
      ...rest,
    ],
  };
}

/** The numpy sweep; words: what, form (usual, algebra), set, seconds. */
function numpy(): Peer {
  const version = run([
    'python3',
    '-c',
    'import numpy, platform; print("python", platform.python_version(), "numpy", numpy.__version__)',
  ]);
  if (version.status !== 0) return { ok: false, because: 'no python3 with numpy' };
  return {
    ok: true,
    version: firstLine(version.stdout),
    command: ([what = '', ...rest]) => ['python3', path('sweep.py'), `${made}/case.json`, what, ...rest],
  };
}

/** A script for scipy; words: what, seconds. */
function scipy(script: string): Peer {
  const version = run(['python3', '-c', 'import scipy; print("scipy", scipy.__version__)']);
  if (version.status !== 0) return { ok: false, because: 'no python3 with scipy' };
  return { ok: true, version: firstLine(version.stdout), command: (words) => ['python3', path(script), ...words] };
}

/** Every peer in another language; `simd` is the same source, left to the compiler to put in vectors. */
export function outsidePeers(): Readonly<Record<PeerName, Peer>> {
  writeCases();
  return {
    c: c('sweep', ['-O2', '-ffp-contract=off']),
    simd: c('sweep-simd', ['-O3', '-march=native']),
    numpy: numpy(),
    scipy: scipy('design.py'),
    motion: scipy('motion.py'),
  };
}

/** What a peer prints for these words. */
export function ask(peer: Peer & { ok: true }, words: readonly string[]): Buffer {
  const { status, stdout, stderr } = run(peer.command(words));
  if (status !== 0) throw new Error(`${words.join(' ')}: ${firstLine(stderr) || `ended with ${status}`}`);
  return stdout;
}

/** Columns of doubles that the C sweep writes. */
export function doubles(bytes: Buffer, length: number): Float64Array[] {
  const all = new Float64Array(Uint8Array.from(bytes).buffer);
  return Array.from({ length: all.length / length }, (_, k) => all.subarray(k * length, (k + 1) * length));
}
