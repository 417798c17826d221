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

/** How long a person has not typed before words about it are spoken, in ms. */
const PAUSE = 800;

/** Says what is true once a person pauses; what it was to say before is out of date then. */
export class PausedVoice {
  #timer: ReturnType<typeof setTimeout> | undefined;

  /** Empty words only take back the ones before. */
  say(words: string): void {
    this.stop();
    if (words !== '') this.#timer = setTimeout(() => announce(words), PAUSE);
  }

  stop(): void {
    clearTimeout(this.#timer);
  }
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
