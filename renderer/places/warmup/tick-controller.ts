import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** Draws its element anew each second while a clock is shown. */
export class TickController implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  readonly #shown: () => boolean;
  #timer: ReturnType<typeof setInterval> | undefined;

  constructor(host: ReactiveControllerHost, shown: () => boolean) {
    this.#host = host;
    this.#shown = shown;
    host.addController(this);
  }

  hostConnected(): void {
    this.#timer = setInterval(() => {
      if (this.#shown()) this.#host.requestUpdate();
    }, 1000);
  }

  hostDisconnected(): void {
    clearInterval(this.#timer);
  }
}
