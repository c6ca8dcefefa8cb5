/** All may be read; the list of pages has an address only where the site has one. */
export const GET = ({ site }: { readonly site?: URL }) =>
  new Response(`User-agent: *\nAllow: /\n${site ? `Sitemap: ${new URL('sitemap-index.xml', site).href}\n` : ''}`);
