import type { DocumentOf, ProgressOf, QuestionName, RequestOf } from '../../core/engine/questions.ts';
import { WorkerClient, type WorkerLine } from './client.ts';
import { watchedWorker } from './watched-worker.ts';

/** All that the engine can be asked, as messages. */
export type EngineQuestions = {
  readonly [Name in QuestionName]: {
    readonly request: RequestOf<Name>;
    readonly progress: ProgressOf<Name>;
    readonly document: DocumentOf<Name>;
  };
};

/** A worker that answers all questions to the engine. */
export type Engine = WorkerClient<EngineQuestions>;

/** A fresh one; it starts with its first question. */
export function engine(start: () => WorkerLine = watchedWorker): Engine {
  return new WorkerClient<EngineQuestions>(start);
}
