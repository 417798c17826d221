import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { BROUGHT_IN } from '../desk/connect.ts';

/** Lists anew, while an element is on the page, when files were taken in that the window did not ask for. */
export class BroughtInController implements ReactiveController {
  readonly #list: () => void;

  constructor(host: ReactiveControllerHost, list: () => void) {
    this.#list = list;
    host.addController(this);
  }

  hostConnected(): void {
    window.addEventListener(BROUGHT_IN, this.#list);
  }

  hostDisconnected(): void {
    window.removeEventListener(BROUGHT_IN, this.#list);
  }
}
