import { failure, type Result } from '../../core/base/result.ts';
import type { Desk } from '../../main/desk/desk.ts';
import { deskWords } from '../words/desk.ts';

/** How long to wait for an answer, in ms, before saying that nobody is there. */
const PATIENCE = 10_000;

/** The desk behind the local host that served this page: one POST a call, arguments as a JSON list. */
export function httpDesk(send: typeof fetch): Desk {
  const calls = {
    get: (_: object, name: string | symbol) =>
      isCall(name) ? async (...given: readonly unknown[]) => await post(send, name, given) : undefined,
  };
  // The host knows which calls there are and what each answers: whatever is called here is sent there.
  return new Proxy({}, calls) as Desk;
}

/** What has a method `then` would be taken for a promise. */
function isCall(name: string | symbol): name is string {
  return typeof name === 'string' && name !== 'then';
}

async function post(send: typeof fetch, name: string, given: readonly unknown[]): Promise<Result<unknown>> {
  try {
    const reply = await send(`/desk/${name}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(given),
      signal: AbortSignal.timeout(PATIENCE),
    });
    return await reply.json();
  } catch {
    return failure('host-gone', deskWords.hostGone);
  }
}
