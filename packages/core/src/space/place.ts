/** Where a block of bodies is: its middle, in inner coordinates. */
export interface Seat {
  face: number;
  columns: number;
  rows: number;
  readonly centre: [number, number, number];
}

/** The best place that was found; faces by number, coordinates in the inner box. */
export interface Place {
  length: number;
  /** One entry for each body, two for opposed ones. */
  readonly seats: readonly Seat[];
  ventFace: number;
  readonly ventCentre: [number, number, number];
  along: number;
  backwards: boolean;
  firstLeg: number;
  secondLeg: number;
}

export const noPlace = (seats: number): Place => ({
  length: 0,
  seats: Array.from({ length: seats }, () => ({ face: 0, columns: 1, rows: 1, centre: [0, 0, 0] })),
  ventFace: 0,
  ventCentre: [0, 0, 0],
  along: 0,
  backwards: false,
  firstLeg: 0,
  secondLeg: 0,
});
