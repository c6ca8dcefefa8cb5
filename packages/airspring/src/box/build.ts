import type { Job } from '../brief/job.js';
import { type Criteria, type Excess, sizeExcess, soundExcess, wishes } from '../search/wishes.js';
import { compileGeometry, compileVentLength, type Kin, tubeArea, ventBody } from './candidate.js';
import { compileDemand, type Demand, emptyDemand } from './demand.js';

/** A box that a saw and a printer can make: outer edges and vent in whole millimetres, and all that follows. */
export interface Build {
  readonly kin: Kin;
  /** Outer edges, m. */
  readonly edges: readonly [width: number, height: number, depth: number];
  readonly netVolume: number;
  /** Inner diameter of each vent, m; 0 without. */
  readonly diameter: number;
  /** Length of each vent, m; 0 without. */
  readonly ventLength: number;
  /** Tuning, Hz; 0 without a vent. */
  readonly fb: number;
  readonly demand: Demand;
  readonly criteria: Criteria;
  readonly excess: Excess;
}

/** The whole numbers that make a build: the solved edge in mm (or the scale in ‰), vent diameter in mm, tuning in 0.05 Hz. */
export type Cell = readonly [size: number, diameter: number, tuning: number];
export const TUNING_STEP = 0.05;

const MM = 1e-3;
const axes = ['width', 'height', 'depth'] as const;
const ITERATIONS = 12;

/** Makes builds of one kin from whole numbers; `undefined` where no such box can stand: nothing left inside, or no vent that fits. */
export function compileBuild(job: Job, kin: Kin, demandOf = compileDemand(job, kin.offer, kin.family)) {
  const { space } = job;
  const geometry = compileGeometry(job, kin);
  const full = [space.width, space.height, space.depth] as const;
  const solved = (axes as readonly string[]).indexOf(kin.shape);
  const t = space.panelThickness;
  const lengths = new Map<number, ReturnType<typeof compileVentLength>>();
  const lengthOf = (diameter: number) => {
    let length = lengths.get(diameter);
    if (length === undefined) {
      length = compileVentLength(job, kin.vents, diameter * MM);
      lengths.set(diameter, length);
    }
    return length;
  };

  return ([size, bore, tuning]: Cell): Build | undefined => {
    const edges = full.map((edge, axis) => {
      if (kin.shape === 'proportional') return Math.floor(edge * size + 1e-6) * MM; // ‰ of an edge in m is mm
      return axis === solved ? size * MM : edge;
    }) as [number, number, number];
    const inner = edges.reduce((product, edge) => product * Math.max(0, edge - 2 * t), 1);
    const before = inner - geometry.contents;
    const vented = kin.family === 'vented';
    const diameter = vented ? bore * MM : 0;
    const body = ventBody(job, diameter);
    const longest = geometry.longestVent(edges, vented ? body : ventBody(job, 1e-3));
    if (before <= 0 || longest <= 0) return undefined;
    let netVolume = before;
    let ventLength = 0;
    let fb = 0;
    if (vented) {
      const length = lengthOf(bore);
      const taken = tubeArea(body, kin.vents);
      fb = tuning * TUNING_STEP;
      // The vent takes volume, and a smaller volume asks for a longer vent: the fixed point, then whole millimetres.
      for (let i = 0; i < ITERATIONS; i++) {
        ventLength = length(netVolume, fb);
        netVolume = before - taken * Math.max(0, ventLength - t);
        if (!(ventLength > t) || netVolume <= 0.2 * before) return undefined;
      }
      ventLength = Math.round(ventLength / MM) * MM;
      netVolume = before - taken * (ventLength - t);
      // Two secant steps bring the tuning to what the whole millimetres give.
      for (let i = 0; i < 2; i++) {
        const off = length(netVolume, fb) - ventLength;
        const slope = (length(netVolume, fb * 1.001) - ventLength - off) / (0.001 * fb);
        fb -= off / slope;
      }
      if (ventLength > longest + 1e-9) return undefined;
    }
    const demand = emptyDemand();
    demandOf.at(netVolume, fb, demand);
    const excess = new Float64Array(wishes.length);
    sizeExcess(job, edges, diameter, printedWidth(body), excess);
    const level = soundExcess(job, demand, (kin.vents * Math.PI * diameter ** 2) / 4, excess);
    const volume = edges[0] * edges[1] * edges[2];
    const criteria = { cutoff: demand.cutoff, level, volume, ventLength: kin.vents * ventLength };
    return { kin, edges, netVolume, diameter, ventLength, fb, demand, criteria, excess };
  };
}

/** What a printer's bed must hold: the flange, or the elbow lying flat. */
export const printedWidth = (body: { flangeDiameter: number; bendRadius: number; outerDiameter: number }): number =>
  Math.max(body.flangeDiameter, body.bendRadius + body.outerDiameter / 2);
