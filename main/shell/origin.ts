/** The window's own scheme: no file and no network address is ever loaded. */
export const SCHEME = 'app';
const HOST = 'windrow';
export const START_PAGE = `${SCHEME}://${HOST}/index.html`;

/** True for an address of the window's own pages. */
export function isOurPage(address: string): boolean {
  const url = URL.parse(address);
  return url?.protocol === `${SCHEME}:` && url.host === HOST;
}

/** True for the one page that the window shows, at whatever place in it. */
export function isStartPage(address: string): boolean {
  return address.split('#', 1)[0] === START_PAGE;
}

/** True for what a page of ours made to be saved as a file: a backup, a card, a game. */
export function isOurExport(address: string): boolean {
  const url = URL.parse(address);
  return url?.protocol === 'blob:' && isOurPage(url.pathname);
}
