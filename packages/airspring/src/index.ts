/** What may a brief say, and which fields may a kind of box add to it? */
export type { BriefFor, ReadBrief } from './brief/schema.js';
export type { BriefPart, Fields, ReadFields } from './brief/fields.js';
export { plainNumber, type QuantityField, quantity, wholeNumber } from './brief/quantity-text.js';
/** Which models of voice coils and suspensions may a brief ask for, and how do you add one? */
export type { CoilChoice, SuspensionChoice, WrittenModel } from './brief/driver-models.js';
export { standardCoils, standardSuspensions } from './brief/standard-models.js';
/** How does a brief become boxes, and which schema do editors check a brief with? */
export { standardAlignments } from './brief/alignment.js';
export type { AlignmentChoice } from './job/alignment-choice.js';
export { briefFields, briefJsonSchema, type DesignOptions, design } from './design.js';
export type { BriefOptions } from './kind/brief-options.js';
export type { BriefField } from './brief/field-list.js';
export { fieldsText } from './words/fields-text.js';
/** How large must a box be to play so deep and so loud, and what do many builds of a box scatter? */
export { type TradeOffOptions, type TradeOffs, tradeOffs } from './trade-offs.js';
export type { SmallestBox } from './workers/smallest.js';
export { type ScatteredOptions, scattered } from './scattered.js';
/** How is that work shared among workers? */
export { serve } from './workers/serve.js';
export type { Thread, WorkerThread } from './workers/threads.js';
export { type Watched, type Workers, type WorkersOptions, workers } from './workers/workers.js';
export type { Chunk } from './workers/chunk.js';
/** In which units is the report of a brief written? */
export { unitsOf } from './brief/units.js';
/** What does a brief ask for, in SI units? */
export type { DriverChoice, Job } from './job/job.js';
/** What is a kind of box, and how do you write one? */
export type { AlignedPoint, BoxKind, BoxOpening, Variant } from './kind/box-kind.js';
export type { Axis, Made, Parts, Point } from './kind/point.js';
export type { Filled, Finished, KindRecord } from './kind/kind-record.js';
export type { KindWish, Load, Wish } from './kind/wish.js';
export { acousticsOf } from './kind/box-kind.js';
export {
  boardOf,
  type ChamberOfBox,
  type DesignVent,
  type Hole,
  holeAt,
  type Panel,
  type PlacedBoard,
  type RawMargin,
} from './kind/build-record.js';
export { aperiodic } from './kind/aperiodic.js';
export { capacitorBoxKind } from './kind/capacitor.js';
export { closed } from './kind/closed.js';
export { contentsOf, driverLayout, driverRoom, leastFor } from './kind/drivers.js';
export { foldedLine } from './kind/line.js';
export { steppedLine } from './kind/stepped-line.js';
export { taperedLine } from './kind/tapered-line.js';
export { noParts } from './kind/no-parts.js';
export { openBaffle } from './kind/open-baffle.js';
export type { Meaning, Phrase } from './kind/phrase.js';
export { radiatorBox } from './kind/radiator.js';
export { type Brief, standard } from './kind/standard.js';
export { bandPass } from './kind/band-pass.js';
export { parallelBandPass } from './kind/parallel-band-pass.js';
export { seriesBandPass } from './kind/series-band-pass.js';
export { flaredVented, flaredVentedWith } from './kind/flared-vented.js';
export type { FlareForm, FlareMaker, VentFlare } from './kind/flare-form.js';
export { slotVented } from './kind/slot-vented.js';
export { tunedByVents } from './kind/tuned-by-vent.js';
export type { Vents, VentTold } from './kind/vents.js';
export { ventedFields } from './kind/vented-fields.js';
export { vented } from './kind/vented.js';
/** How does a kind of box answer questions about alignments? */
export { alignsIn, type SolvedBoxes } from './kind/aligns.js';
/** What is the answer to a brief? */
export type { Answer, DriverAccount, Met, NotMet } from './record/answer.js';
export type { Asked } from './job/job.js';
export type { At, LoadTold } from './record/load.js';
export type { Below, Curves, Guard, Margin, Stretch, Told } from './record/design-parts.js';
export type { GainAt, HeardTold, JoinedTold, PlayedAt } from './record/heard-told.js';
export type { Between, BetweenVas, Uncertain } from './record/estimate.js';
export type { NearAlignment, ReachedGoal } from './record/alignments.js';
export type { Design } from './record/design-record.js';
export type { WishPrice } from './record/prices.js';
export type { ScatterTold } from './record/scatter.js';
export type { DriverVerdict } from './record/per-driver.js';
/** What does an existing box do now, and what could be changed about it? */
export { type Retrofit, retrofit } from './standing/retrofit.js';
export { type RankedVent, rankedVents } from './standing/ranked-vents.js';
export type { Account } from './standing/account.js';
export type { Band, Bands } from './standing/bands.js';
export type { ChangedBox, Row, RowDone, RowNot } from './standing/row.js';
export type { Readings } from './standing/measured-readings.js';
export type { Purpose, TubeOption, TubeSet } from './standing/tubes.js';
export type { MeasuredDriver } from './standing/measured-driver.js';
/** How much do boxes leak whose drivers are known from their impedance? */
export type { Leaks } from './standing/measured-leaks.js';
export type { ChangedDesign } from './standing/whole.js';
export type { NewHole, Part, Step } from './standing/work.js';
export { changedDesignText } from './words/changed-design-text.js';
export { retrofitText } from './words/retrofit-text.js';
/** How are an answer and its curves printed as text? */
export { sketchText } from './words/sketch.js';
export { designText, reportText } from './words/report-text.js';
export { tradeOffsText } from './words/trade-offs-text.js';
/** What is a box built from, or a change of a box that stands? */
export { type ToBuild, type ToBuildOptions, toBuild } from './to-build.js';
/** Which pages about a design can be printed? */
export { printPage } from './page/page.js';
export { changedDesignPage, retrofitPage } from './page/retrofit-page.js';
