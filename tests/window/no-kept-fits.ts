import { success } from '../../core/base/result.ts';
import type { Desk } from '../../main/desk/desk.ts';

/** A desk that keeps no games of cards. */
export const NO_KEPT_FITS: Pick<Desk, 'readFit' | 'keepFit'> = {
  readFit: () => Promise.resolve(success(null)),
  keepFit: () => Promise.resolve(success(null)),
};
