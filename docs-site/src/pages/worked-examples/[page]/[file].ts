import type { APIContext } from 'astro';
import { demonstrations, filesOf } from '../../../demonstrations.js';

export const getStaticPaths = () =>
  Object.entries(demonstrations).flatMap(([page, one]) =>
    filesOf(one).map(({ file, text, type }) => ({ params: { page, file }, props: { text, type } })),
  );

export const GET = ({ props: { text, type } }: APIContext<{ text: string; type: string }>) =>
  new Response(text, { headers: { 'content-type': `${type}; charset=utf-8` } });
