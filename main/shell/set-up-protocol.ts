import type { Protocol } from 'electron';
import { SAFE_HEADERS } from '../window/headers.ts';
import { readWindowFile } from '../window/window-files.ts';
import { isOurPage, SCHEME } from './origin.ts';

/** Tells Electron of the window's scheme; only possible before the app is ready. */
export function setUpScheme(protocol: Protocol): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true } },
  ]);
}

/** Serves the built window from its folder, each file with the content policy. */
export function setUpProtocol(protocol: Protocol, root: string): void {
  protocol.handle(SCHEME, async (request) => await answerRequest(request, root));
}

/** Reading only, our own host only, and only what lies inside the folder. */
async function answerRequest({ method, url }: Pick<Request, 'method' | 'url'>, root: string): Promise<Response> {
  if (method !== 'GET' && method !== 'HEAD') return plain(405, 'Only reading is possible here.');
  const path = isOurPage(url) ? URL.parse(url)?.pathname : undefined;
  const file = path === undefined ? undefined : await readWindowFile(root, path);
  if (file === undefined) return plain(404, 'There is nothing here.');
  const body = method === 'HEAD' ? null : Uint8Array.from(file.body);
  return new Response(body, { status: 200, headers: { ...SAFE_HEADERS, 'content-type': file.type } });
}

function plain(status: number, words: string): Response {
  return new Response(words, { status, headers: { ...SAFE_HEADERS, 'content-type': 'text/plain; charset=utf-8' } });
}
