import { type Result, success } from '../../../core/base/result.ts';
import type { AppContext } from '../../shell/app-context.ts';

/** Goes to the Table with a game of the journal, where it was. */
export async function openAtTable({ desk, session, go }: AppContext, id: string): Promise<Result<null>> {
  if (id !== session.id) {
    const record = await desk.openGame(id);
    if (!record.ok) return record;
    session.open(record.value);
  }
  go('table');
  return success(null);
}
