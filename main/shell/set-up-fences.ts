import type { App, Session, WebContents } from 'electron';
import { isOurPage } from './origin.ts';

/** No page gets any permission, asked for or checked, and nothing is loaded from outside. */
export function setUpPermissions(session: Session): void {
  session.setPermissionRequestHandler((_contents, _permission, answer) => answer(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
  session.setSpellCheckerEnabled(false);
  session.webRequest.onBeforeRequest(({ url }, answer) => answer({ cancel: !isLocal(url) }));
}

/** Our own pages and the developer tools, which are no network. */
function isLocal(url: string): boolean {
  return isOurPage(url) || url.startsWith('devtools://');
}

/** A window shows its own page and nothing else: no other address, no other window, no guest page. */
export function setUpNavigation(app: App): void {
  app.on('web-contents-created', (_event, contents) => fenceIn(contents));
}

function fenceIn(contents: WebContents): void {
  contents.on('will-navigate', (event) => event.preventDefault());
  contents.on('will-frame-navigate', (event) => event.preventDefault());
  contents.on('will-redirect', (event) => event.preventDefault());
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
}
