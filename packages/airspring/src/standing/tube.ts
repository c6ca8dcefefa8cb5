/** Equal round tubes, in SI units. */
export interface Tube {
  readonly diameter: number;
  readonly length: number;
  readonly count: number;
  readonly wall: number;
  /** Radius of the rounding at both ends; zero is a sharp end. */
  readonly rounding: number;
}

/** Of a tube, where a brief does not say it. */
export const WALL = 3e-3;

export const outerOf = ({ diameter, wall }: Pick<Tube, 'diameter' | 'wall'>): number => diameter + 2 * wall;

/** Air that each metre of tubes takes, m². */
export const sectionTaken = (tube: Pick<Tube, 'diameter' | 'wall' | 'count'>): number =>
  (tube.count * Math.PI * outerOf(tube) ** 2) / 4;

/** Air that tubes take behind their panel, m³. */
export const airTaken = (tube: Omit<Tube, 'rounding'>, panelThickness: number): number =>
  sectionTaken(tube) * Math.max(0, tube.length - panelThickness);
