import { caution, paragraph, section, steps } from './markup.js';
import type { Work } from './work.js';

/** The work in order, to tick off, with what is checked on the way. */
export function assemblingSection(work: Work, lengthText: (metres: number) => string): string {
  const { cautions, vents, box: { holes, thickness } } = work;
  const bent = vents.some(({ bend }) => bend !== undefined);
  const vented = vents.length > 0;
  return section(
    'Put it together',
    [
      steps([
        {
          says: `Measure the board at several places. These pages are made for ${lengthText(thickness)}. If it differs by more than 0.3 mm, write the measured thickness into the brief and make the pages again.`,
        },
        { says: 'Cut the panels. Equal panels are cut at one setting of the saw, so that they are equal.', caution: cautions.dust },
        {
          says: 'Lay the panels on each other in pairs: their edges must agree. Measure both diagonals of each panel: they must agree within 1 mm.',
        },
        ...(holes.length > 0
          ? [{ says: 'Mark the centres of the holes on the outside, from the edges that the drawings name. Cut them before gluing.' }]
          : []),
        { says: 'Put the box together dry, without glue. Every joint closes by hand, and the diagonals of the open side agree within 1 mm.' },
        { says: 'Glue all panels but the back. Clamp evenly, and check the diagonals once more before the glue sets.', caution: cautions.fumes },
        ...(vented
          ? [
              {
                says: `Fit the ${vents.some(({ count }) => count > 1) ? 'vents' : 'vent'}${bent ? ': join the pieces inside the box, since a bent tube does not go through its hole' : ''}. Glue it in airtight, and check that nothing stands in front of its inner end.`,
              },
            ]
          : []),
        { says: 'Run a bead of glue or sealant along every inner seam.' },
        { says: 'Glue the back on. Let it set before the box is lifted.', caution: cautions.weight },
        { says: `Fit ${work.drivers.count > 1 ? 'each driver' : 'the driver'} with a soft gasket under its frame. Tighten the screws crosswise.` },
        {
          says: `Look for leaks: press the cone in gently with spread fingers${vented ? ', while someone closes the vent with a flat board' : ''}. It must come back slowly. If it springs back at once, air leaks (common practice).`,
        },
      ]),
      ...work.building.map(paragraph),
      ...(work.assumed.length > 0 ? [`<h3>Assumed</h3>`, ...work.assumed.map(paragraph)] : []),
      vented || cautions.fumes === undefined ? '' : caution(cautions.fumes),
    ].join('\n'),
  );
}
