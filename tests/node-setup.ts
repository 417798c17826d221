import { beforeEach } from 'vitest';
import { seedDraws, seedOf } from './seeded-draws.ts';

// What a test draws of the app's questions is the same in every run, whatever ran before it.
beforeEach(({ task }) => seedDraws({ seed: seedOf(task.name), turn: 0 }));
