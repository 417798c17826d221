import { cardHandlers } from './card-handlers.ts';
import { serve } from './serve.ts';

serve(
  {
    postMessage: (told) => self.postMessage(told),
    addEventListener: (type, listener) => self.addEventListener(type, listener),
  },
  cardHandlers,
);
