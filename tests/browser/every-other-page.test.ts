import { judgePages, otherPages } from './every-page.js';

judgePages('every page that is not of a formula', otherPages);
