import { catalogueOf } from './catalogue.js';
import { index, profiles } from './generated/profiles.js';

/** The profiles of boards/, as the build compiled them. */
export const builtIn = catalogueOf(profiles, index);
