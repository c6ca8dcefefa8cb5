import { formulaPages, judgePages } from './every-page.js';

judgePages('every page of a formula', formulaPages);
