import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** Takes files that are dropped anywhere on the window, while its element is on the page. */
export class FileDrop implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  readonly #dropped: (file: File) => void;
  #over = false;

  constructor(host: ReactiveControllerHost, dropped: (file: File) => void) {
    this.#host = host;
    this.#dropped = dropped;
    host.addController(this);
  }

  /** Whether a file is being dragged over the window. */
  get over(): boolean {
    return this.#over;
  }

  hostConnected(): void {
    window.addEventListener('dragover', this.#onDrag);
    window.addEventListener('dragleave', this.#onDrag);
    window.addEventListener('drop', this.#onDrop);
  }

  hostDisconnected(): void {
    window.removeEventListener('dragover', this.#onDrag);
    window.removeEventListener('dragleave', this.#onDrag);
    window.removeEventListener('drop', this.#onDrop);
  }

  readonly #onDrag = (event: DragEvent): void => {
    if (event.dataTransfer?.types.includes('Files') !== true) return;
    event.preventDefault();
    this.#show(event.type === 'dragover');
  };

  readonly #onDrop = (event: DragEvent): void => {
    const file = event.dataTransfer?.files[0];
    if (file === undefined) return;
    event.preventDefault();
    this.#show(false);
    this.#dropped(file);
  };

  #show(over: boolean): void {
    if (over === this.#over) return;
    this.#over = over;
    this.#host.requestUpdate();
  }
}
