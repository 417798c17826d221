import { questionNamed } from '../../core/engine/questions.ts';
import { serve } from './serve.ts';

serve(
  {
    postMessage: (message) => self.postMessage(message),
    addEventListener: (type, listener) => self.addEventListener(type, listener),
  },
  questionNamed,
);
