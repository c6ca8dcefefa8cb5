/** What is a box built from, and how is that written down? */
export { type BuildFiles, filesToBuildFrom } from './files.js';
export type { BuildFile } from './file.js';
/** How is such a folder handed over as one file? */
export { archiveOf } from './archive.js';
/** What must be known of a box for that? */
export type {
  WorkChange,
  WorkOpening,
  WorkPlate,
  WorkSetTube,
  WorkTube,
  WorkTubeSet,
} from './change.js';
export type { Work, WorkBoard, WorkBox, WorkFlare, WorkStep, WorkTools, WorkVent } from './work.js';
export type { WorkHole } from './hole.js';
export type { WorkImpedance, WorkPoint } from './impedance.js';
