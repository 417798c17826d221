import card from '../core/card/FORMAT.md?raw';
import game from '../core/game/FORMAT.md?raw';
import journal from '../core/journal/FORMAT.md?raw';
import warmup from '../core/warmup/FORMAT.md?raw';
import desk from './desk/FORMAT.md?raw';

/** The pages about the forms of files, as they are kept beside the code: they ship with the app. */
export const FORMAT_PAGES: readonly string[] = [desk, game, card, warmup, journal];
