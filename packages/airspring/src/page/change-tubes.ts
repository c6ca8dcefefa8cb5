import { holeAt } from '../kind/build-record.js';
import { usualWidth } from '../kind/printed-tube.js';
import { inWords } from '../kind/wording.js';
import type { Changed, Chosen } from '../standing/chosen.js';
import type { Retrofit } from '../standing/retrofit.js';
import type { Standing } from '../standing/standing.js';
import { outerOf } from '../standing/tube.js';
import { isPipe } from '../standing/tubes.js';
import type { Phrasing } from '../words/phrasing.js';
import { purposeText } from '../words/tubes-text.js';

/** What the hole of a vent is called on a drawing. */
const openingOf = (vents: Standing['vents'], vent: number): string => (vents.length > 1 ? `vent ${vent + 1}` : 'vent');

/** The box with its holes as they will be, where all places are known. */
export function standingHoles({ design }: Changed, { inner, panelThickness, vents, drivers, driverPlaces }: Standing) {
  const { cutoutDiameter, outerDiameter } = drivers.driver;
  if (inner === undefined || driverPlaces === undefined || cutoutDiameter === undefined) return undefined;
  if (vents.some(({ place }) => place === undefined)) return undefined;
  const [width, height, depth] = inner.map((edge) => edge + 2 * panelThickness) as [number, number, number];
  const made = design.parts.flatMap(({ tube }) => (tube ? [tube] : []));
  return {
    outer: { width, height, depth },
    holes: [
      ...driverPlaces.map(({ face, centre }) => ({
        ...holeAt('driver', face, cutoutDiameter, centre),
        ...(outerDiameter !== undefined && { frame: outerDiameter }),
      })),
      ...vents.map(({ index, place, hole }) =>
        holeAt(
          openingOf(vents, index),
          place!.face,
          made.find(({ vent }) => vent === index)?.hole ?? hole,
          place!.centre,
        ),
      ),
    ],
  };
}

/** Tubes of a change that are printed and glued in, with the tuning that their box is designed for. */
export function changeTubes({ design, flows }: Changed, { vents, drivers }: Standing) {
  const made = design.parts.flatMap(({ tube, count }) => (tube ? [{ tube, count }] : []));
  const { cutoutDiameter = 0 } = drivers.driver;
  const several = vents.length > 1;
  const notes: string[] = [];
  const tubes = made.flatMap(({ tube, count }) => {
    const { vent, diameter, wall, length, rounding, hole, how, bend, printer } = tube;
    const name = several ? `tube of vent ${vent + 1}` : 'tube';
    if (bend === 'somewhere') {
      notes.push(
        `The ${name} must bend, and its way is not known: give the places of the drivers and of the vent in the brief (standing.drivers, standing.vents), and it is made as a solid.`,
      );
      return [];
    }
    return [
      {
        name,
        count,
        diameter,
        wall,
        length,
        rounding,
        hole,
        ...(printer && { printer }),
        stands: how === 'joined inside' ? { behindWithin: cutoutDiameter } : ('in the hole' as const),
        ...(bend && {
          bend: {
            radius: outerOf({ diameter, wall }),
            firstLeg: bend.first,
            secondLeg: bend.second,
            // A way is known only where the place of the hole is.
            from: vents.find(({ index }) => index === vent)!.place!.face,
            towards: bend.towards,
          },
        }),
        opening: openingOf(vents, vent),
        fb: design.account.fb ?? 0,
        netVolume: design.account.netVolume,
        ofBox: {
          count: design.box.tubes.find((one) => one.vent === vent)?.count ?? count,
          flow: flows.get(vent) ?? 1,
        },
      },
    ];
  });
  return { tubes, notes };
}

/** The tubes of a set: those that slide in. */
export function setTubes(
  { set, tubes: all }: Extract<Chosen, { what: 'set' }>,
  standing: Standing,
  answer: Retrofit,
  say: Phrasing,
) {
  const straight = all.filter(({ bent }) => !bent);
  const left = all.length - straight.length;
  const pipe = isPipe(standing, set.diameter, set.outerDiameter);
  const usual = Number.isFinite(standing.workshop.printer.height) ? undefined : usualWidth(set.flangeDiameter);
  return {
    set: {
      diameter: set.diameter,
      wall: (set.outerDiameter - set.diameter) / 2,
      rounding: set.rounding,
      hole: set.hole.hole,
      flangeDiameter: set.flangeDiameter,
      pipe,
      ...(usual && { printer: usual }),
      tubes: straight.map(({ mark, design, flows, length, purpose }) => ({
        mark,
        length,
        fb: design.account.fb ?? 0,
        netVolume: design.account.netVolume,
        flow: flows.get(set.vent) ?? 1,
        purpose: purposeText(
          { ...set.options.find((one) => one.length === length)!, account: design.account },
          purpose,
          answer,
          say,
        ),
        impedance: { peaks: design.impedance.maxima, dips: design.impedance.minima },
      })),
    },
    notes:
      left > 0
        ? [
            `${inWords(left)} of its tubes would have to bend, and a bent tube does not slide through a flange: ${left > 1 ? 'they are' : 'it is'} left out.`.replace(
              /^./,
              (letter) => letter.toUpperCase(),
            ),
          ]
        : [],
  };
}
