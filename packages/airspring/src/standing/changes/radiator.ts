import { addedMassForTuning, passiveRadiatorTuning } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { radiatorsOf } from '../../kind/radiator-fields.js';
import { type Change, RETUNED, refused, rowOf } from './change.js';
import { holeClosed } from './hole-closed.js';

/** A passive radiator of the brief in the place of the vent. */
export const radiatorInstead: Change = (now) => {
  const { standing, state, account } = now;
  if (standing.vents.length === 0 || account.fb === undefined) return [];
  const fb = account.fb;
  const { job, airBeforeVents } = standing;
  return radiatorsOf(job).map(({ radiator, name, count, greatestAddedMass }) => {
    const what = [`${count > 1 ? `${count} passive radiators` : 'A passive radiator'} "${name}" instead of the vent`];
    const head = { change: 'a passive radiator', what, holds: ['tuning'] as const };
    const box = { netVolume: si('volume', airBeforeVents), radiator, count };
    const found = addedMassForTuning({ ...box, fb: si('frequency', fb) }, job.air);
    // A bare cone that is a little too heavy keeps the tuning as well as a vent in whole millimetres does.
    const bare = passiveRadiatorTuning({ ...box, addedMass: si('mass', 0) }, job.air).fb;
    if (!found.ok && Math.abs(bare - fb) > RETUNED * fb)
      return refused(head, [found.because.map(({ text }) => text).join(' ')]);
    const cutout = radiator.cutoutDiameter ?? 0;
    const addedMass = found.ok ? Math.round(found.addedMass * 1e3) / 1e3 : 0;
    if (addedMass > greatestAddedMass + 1e-9) {
      const bears = [[greatestAddedMass, 'mass']] as const;
      return refused(head, ['It needs ', [addedMass, 'mass'], ' of added mass, but takes ', ...bears, ' at most.']);
    }
    return rowOf(now, {
      ...head,
      state: { ...state, vents: [], radiators: { radiator, count, addedMass } },
      box: { radiator: { name, count, addedMass } },
      fitting: 'measure',
      effort: 0.5,
      steps: [
        { does: 'measure', says: ['Find a panel with room for a cutout of ', [cutout, 'length'], '.'] },
        {
          does: 'buy',
          says: [`Buy ${count > 1 ? `${count} passive radiators` : 'a passive radiator'} "${name}".`],
          parts: [{ what: `passive radiator "${name}"`, made: 'buy', count, size: [[cutout, 'length'], ' cutout'] }],
        },
        holeClosed(standing.ventsNow),
        {
          does: 'cut',
          says: ['Cut the cutout for the radiator, and seal its frame. Wear eye protection and a dust mask.'],
          caution: 'dust',
          holes: [{ what: 'radiator', form: 'circle', diameter: cutout }],
        },
        ...(addedMass > 0
          ? [{ does: 'fit', says: ['Fix ', [addedMass, 'mass'], ' to the middle of its cone.'] } as const]
          : []),
      ],
      touches: ['holes'],
    });
  });
};
