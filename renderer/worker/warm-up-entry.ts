import { warmUpHandlers } from './warm-up-handlers.ts';
import { serve } from './serve.ts';

serve(
  {
    postMessage: (told) => self.postMessage(told),
    addEventListener: (type, listener) => self.addEventListener(type, listener),
  },
  warmUpHandlers,
);
