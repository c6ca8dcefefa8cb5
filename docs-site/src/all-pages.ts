/** The pages of the site, read once: every one of them asks for all. */
import { getCollection } from 'astro:content';

export const allPages = await getCollection('docs');
