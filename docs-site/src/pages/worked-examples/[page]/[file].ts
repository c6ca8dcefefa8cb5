import type { APIContext } from 'astro';
import { demonstrations, filesOf } from '../../../demonstrations.js';
import { filesOfPages } from '../../../example/of-page.js';

const ofBriefs = () =>
  Object.entries(demonstrations).flatMap(([page, one]) =>
    filesOf(one).map(({ file, text, type }) => ({ page, file, type, body: text })),
  );

export const getStaticPaths = async () =>
  [...ofBriefs(), ...(await filesOfPages())].map(({ page, file, ...props }) => ({ params: { page, file }, props }));

interface Props {
  readonly type: string;
  readonly body: string | Uint8Array;
}

export const GET = ({ props: { body, type } }: APIContext<Props>) =>
  new Response(body as BodyInit, {
    headers: { 'content-type': typeof body === 'string' ? `${type}; charset=utf-8` : type },
  });
