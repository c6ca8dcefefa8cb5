/**
 * Has Node read our packages as source. Other loaders keep the name of each function by a call wherever one is made; a search makes
 * very many, and takes a third longer by that.
 */
import { register } from 'node:module';

process.setSourceMapsEnabled(true);
register('./source-hooks.mjs', import.meta.url);
