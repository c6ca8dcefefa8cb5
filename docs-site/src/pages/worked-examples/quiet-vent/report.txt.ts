import { demonstration } from '../../../demonstration.js';

export const GET = () =>
  new Response(demonstration.report, { headers: { 'content-type': 'text/plain; charset=utf-8' } });
