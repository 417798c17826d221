import type { TableKind } from '../table/kinds.ts';
import { DEMO_FITS, DEMO_MARK } from './demo-fit.ts';
import type { CardFit } from './table-figures.ts';

/** The fit that ships with Windrow, for the demo card alone; undefined for any other card, by its mark. */
export function shippedFit(mark: string, kind: TableKind): CardFit | undefined {
  return mark === DEMO_MARK ? DEMO_FITS.find((each) => each.kind === kind) : undefined;
}
