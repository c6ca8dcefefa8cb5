/** What walls at right angles change in the field of a small source at a distance, against free air. */
export interface NearWalls {
  /** Mean square over all directions that the walls leave, at an angular wave number in rad/m, as a ratio. */
  readonly meanSquare: (waveNumber: number) => number;
  /** The same where all images are heard in step, as a ratio of pressures. */
  readonly inStep: number;
}

/**
 * The images of a source in up to three walls, heard from a distance r. An image that is s away from the source is heard from about
 * √(r² + s²), so that a wall that is farther than the listener changes little, and one that is far away nothing:
 *
 *   p²/p²_free = Σ_i Σ_j a_i a_j sin(k s_ij)/(k s_ij),  a_i = r/√(r² + s_i²)
 *
 * For walls that are near against the distance, this is the power that the source radiates (@source allison1974), spread over the space
 * that they leave.
 */
export function nearWalls(walls: readonly number[], distance: number): NearWalls {
  const images = Array.from({ length: 2 ** walls.length }, (_, image) =>
    walls.map((wall, i) => ((image >> i) & 1 ? 2 * wall : 0)),
  );
  const sizes = images.map((image) => distance / Math.hypot(distance, ...image));
  const pairs = images.flatMap((one, i) =>
    images.map((other, j) => ({
      size: sizes[i]! * sizes[j]!,
      apart: Math.hypot(...one.map((along, wall) => along - other[wall]!)),
    })),
  );
  return {
    inStep: sizes.reduce((sum, size) => sum + size, 0),
    meanSquare: (waveNumber) =>
      pairs.reduce((sum, { size, apart }) => {
        const angle = waveNumber * apart;
        return sum + size * (angle === 0 ? 1 : Math.sin(angle) / angle);
      }, 0),
  };
}
