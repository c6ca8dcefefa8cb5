import type { Impossible } from '@airspring/core/fault';
import { format, si } from '@airspring/core/quantity';
import { nest, type Nesting, partsOf } from '../nesting/index.js';
import { type Board, board, butt, type CutoutInput, type Joint, mitre, type PanelBox, panelBox, rabbet } from '../panel/index.js';
import type { Work, WorkHole, WorkTools } from './work.js';

const metres = (value: number) => si('length', value);

const jointOf = ({ joint }: WorkTools): Joint =>
  joint === undefined || 'butt' in joint ? butt : 'mitre' in joint ? mitre : rabbet({ depth: metres(joint.rabbet.depth) });
