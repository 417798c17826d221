import { questionNamed } from '../../core/engine/questions.ts';
import type { Alive } from './messages.ts';
import { serve } from './serve.ts';

serve(
  {
    postMessage: (message) => self.postMessage(message),
    addEventListener: (type, listener) => self.addEventListener(type, listener),
  },
  questionNamed,
);

const alive: Alive = { type: 'alive', lock: crypto.randomUUID() };
void navigator.locks.request(alive.lock, async () => {
  self.postMessage(alive);
  // Held as long as this worker lives.
  await new Promise(() => undefined);
});
