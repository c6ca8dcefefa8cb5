import { demonstration } from '../../../demonstration.js';

export const GET = () => new Response(demonstration.text, { headers: { 'content-type': 'application/json' } });
