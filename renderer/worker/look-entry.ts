import { lookHandlers } from './look-handlers.ts';
import { serve } from './serve.ts';

serve(
  {
    postMessage: (told) => self.postMessage(told),
    addEventListener: (type, listener) => self.addEventListener(type, listener),
  },
  lookHandlers,
);
