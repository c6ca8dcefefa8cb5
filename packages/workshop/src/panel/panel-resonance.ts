import { type Frequency, si } from '@airspring/core/quantity';
import { mdf } from './board.js';
import { type PlateInput, type ReadPlate, readPlate, resonancesOf, type Strips } from './plate-resonances.js';

/** Where the first resonance of a panel lies. */
export interface PanelResonance {
  /** Of the board as its data say, with edges that may turn, and braces that bend as bars. */
  readonly simple: Frequency;
  /** Of the same board, with edges that may not turn, and braces that cannot move. */
  readonly clamped: Frequency;
  /** `simple` of the heaviest and least stiff board of its kind. */
  readonly lowest: Frequency;
  /** `clamped` of the lightest and stiffest. */
  readonly highest: Frequency;
}

/** A panel whose edges are glued. */
export type GluedPanelInput = Omit<PlateInput, 'edges' | 'count'>;

/**
 * The range in which the first resonance of a glued panel lies. A glued edge holds less than a clamped one and more than one that may
 * turn. A brace holds less than a line that cannot move, and more than a bar that bends about its own middle.
 *
 * $$ f_{lowest} = f_{simple}\sqrt{\frac{m_-}{r_+}}, \qquad f_{highest} = f_{clamped}\sqrt{\frac{m_+}{r_-}} $$
 *
 * | symbol | unit | meaning |
 * | --- | --- | --- |
 * | $m_-$, $m_+$ | 1 | least and greatest modulus of boards of the kind, over the typical one: `board.modulusRange` |
 * | $r_-$, $r_+$ | 1 | least and greatest density, over the typical one: `board.densityRange` |
 *
 * @validity as `plateResonances`; the ranges of our boards are common practice
 * @neglects what `plateResonances` neglects: above all the air and the holes
 * @throws InputError as `plateResonances`
 * @source own derivation: `plateResonances` between its two ends; frequencies grow as the root of stiffness over mass
 * @example panelResonance({ width: '300 mm', height: '400 mm', thickness: '18 mm' }).lowest
 */
export function panelResonance(input: GluedPanelInput): PanelResonance {
  return rangeOf(readPlate(input));
}

/** The same, of a panel that was read. */
export function rangeOf(panel: ReadPlate, strips: Strips = new Map()): PanelResonance {
  const { board = mdf, braces = [] } = panel;
  const [simple] = resonancesOf({ ...panel, edges: 'simple' }, 1, strips) as [Frequency];
  const stiff = braces.map(({ across, at }) => ({ across, at }));
  const [clamped] = resonancesOf({ ...panel, edges: 'clamped', braces: stiff }, 1, strips) as [Frequency];
  const { densityRange, modulusRange } = board;
  return {
    simple,
    clamped,
    lowest: si('frequency', simple * Math.sqrt(modulusRange[0] / densityRange[1])),
    highest: si('frequency', clamped * Math.sqrt(modulusRange[1] / densityRange[0])),
  };
}
