import type { Fields } from '../../../core/card/document.ts';

/** What `line-edited` carries: fields to change, and the field that is being typed, if one is. */
export interface LineEdited {
  readonly change: Fields;
  readonly doing: string;
}
