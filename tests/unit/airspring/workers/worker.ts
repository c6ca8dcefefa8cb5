import { parentPort, workerData } from 'node:worker_threads';
import { serve, standard } from 'airspring';
import { feltBox } from '../../../packages/stranger-kind/felt-box.js';

serve(parentPort, workerData === 'felt' ? { kinds: [...standard, feltBox] } : {});
