import type { AppContext } from '../../shell/app-context.ts';
import { PracticeRoom } from './practice-room.ts';

const rooms = new WeakMap<AppContext, PracticeRoom>();

/** The one room of an app, made at the first visit. */
export function roomOf(app: AppContext): PracticeRoom {
  const known = rooms.get(app);
  if (known !== undefined) return known;
  const room = new PracticeRoom(app, startWorker);
  rooms.set(app, room);
  return room;
}

function startWorker(): Worker {
  return new Worker(new URL('../../worker/warm-up-entry.ts', import.meta.url), { type: 'module' });
}
