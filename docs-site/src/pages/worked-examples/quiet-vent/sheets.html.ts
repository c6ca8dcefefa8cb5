import { demonstration } from '../../../demonstration.js';

export const GET = () =>
  new Response(demonstration.sheetsPage, { headers: { 'content-type': 'text/html; charset=utf-8' } });
