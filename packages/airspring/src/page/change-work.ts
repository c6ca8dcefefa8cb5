import { visible } from '@airspring/core/fault';
import type { ReadWorkshop } from '../brief/workshop.js';
import { cautions } from '../record/cautions.js';
import type { Account } from '../standing/account.js';
import type { Chosen } from '../standing/chosen.js';
import type { WorkedOut } from '../standing/retrofit.js';
import { soundingOf } from '../standing/state.js';
import { soundOfState } from '../standing/whole.js';
import { nowSentences, reachText } from '../words/account-text.js';
import { designHead, designSummary } from '../words/changed-design-text.js';
import { changeText } from '../words/changes-text.js';
import { impedanceFound, impedanceText } from '../words/impedance-text.js';
import { byEyeCautions, byEyeSteps } from '../words/measured-text.js';
import { type Phrasing, phrasing } from '../words/phrasing.js';
import { loudest } from '../words/play-text.js';
import { flangeText, holeText } from '../words/tubes-text.js';
import { heardAtWanted } from '../words/vent-text.js';
import { changeParts, type Plate } from './change-parts.js';
import { changeSteps, setSteps } from './change-steps.js';
import { changeTubes, setTubes, standingHoles } from './change-tubes.js';
import { driverData } from './driver-data.js';
import { impedanceOf, joined, loadSentence, playingSentences, protectionOf } from './played-work.js';

/** What the box does now and will do, beside what is wanted. */
function compared(
  { answer: { asked, now } }: WorkedOut,
  columns: readonly (readonly [head: string, account: Account])[],
  say: Phrasing,
): string[][] {
  const all = [['now', now.account] as const, ...columns];
  const row = (what: string, of: (account: Account) => string | undefined, wanted = '') => [
    what,
    ...all.map(([, account]) => of(account) ?? '–'),
    wanted,
  ];
  const leastLoad = asked.leastLoad === undefined ? '' : `for an amplifier that takes ${say.ohms(asked.leastLoad)}`;
  return [
    ['', ...all.map(([head]) => head), 'wanted'],
    row('tuned to; closed: resonance', ({ fb, fc }) => say.hertz(fb ?? fc ?? 0)),
    row('reaches down to', (account) => reachText(account, say), `${say.edge(asked.lowest)} or lower`),
    row(
      'loudest steady tone of the whole band',
      ({ loudest: { level } }) => say.decibels(level),
      say.decibels(asked.level),
    ),
    row(
      'air in the vent at the wanted level, peak',
      ({ wanted: { airSpeed } }) => airSpeed && say.speed(airSpeed.value),
      `at most ${say.speed(asked.airSpeedPeak)}`,
    ),
    row('the vent is quiet up to', ({ noise }) => noise && say.decibels(noise.quiet.level)),
    row('cone travel at the wanted level, peak', ({ wanted: { travel } }) => say.travel(travel.value)),
    row('least impedance', ({ leastLoad: { value } }) => say.ohms(value), leastLoad),
    row('air in the box', ({ netVolume }) => say.volume(netVolume)),
  ];
}

/** The name of what is built, and what it is. */
function headOf(chosen: Chosen, { answer, now }: WorkedOut, say: Phrasing): { name: string; summary: string } {
  if (chosen.what === 'set') {
    const hole = holeText(chosen.set, answer, say);
    const [one, ...others] = chosen.tubes;
    return {
      name: others.length > 0 ? `Set ${chosen.number}, ${hole}` : `Tube ${one?.mark} of set ${chosen.number}, ${hole}`,
      summary: flangeText(chosen.set, say),
    };
  }
  const { design } = chosen;
  const { noise } = design.account;
  const heard = noise ? heardAtWanted(noise, answer.asked.level, 'the vent', say) : '';
  const told = (summary: string) => (heard === '' ? summary : `${summary} ${heard}`);
  if (chosen.what === 'design')
    return { name: designHead(design), summary: told(designSummary(design, now.account, say)) };
  return { name: `Change ${chosen.number}, ${chosen.row.change}`, summary: told(changeText(chosen.row, say)) };
}

/**
 * A change of a box that stands as the workshop needs it: numbers in SI units, and sentences as they are printed.
 * `@airspring/workshop/dossier` makes pages and files of it.
 */
