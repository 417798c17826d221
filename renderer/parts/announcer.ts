/** How long words are gathered before they are spoken, in ms; a listener hears one sentence, not three. */
const GATHERING = 40;

let region: HTMLElement | undefined;
let waiting: string[] = [];

/**
 * Says something to people who use a screen reader, through the one polite live region of the
 * page. Words said close together are spoken together, each once.
 */
export function announce(words: string): void {
  const place = (region ??= makeRegion());
  if (waiting.length === 0) {
    place.textContent = '';
    setTimeout(() => {
      place.textContent = waiting.join(' ');
      waiting = [];
    }, GATHERING);
  }
  if (waiting.at(-1) !== words) waiting.push(words);
}

function makeRegion(): HTMLElement {
  const place = document.createElement('div');
  place.className = 'wr-unseen';
  place.id = 'announcer';
  place.setAttribute('role', 'status');
  place.setAttribute('aria-live', 'polite');
  document.body.append(place);
  return place;
}
