/** Writes the pages of the formulas, their audit, the bibliography and the speed. */
import { fileURLToPath } from 'node:url';
import { writeAudit } from './src/audit/write.js';

console.log(`${writeAudit(fileURLToPath(new URL('..', import.meta.url)))} pages written`);
