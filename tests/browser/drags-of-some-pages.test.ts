import { judgeDrags } from './drags.js';
import { live } from './live-pages.js';

judgeDrags(live.filter((_, i) => i % 2 === 0));
