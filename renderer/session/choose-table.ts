import type { TableKind } from '../../core/table/kinds.ts';
import type { AppContext } from '../shell/app-context.ts';

/** Chooses the kind of table: for games to come, and for the one at hand as long as that goes on. Others keep theirs. */
export function chooseTable(
  { preferences, session }: Pick<AppContext, 'preferences' | 'session'>,
  table: TableKind,
): void {
  void preferences.change({ table });
  if (session.state.result === null) session.describe({ table });
}
