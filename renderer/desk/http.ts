import { failure, type Result } from '../../core/base/result.ts';
import type { Desk } from '../../main/desk/desk.ts';
import { deskWords } from '../words/desk.ts';
import { readReply } from './read-reply.ts';

/** How long to wait for an answer, in ms, before saying that nobody is there. */
const PATIENCE = 10_000;

/** The status of a reply to a tab or browser that the host does not know. */
const REFUSED = 403;

/** The code of the problem that this tab may make no calls. */
export const NOT_LET_IN = 'not-let-in';

/** How this tab speaks to the host that served it. */
interface Line {
  readonly send: typeof fetch;
  /** Undefined in a tab that was not let in: it need not ask. */
  readonly key: string | undefined;
}

/** The desk behind the local host that served this page: one POST a call with the key of this tab, arguments as a JSON list. */
export function httpDesk(line: Line): Desk {
  const calls = {
    get: (_: object, name: string | symbol) =>
      isCall(name) ? async (...given: readonly unknown[]) => await post(line, name, given) : undefined,
  };
  // The host knows which calls there are and what each answers: whatever is called here is sent there.
  return new Proxy({}, calls) as Desk;
}

/** What has a method `then` would be taken for a promise. */
function isCall(name: string | symbol): name is string {
  return typeof name === 'string' && name !== 'then';
}

async function post({ send, key }: Line, name: string, given: readonly unknown[]): Promise<Result<unknown>> {
  if (key === undefined) return failure(NOT_LET_IN, deskWords.notLetIn);
  try {
    const reply = await send(`/desk/${name}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', 'x-windrow-key': key },
      body: JSON.stringify(given),
      signal: AbortSignal.timeout(PATIENCE),
    });
    if (reply.status === REFUSED) return failure(NOT_LET_IN, deskWords.notLetIn);
    return (await readReply(reply)) as Result<unknown>;
  } catch {
    return failure('host-gone', deskWords.hostGone);
  }
}
