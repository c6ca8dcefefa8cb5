/** Runs one netlist at a time in a thread of its own: a netlist that never ends can then be stopped. */
import { parentPort } from 'node:worker_threads';
import { Simulation } from 'eecircuit-engine';

const simulation = new Simulation();
await simulation.start();
parentPort.postMessage('ready');
parentPort.on('message', async (netlist) => {
  simulation.setNetList(netlist);
  const result = await simulation.runSim();
  parentPort.postMessage({ result, complaints: simulation.getError() });
});
