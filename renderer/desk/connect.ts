import type { Desk } from '../../main/desk/desk.ts';
import { httpDesk } from './http.ts';
import { takeKey } from './key.ts';

declare global {
  interface Window {
    /** Put there by the preload of the desktop shell; absent in a browser. */
    readonly windrowDesk?: Desk;
  }
}

/** The event of the window by which the desktop shell tells that it took in files: lists are to be made anew. */
export const BROUGHT_IN = 'windrow-brought-in';

/** The desk of this window: the desktop shell's if there is one, else the local host's. */
export function connectDesk(): Desk {
  return window.windrowDesk ?? httpDesk({ send: (...request) => fetch(...request), key: takeKey() });
}
