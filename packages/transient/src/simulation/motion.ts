/** All that a nonlinear simulation carries from sample to sample: plain arrays, so that a run can be kept and gone on with. */
export interface Motion {
  /** Potential or flow of each store. */
  readonly stores: Float64Array;
  /** Mean speed of the cone and mean flows of the losses over the last four intervals, the last first; their greatest sizes so far. */
  readonly past: Float64Array;
  readonly peaks: Float64Array;
  /** By {@link place}. */
  readonly own: Float64Array;
  /** What a filter of decimation has of each output. */
  readonly heard: readonly Float64Array[];
}

/** Places in `own`. */
export const place = {
  /** m. */
  displacement: 0,
  /** Flux of the moving inductance, V·s. */
  flux: 1,
  /** The last sample of the drive, V. */
  drive: 2,
  /** Rise of coil and magnet, and of the coil an interval before, K. */
  coil: 3,
  magnet: 4,
  coilBefore: 5,
  /** Mean current of the coil over the last interval, A. */
  current: 6,
  /** Next place in the filters of decimation. */
  heard: 7,
  /** Steps of Newton and ways that were halved, since the start. */
  steps: 8,
  halved: 9,
  /** J since the start: given by the drive, lost. */
  given: 10,
  lost: 11,
  count: 12,
} as const;
