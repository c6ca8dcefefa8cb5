import { type DrivenSpec, type Family, systemOf } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { passband } from '@airspring/core/response';
import type { ReadFields } from '../brief/fields.js';
import type { DriverChoice, Job } from '../job/job.js';
import { airSpeedIn } from './air-speed.js';
import { alignsIn, type SolvedBoxes } from './aligns.js';
import { type fields, partitionsOf } from './band-pass-fields.js';
import { bandPassWords, NAMES } from './band-pass-words.js';
import { acousticsOf, type BoxKind, type Variant } from './box-kind.js';
import type { ChamberOfBox } from './build-record.js';
import type { Chamber, Rear } from './finished-chambers.js';
import type { Finished, KindRecord } from './kind-record.js';
import { edgeNames } from './partition.js';
import type { Point } from './point.js';
import { type RoundVentSettings, roundVentSettings } from './round-vent-fields.js';
import { twoChambers } from './two-chambers.js';
import { wholeMillimetres } from './vent-length.js';
import { USUAL_QL } from './vented-fields.js';

/** The chambers of a band-pass box at a point, as the families of core name them. */
export interface Chambers {
  readonly drivers: DriverChoice['drivers'];
  readonly sourceResistance: number;
  readonly front: { readonly volume: number; readonly tuning: number };
  /** Without its tuning where it is closed. */
  readonly rear: { readonly volume: number; readonly tuning?: number };
  /** Of the vents of a chamber. It decides the speed of the air alone; without it no vents are chosen yet. */
  readonly ventArea?: number;
  readonly losses: { readonly QL: number; readonly QA?: number | undefined; readonly QP?: number | undefined };
}

/** What differs between the kinds of band-pass box. */
export interface BandPass<Spec extends DrivenSpec, Input> {
  readonly kind: BoxKind;
  readonly family: Family<Spec, Input>;
  readonly rear: Rear;
  readonly spec: (chambers: Chambers) => Spec;
  /** The numbers of the search that an alignment decides: volume of both chambers, tunings, and share of the rear chamber. */
  readonly pointOf: (spec: Spec) => Point;
  /** What the dips between the impedance peaks are compared with, as a noun. */
  readonly dip: string;
  /** Numbers that only this kind tells. */
  readonly numbers?: (chambers: Chambers, job: Job) => KindRecord['numbers'];
}

