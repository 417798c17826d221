import type { AppContext } from '../../shell/app-context.ts';
import { CardRoom } from './card-room.ts';

const rooms = new WeakMap<AppContext, CardRoom>();

/** The one room of an app, made at the first visit. */
export function roomOf(app: AppContext): CardRoom {
  const known = rooms.get(app);
  if (known !== undefined) return known;
  const room = new CardRoom(app, startWorker);
  rooms.set(app, room);
  return room;
}

function startWorker(): Worker {
  return new Worker(new URL('../../worker/card-entry.ts', import.meta.url), { type: 'module' });
}
