import { defineCollection } from 'astro:content';
import { docsLoader } from '@astrojs/starlight/loaders';
import { docsSchema } from '@astrojs/starlight/schema';
import { z } from 'astro/zod';

export const collections = {
  docs: defineCollection({
    loader: docsLoader(),
    schema: docsSchema({
      extend: z.object({
        /** File of src/worked and of examples that the page shows, without `.ts`. */
        example: z.string().optional(),
        /** What the page gives away in a list of pages, in one sentence. */
        summary: z.string().optional(),
        /** Place in the list of its section. */
        order: z.number().optional(),
        minutes: z.number().optional(),
        keywords: z.array(z.string()).default([]),
      }),
    }),
  }),
};
