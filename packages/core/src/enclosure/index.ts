/** What is a box with its drivers, whatever its family? */
export { asGroup, type Drivers, driverElements, driverProbes, equivalentDriver, type System } from './system.js';
/** What does a driver do in a closed box? */
export { boxCompliance, type ClosedBoxInput, type ClosedBoxSpec, closedBox } from './closed-box.js';
/** What does a driver do in a vented box? */
export {
  type VentedBoxElements,
  type VentedBoxInput,
  type VentedBoxLosses,
  type VentedBoxSpec,
  ventedBox,
  ventedBoxElements,
} from './vented-box.js';
/** What do drivers unlike each other do together, in one volume or in several? */
export {
  type ChamberSpec,
  type ClosedChamberInput,
  type MixedBoxInput,
  type MixedBoxSpec,
  mixedBox,
  type VentedChamberInput,
} from './mixed-box.js';
/** How are unlike drivers wired? */
export { type DriverInNet, type DriverInNetSpec, type DriverNet, type DriverNetSpec, driversOf } from './driver-net.js';
