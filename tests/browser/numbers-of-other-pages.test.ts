import { judgeNumbers } from './every-number.js';
import { live } from './live-pages.js';

judgeNumbers(live.filter((_, i) => i % 2 === 1));
