import { life } from './life.ts';
import { optionTablesWith } from './options.ts';

/** What a comparison of tracks starts from, by the life figures that come with the app. */
export const optionTables = optionTablesWith(life);
