import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import starlight from '@astrojs/starlight';
import { defineConfig } from 'astro/config';
import rehypeKatex from 'rehype-katex';
import remarkMath from 'remark-math';
import starlightLinksValidator from 'starlight-links-validator';
import starlightTypeDoc from 'starlight-typedoc';
import { writeAudit } from './src/audit/write.js';
import { codeInks } from './src/code-inks.js';
import { cutEquationStyles } from './src/equation-styles.js';
import { equations } from './src/equations.js';
import { refuseLostTexts } from './src/lost-texts.js';
import { tables } from './src/tables.js';
import { typeDocOptions } from './src/type-doc.js';
import { unitTies } from './src/unit-ties.js';

/** Packages are read as source: neither the pages nor their scripts wait for a build. */
const conditions = ['@airspring/source', 'module'];
const floors = ['../packages/core/src', '../packages/transient/src', '../packages/workshop/src'].flatMap((source) =>
  readdirSync(new URL(source, import.meta.url))
    .map((floor) => `${source}/${floor}/index.ts`)
    // A floor without a list of exports is internal.
    .filter((index) => existsSync(new URL(index, import.meta.url))),
);

/** Starlight brings content, routes and checks; every piece of its look is replaced by one of ours. */
const ours = [
  'Head',
  'Header',
  'PageFrame',
  'TwoColumnContent',
  'ContentPanel',
  'PageTitle',
  'MarkdownContent',
  'Footer',
];
const none = ['Sidebar', 'PageSidebar', 'ThemeProvider', 'ThemeSelect', 'Search', 'Banner', 'Hero'];

export default defineConfig({
  root: import.meta.dirname,
  // Addresses in full, and the list of them, are made only where the build is told where the site will stand.
  ...(process.env.SITE_ADDRESS && { site: process.env.SITE_ADDRESS }),
  cacheDir: '../.cache/astro',
  trailingSlash: 'always',
  devToolbar: { enabled: false },
  prefetch: false,
  markdown: {
    remarkPlugins: [remarkMath],
    rehypePlugins: [[rehypeKatex, { strict: 'error', throwOnError: true }], equations, tables, unitTies],
    shikiConfig: {
      theme: 'css-variables',
      transformers: [codeInks],
    },
  },
  integrations: [
    // Formula, audit and bibliography pages are made from docstrings and the ledger before anything is read.
    { name: 'audit', hooks: { 'astro:config:setup': () => void writeAudit(join(import.meta.dirname, '..')) } },
    {
      name: 'whole',
      hooks: {
        'astro:build:done': ({ pages }) => refuseLostTexts(join(import.meta.dirname, 'src/content/docs'), pages),
      },
    },
    { name: 'equation-styles', hooks: { 'astro:build:done': ({ dir }) => cutEquationStyles(fileURLToPath(dir)) } },
    starlight({
      title: 'Airspring',
      tagline: 'The air in a box is a spring',
      customCss: ['./src/styles/site.css'],
      components: {
        ...Object.fromEntries(ours.map((name) => [name, `./src/components/frame/${name}.astro`])),
        ...Object.fromEntries(none.map((name) => [name, './src/components/frame/Nothing.astro'])),
        SkipLink: './src/components/frame/SkipLink.astro',
      },
      expressiveCode: false,
      markdown: { headingLinks: false },
      credits: false,
      sidebar: [],
      tableOfContents: { minHeadingLevel: 2, maxHeadingLevel: 3 },
      plugins: [
        starlightTypeDoc({
          entryPoints: [...floors, '../packages/airspring/src/index.ts'],
          tsconfig: './tsconfig.json',
          typeDoc: typeDocOptions,
        }),
        starlightLinksValidator({ errorOnRelativeLinks: false }),
      ],
    }),
  ],
  vite: {
    plugins: [
      {
        name: 'without-starlight-styles',
        enforce: 'pre',
        load: (id) => (/@astrojs\/starlight\/style\/[a-z-]+\.css$/.test(id) ? '' : undefined),
      },
    ],
    resolve: { conditions: [...conditions, 'browser', 'development|production'] },
    ssr: {
      resolve: { conditions: [...conditions, 'node', 'development|production'] },
      noExternal: ['airspring', '@airspring/core', '@airspring/transient', '@airspring/workshop'],
    },
    worker: { format: 'es' },
    // Scripts stay files of their own: the server forbids inline ones.
    build: { assetsInlineLimit: 0 },
    server: { fs: { allow: ['..'] } },
  },
});