function variantOf<Spec extends DrivenSpec, Input>(
  { kind, family, rear, spec: specOf, pointOf, dip, numbers }: BandPass<Spec, Input>,
  job: Job,
  choice: DriverChoice,
  boxOf: ReturnType<typeof twoChambers>,
  solved: SolvedBoxes,
  count: number,
): Variant {
  const { box = {}, partition = {} } = job.sections as ReadFields<typeof fields>;
  const { QL = USUAL_QL, QA, QP, tuning: pinned } = box;
  const { drivers } = choice;
  const { axis, contents, chambers, acoustic, told, variant } = boxOf;
  const [front, behind] = chambers as [(typeof chambers)[number], (typeof chambers)[number]?];
  const seen = [0, 0, 0];
  const areaOf = (point: Point): number => front.vents.area(front.seenAt(point, seen));
  const ventOf = (side: 'front' | 'rear', { vents, seenAt, lengthOf }: Chamber) => ({
    element: `vent ${side}`,
    ...(behind && { of: side }),
    called: behind ? `the vent of the ${side} chamber` : 'the vent',
    section: (point: Point) => vents.section(seenAt(point)),
    length: (point: Point) => wholeMillimetres(lengthOf(seenAt(point))),
  });
  const opening = airSpeedIn(job, {
    openings: [ventOf('front', front), ...(behind ? [ventOf('rear', behind)] : [])],
    called: 'vent',
    path: 'vent.airSpeed',
    airSpeedPeak: front.vents.airSpeedPeak,
    area: areaOf,
    quiet: front.vents.quiet,
  });

  const losses = { QL, QA, QP };
  const { sourceResistance } = job.amplifier;
  function chambersAt(point: Point, ventArea?: number): Chambers {
    // By its places, since this is made for each box of the lattice.
    const seen = front.seenAt(point);
    const volume = seen[0]!;
    const rest = point[0]! - volume;
    const rear = behind === undefined ? { volume: rest } : { volume: rest, tuning: behind.seenAt(point)[1]! };
    const made = { drivers, sourceResistance, front: { volume, tuning: seen[1]! }, rear, losses };
    return ventArea === undefined ? made : Object.assign(made, { ventArea });
  }
  const spec = (point: Point): Spec => specOf(chambersAt(point, areaOf(point)));

  /** Both chambers across an edge of the box; the front one is so long. */
  function chambersOf(edge: number, length: number, { front: one, rear: other }: Chambers): readonly ChamberOfBox[] {
    const t = job.space.panelThickness;
    const across = edgeNames[axis];
    const [first, second] = NAMES[rear];
    const wall = t + length;
    return [
      {
        name: `${first} chamber`,
        across,
        from: t,
        to: wall,
        netVolume: one.volume,
        vented: true,
        bracing: front.bracing,
        bracingIn: ['partition', 'frontBracing'],
      },
      {
        name: `${second} chamber`,
        across,
        from: wall + t,
        to: edge - t,
        netVolume: other.volume,
        vented: behind !== undefined,
        bracing: job.space.bracing,
        bracingIn: ['space', 'bracing'],
      },
    ];
  }

  function record(finished: Finished): KindRecord {
    const { point } = finished;
    const made = told(finished);
    const at = chambersAt(point);
    // Counted from the maximum of the band of the brief, as f3 is.
    const passed = passband(systemOf(family, spec(point), job.air), { to: si('frequency', job.wanted.highest) });
    const [first, second] = made.chambers;
    const words = bandPassWords({
      rear,
      axis,
      at: made.at,
      volumes: [at.front.volume, at.rear.volume],
      band: passed.ok ? [passed.lower ?? 0, passed.upper ?? 0] : [0, 0],
      resonance:
        job.air.speedOfSound /
        2 /
        Math.max(...made.chambers.map(({ length }) => length), ...made.sizes.slice(0, made.chambers.length).flat()),
      chambers: made.chambers,
      contents,
      frontBraced: partition.frontBracing !== undefined,
      written: box.QL,
      QL,
      many: drivers.fronts > 1,
    });
    const { vent, ...alone } = first!;
    const vents = made.chambers.flatMap(({ vent: own }, i) => {
      const [chamber, air] = i === 0 ? (['front', at.front] as const) : (['rear', at.rear] as const);
      return own ? [{ ...own, chamber, netVolume: air.volume }] : [];
    });
    return {
      ...alone,
      ...(second !== undefined ? { vents } : vent && { vent }),
      ...words,
      holes: made.chambers.flatMap(({ holes }) => holes),
      brief: second === undefined ? first!.brief : [...first!.brief, ' and ', ...second.brief],
      margins: made.chambers.flatMap(({ margins }) => margins),
      driverHoles: made.driverHoles,
      boards: made.boards,
      chambers: chambersOf(finished.edges[axis], made.at, at),
      dip: { of: dip, at: made.chambers.map(({ fb }) => fb) },
      numbers: [...words.tunings, ...(numbers?.(at, job) ?? []), ...words.numbers],
      warnings: made.warnings,
      givesOut: {
        vent: 'the air speed in the vent',
        'vent front': 'the air speed in the vent of the front chamber',
        'vent rear': 'the air speed in the vent of the rear chamber',
        'quiet vent': 'an onset of noise in the vent',
        'quiet vent front': 'an onset of noise in the vent of the front chamber',
        'quiet vent rear': 'an onset of noise in the vent of the rear chamber',
      },
    };
  }

  return {
    kind,
    reference: 'maximum',
    ...variant,
    sound: `${count}`,
    built: edgeNames[axis],
    acoustic: acoustic(pinned),
    ...acousticsOf(family, job, spec),
    ...alignsIn(family, job, (point) => specOf(chambersAt(point)), pointOf, solved),
    ...opening,
    wishes: [
      ...opening.wishes,
      ...front.vents.wishes.map((wish) => ({
        ...wish,
        needed: (point: Point, loads: Float64Array) => wish.needed(front.seenAt(point, seen), loads),
      })),
    ],
    record,
  };
}

/** All variants of a kind of band-pass box: each edge that the partition may divide, with each number of vents. */
export const bandPassVariants = <Spec extends DrivenSpec, Input>(
  of: BandPass<Spec, Input>,
  job: Job,
  choice: DriverChoice,
): readonly Variant[] => {
  const settings: RoundVentSettings = roundVentSettings(job);
  const solved: SolvedBoxes = new Map();
  return partitionsOf(job, settings, of.rear).flatMap((edge) =>
    settings.counts.map((count) =>
      variantOf(of, job, choice, twoChambers(of.kind, job, choice, settings, count, edge, of.rear), solved, count),
    ),
  );
};
