import { demonstration } from '../../../demonstration.js';

export const GET = () => new Response(demonstration.csv, { headers: { 'content-type': 'text/csv' } });
