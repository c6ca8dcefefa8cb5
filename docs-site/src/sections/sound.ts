import { airSpeedCustoms } from '@airspring/core/vent';
import type { Design, Guard } from 'airspring';
import type { BriefFacts } from '../brief-facts.js';
import { airSpeedPanel } from '../figures/air-speed.js';
import { coneTravelPanel } from '../figures/cone-travel.js';
import { firstLimitPanel } from '../figures/first-limit.js';
import { levelPanel } from '../figures/level.js';
import { sweepMarkup } from '../figures/sweep.js';
import { html, type Markup } from '../html.js';
import { say } from '../say.js';
import { cautionsAbout } from './cautions.js';
import { cite } from './sources.js';

/** Level, travel, air speed, and what gives out. */
export function sound(design: Design, designs: readonly Design[], facts: BriefFacts): Markup {
  const airSpeed = airSpeedPanel(designs, facts);
  const { vent, response } = design;
  const sweep = {
    id: 'tones',
    title: 'What it plays, tone by tone',
    frequencies: design.curves.frequencies,
    band: [facts.lowest, facts.highest] as const,
    panels: [
      levelPanel(designs, facts),
      firstLimitPanel(designs, facts),
      coneTravelPanel(designs, facts),
      ...(airSpeed ? [airSpeed] : []),
    ],
    events: [
      ...(vent ? [{ f: vent.fb, words: `${design.name} is tuned to ${say('frequency', vent.fb, 'Hz')}` }] : []),
      {
        f: response.cutoff,
        words: `${design.name} is ${say('level', facts.fall, 'dB')} down at ${say('frequency', response.cutoff, 'Hz')}`,
      },
      { f: facts.lowest, words: `wanted from ${say('frequency', facts.lowest, 'Hz')}` },
      { f: facts.highest, words: `to ${say('frequency', facts.highest, 'Hz')}` },
    ],
  };
  const level = say('level', facts.level, 'dB');
  const atWanted = design.atWantedLevel.driveVoltageRms;
  return html`
<section aria-labelledby="sound"><h2 id="sound">What it plays</h2>
<p>The curves show all boxes driven alike, with ${say('voltageRms', design.curves.driveVoltageRms, 'V')}, which gives ${level} where the response is flat. To play that level at every tone, box ${design.name} needs up to ${say('voltageRms', atWanted.value, 'V')}, at ${say('frequency', atWanted.frequency, 'Hz')}; the text under the curves is for that drive. The network of driver, box and vent is Small’s ${cite('small1973vented1')}.</p>
<p>When you turn it up, something reaches its limit: the cone runs out of travel ${cite('iec60268-22')}, the coil gets too hot, the air in the vent becomes too fast, or the amplifier clips. Which of these comes first depends on the tone ${cite('small1973vented2')}. The second curve is the loudest steady tone before that.<span data-scripted hidden> To read all curves at a tone, point at it or move the slider under the curves.</span></p>
${sweepMarkup(sweep)}
${cautionsAbout(design, 'Hearing')}
${design.opening && heard(design.opening, level)}
${
  airSpeed &&
  html`<p>A limit on the mean air speed is a rule of thumb ${cite('practice')}; ${say('airSpeedPeak', airSpeedCustoms.strict.airSpeedPeak, 'm/s')} to ${say('airSpeedPeak', airSpeedCustoms.usual.airSpeedPeak, 'm/s')} (peak) are customary. They do not say whether you hear the vent.</p>`
}
<h3>Below the band</h3>
<p>${protection(design, facts)}</p>
${cautionsAbout(design, 'Driver', 'Mains')}
</section>`;
}

/** Up to which level the vents are quiet, and what they lose. */
function heard(
  { called, noise: { quiet, noisy }, compression }: NonNullable<Design['opening']>,
  level: string,
): Markup {
  const several = quiet.where !== undefined;
  const [judged, first] = several ? ['every vent', ` in ${quiet.where}`] : [called, ''];
  return html`<p>No formula tells when a vent is heard, so ${judged} is judged by all published onsets of jets, turbulence and noise ${cite('holman2005')} ${cite('salvatti2002')}. Up to ${say('level', quiet.level, 'dB')} it stays below every one of them, and is quiet; the first to be reached is “${quiet.onset}”${first}, at ${say('frequency', quiet.frequency, 'Hz')}. Above ${say('level', noisy.level, 'dB')} ${several ? noisy.where : 'it'} has passed them all, and is noisy. Between the two it is doubtful. Some of the onsets are known from memory only.${compression && lost(compression, several ? 'the vents' : called, level)}</p>`;
}

function lost(
  { low, nominal, high, frequency }: NonNullable<NonNullable<Design['opening']>['compression']>,
  where: string,
  level: string,
): Markup {
  return html` The ends of ${where} also lose pressure: at ${level} the sound falls behind by about ${say('level', nominal, 'dB', 2)}, at ${say('frequency', frequency, 'Hz')}; published losses give ${low.toFixed(1)} to ${say('level', high, 'dB', 2)} ${cite('atig2004')}.`;
}

/** What protects the cone below the tuning, where no air spring holds it. */
function protection(
  { protection: { atFullVoltage, ...wanted }, drivers, vent }: Design,
  { drivers: known, lowest }: BriefFacts,
): string {
  const Xmax = say('length', known.get(drivers.name)?.Xmax ?? 0, 'mm', 2);
  const head = vent
    ? `Below ${say('frequency', vent.fb, 'Hz')} the vent lets out what the cone draws in, and the air no longer holds the cone.`
    : 'In a closed box the air holds the cone down to the lowest tones.';
  return `${head} ${guard(wanted, 'as the curves are driven', Xmax, lowest)} ${guard(atFullVoltage, 'all that the amplifier gives', Xmax, lowest)}`;
}

/** From where on a drive is safe, and which high-pass keeps it safe below. */
function guard(
  { driveVoltageRms, lowestSafeFrequency: safe, neverSafe, highPass }: Guard,
  which: string,
  Xmax: string,
  lowest: number,
): string {
  const drive = `${say('voltageRms', driveVoltageRms, 'V')}, ${which},`;
  if (neverSafe) return `At ${drive} every tone is too much for its ${Xmax}: turn it down.`;
  if (safe === undefined) return `At ${drive} the cone stays within its ${Xmax} at every tone.`;
  const from = `At ${drive} tones below ${say('frequency', safe, 'Hz')} are too much for its ${Xmax}.`;
  if (safe > lowest)
    return `${from} Some of these tones belong to the band, so no high-pass below the band helps: turn it down.`;
  if (!highPass) {
    return `${from} No gentle high-pass below the band prevents that: turn it down, or keep such tones out of the programme.`;
  }
  const { order, corner, costAtLowest, fallenUpTo } = highPass;
  const breaks =
    fallenUpTo === undefined
      ? ''
      : ` With it the response falls by more than the brief allows up to ${say('frequency', fallenUpTo, 'Hz')}.`;
  return `${from} A Butterworth high-pass of order ${order} at ${say('frequency', corner, 'Hz')} prevents that, and costs ${say('level', costAtLowest, 'dB', 2)} at the lowest tone of the band.${breaks}`;
}