export function changeWorkOf(chosen: Chosen, worked: WorkedOut) {
  const { answer, now } = worked;
  const { standing } = now;
  const { job } = standing;
  const say = phrasing(job.units);
  const sounding = soundingOf(standing, now.state);
  if (!sounding.ok) throw new Error(sounding.because.map(({ text }) => text).join(' '));
  const asItIs = soundOfState(job, now.state, sounding, now.account);
  const told = {
    playing: [],
    ...(now.account.fb !== undefined && { dip: { of: 'the tuning', at: [now.account.fb] } }),
  };
  const isSet = chosen.what === 'set';
  const whole = isSet ? chosen.tubes[0]! : chosen;
  const { design } = whole;
  const parts = changeParts(whole, standing, say);
  // Each tube of a set may be a pipe of its own.
  const wholes = isSet ? chosen.tubes.filter(({ bent }) => !bent) : [whole];
  const bought = new Set(wholes.flatMap((one) => changeParts(one, standing, say).parts));
  const glued = isSet ? { tubes: [], notes: [] } : changeTubes(whole, standing);
  const slid = isSet ? setTubes(chosen, standing, answer, say) : undefined;
  const holes = standingHoles(whole, standing);
  const columns = isSet
    ? chosen.tubes.map(({ mark, length, design: { account } }) => [`${mark}, ${say.length(length)}`, account] as const)
    : [['changed', design.account] as const];
  const { printer } = job.sections as { readonly printer?: { readonly height: number; readonly width: number } };
  const { series, parallel, isobaric, count, driver } = now.state.drivers;
  const sawn = design.steps.some(({ does }) => does === 'cut' || does === 'drill');
  const plates: readonly Plate[] = parts.plates;
  const cut = sawn || plates.length > 0;
  const glues = design.steps.some(({ does }) => does === 'print' || does === 'fit');
  const due = (name: 'hearing' | 'travel') => design.cautions.includes(cautions[name]) && { [name]: cautions[name] };
  const { name, summary } = headOf(chosen, worked, say);
  return {
    title: visible(answer.title),
    name: visible(name),
    summary: visible(summary),
    numbers: [],
    change: {
      panelThickness: standing.panelThickness,
      compared: compared(worked, columns, say),
      now: nowSentences(answer, say).map(joined),
      before: impedanceOf(asItIs, impedanceFound({ ...asItIs, told }, say)),
      openings: parts.openings,
      plates,
      tubes: glued.tubes,
      ...(holes && { standing: holes }),
      ...(slid && { set: slid.set }),
      parts: [...bought].map(visible),
      notes: [...parts.notes, ...glued.notes, ...(slid?.notes ?? [])],
      byEye: byEyeSteps(answer, say),
      byEyeCautions,
      rewired:
        series !== design.drivers.series ||
        parallel !== design.drivers.parallel ||
        isobaric !== design.drivers.isobaric ||
        count !== design.drivers.count,
    },
    drivers: {
      ...design.drivers,
      name: visible(design.drivers.name),
      outerDiameter: driver.outerDiameter ?? 0,
      cutoutDiameter: driver.cutoutDiameter ?? 0,
      ...(standing.measurement === undefined && { data: driverData(job, 0, say) }),
    },
    load: loadSentence(design, say),
    vents: [],
    steps: isSet
      ? setSteps(design, slid?.set.pipe ? slid.set.tubes.map(({ length }) => length) : [], say)
      : changeSteps(design, say),
    building: [],
    assumed: answer.assumed.map((phrase) => visible(say.phrase(phrase))),
    playing: isSet
      ? chosen.tubes.map(
          (tube) => `With the tube ${tube.mark}, ${say.length(tube.length)} long: ${joined(loudest(tube.design, say))}`,
        )
      : playingSentences(design, say),
    ...(!isSet && protectionOf(design, say)),
    impedance: impedanceOf(design, impedanceText(design, say)),
    cautions: {
      mains: cautions.mains,
      ...(cut && { dust: cautions.dust }),
      ...(glues && { fumes: cautions.fumes }),
      ...due('hearing'),
      ...due('travel'),
    },
    tools: { ...(job.sections.workshop as ReadWorkshop | undefined), ...(printer && { printer }) },
    unit: job.units.length,
    volumeUnit: job.units.volume,
  };
}
