import { judgeAlike } from './alike-pages.js';
import { formulaPages, judgePages, standingFormulaPages } from './every-page.js';

judgePages('pages of formulas that together have every element of all', standingFormulaPages);
if (!process.env.MANY_CASES) judgeAlike('every page of a formula', formulaPages);
