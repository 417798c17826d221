import type { App, Session, WebContents } from 'electron';
import { isOurExport, isOurPage, isStartPage } from './origin.ts';

/** The one thing that our page may do beside showing itself: copy a text, as it does with a deal's code. */
const COPY = 'clipboard-sanitized-write';

/** No page gets any permission, asked for or checked, save ours to copy; and nothing is loaded from outside. */
export function setUpPermissions(session: Session): void {
  session.setPermissionRequestHandler((_contents, permission, answer, asked) =>
    answer(permission === COPY && asked.isMainFrame && isOurPage(asked.requestingUrl)),
  );
  session.setPermissionCheckHandler(
    (_contents, permission, _origin, asked) =>
      permission === COPY && asked.isMainFrame && isOurPage(asked.requestingUrl ?? ''),
  );
  session.setDevicePermissionHandler(() => false);
  session.setSpellCheckerEnabled(false);
  session.webRequest.onBeforeRequest(({ url }, answer) => answer({ cancel: !isLocal(url) }));
}

/** Our own pages, what they give out as files, and the developer tools, which are no network. */
function isLocal(url: string): boolean {
  return isOurPage(url) || isOurExport(url) || url.startsWith('devtools://');
}

/** A window shows its own page and nothing else: no other address, no other window, no guest page. It may load itself anew. */
export function setUpNavigation(app: App): void {
  app.on('web-contents-created', (_event, contents) => fenceIn(contents));
}

function fenceIn(contents: WebContents): void {
  contents.on('will-navigate', stopUnlessReload);
  contents.on('will-frame-navigate', stopUnlessReload);
  contents.on('will-redirect', (event) => event.preventDefault());
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
}

function stopUnlessReload(event: { readonly url: string; preventDefault(): void }): void {
  if (!isStartPage(event.url)) event.preventDefault();
}
