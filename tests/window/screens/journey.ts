import type { Windrow } from '../windrow.ts';

/** A state of the window that a person can come to. */
interface Screen {
  readonly name: string;
  /** The way to it from the screen before it; from the place just opened for the first. */
  readonly reach: (windrow: Windrow) => Promise<void>;
}

/** A walk through screens of one place, one after the other in one window. */
export interface Journey {
  readonly name: string;
  /** Where it begins: the id of a place, as the router has it. */
  readonly place: string;
  /** The elements that no other journey answers for; each must be seen on this one. */
  readonly shows: readonly string[];
  /** The dialogs that open on the way, as "element: heading". */
  readonly dialogs: readonly string[];
  readonly screens: readonly Screen[];
}
