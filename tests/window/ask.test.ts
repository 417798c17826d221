import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { failure, type Result, success } from '../../core/base/result.ts';
import { Ask, type AskOptions, PATIENCE, type Report } from '../../renderer/session/ask.ts';
import { partWords } from '../../renderer/words/parts.ts';

interface Asked {
  readonly request: string;
  readonly report: Report<string, string>;
  readonly answer: (result: Result<string>) => Promise<void>;
}

/** A question whose answers are given by hand. */
function begun(options: AskOptions = {}): { readonly ask: Ask<string, string, string>; readonly asked: Asked[] } {
  const asked: Asked[] = [];
  const run = (request: string, report: Report<string, string>): Promise<Result<string>> =>
    new Promise((resolve) => {
      const answer = async (result: Result<string>): Promise<void> => {
        resolve(result);
        await vi.advanceTimersByTimeAsync(0);
      };
      asked.push({ request, report, answer });
    });
  return { ask: new Ask(run, options), asked };
}

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe('a question that is asked again and again', () => {
  it('is asked once for a key, and anew for another', async () => {
    const { ask, asked } = begun();
    void ask.ask('one', 'a');
    void ask.ask('one', 'a');
    void ask.ask('two', 'b');
    expect(asked.map(({ request }) => request)).toEqual(['one', 'two']);
    ask.clear();
    void ask.ask('two', 'b');
    expect(asked).toHaveLength(3);
  });

  it('the newest wins: the older is cancelled at once, and what still comes of it is ignored', async () => {
    const { ask, asked } = begun();
    const older = ask.ask('one');
    const newer = ask.ask('two');
    expect(asked.map(({ report }) => report.signal.aborted)).toEqual([true, false]);
    asked[0]?.report.value('old');
    await asked[0]?.answer(success('old'));
    expect([await older, ask.answer.status, ask.answer.value]).toEqual([null, 'pending', null]);
    await asked[1]?.answer(success('new'));
    expect([await newer, ask.answer.value]).toEqual(['new', 'new']);
  });

  it('the answer before stays while a new one is pending, and is marked once that is late', async () => {
    const { ask, asked } = begun({ keeps: true });
    void ask.ask('one', 'a');
    await asked[0]?.answer(success('first'));
    let notified = 0;
    ask.subscribe(() => (notified += 1));
    void ask.ask('two', 'b');
    await vi.advanceTimersByTimeAsync(PATIENCE - 1);
    expect(ask.answer).toMatchObject({ status: 'pending', value: 'first', late: false });
    expect(notified).toBe(0);
    await vi.advanceTimersByTimeAsync(1);
    expect([ask.answer.late, notified]).toEqual([true, 1]);
    await asked[1]?.answer(success('second'));
    expect(ask.answer).toMatchObject({ status: 'done', value: 'second', late: false });
  });

  it('without that, the answer before goes when another is asked for', async () => {
    const { ask, asked } = begun();
    void ask.ask('one');
    await asked[0]?.answer(success('first'));
    void ask.ask('two');
    expect(ask.answer).toMatchObject({ status: 'pending', value: null });
  });

  it('how far it has come is shown once it is late, in hundredths', async () => {
    const { ask, asked } = begun();
    void ask.ask('one');
    asked[0]?.report.progress(0.2);
    expect(ask.answer.progress).toBeNull();
    await vi.advanceTimersByTimeAsync(PATIENCE);
    let notified = 0;
    ask.subscribe(() => (notified += 1));
    asked[0]?.report.progress(0.301);
    asked[0]?.report.progress(0.309);
    expect([ask.answer.progress, notified]).toEqual([0.3, 1]);
  });

  it('where it is shown from the beginning, how far it has come goes on after a first answer', () => {
    const { ask, asked } = begun({ patience: 0 });
    void ask.ask('one');
    asked[0]?.report.progress(0.9);
    asked[0]?.report.value('first');
    asked[0]?.report.progress(0.25);
    expect(ask.answer).toMatchObject({ status: 'pending', value: 'first', late: false, progress: 0.25 });
  });

  it('a failure has its sentence, and can be asked again; what is known of the question stays', async () => {
    const { ask, asked } = begun({ keeps: true });
    void ask.ask('one', 'a');
    await asked[0]?.answer(success('first'));
    void ask.ask('two', 'b');
    await asked[1]?.answer(failure('no', 'It is no card.'));
    expect(ask.answer).toMatchObject({ status: 'failed', value: null, message: 'It is no card.' });
    void ask.again();
    asked[2]?.report.value('part');
    await asked[2]?.answer(failure('no', 'It is no card.'));
    expect([asked[2]?.request, ask.answer.status, ask.answer.value]).toEqual(['two', 'failed', 'part']);
    void ask.again();
    await asked[3]?.answer(success('whole'));
    void ask.again();
    expect(asked).toHaveLength(4);
  });

  it('stopping keeps what is known so far, and it can go on', async () => {
    const { ask, asked } = begun();
    void ask.ask('one', 'a');
    asked[0]?.report.value('part');
    ask.stop();
    expect(ask.answer).toMatchObject({ status: 'stopped', value: 'part' });
    expect(asked[0]?.report.signal.aborted).toBe(true);
    void ask.again();
    expect(asked[1]?.request).toBe('one');
  });

  it('waits for the first answer of another question, and is not asked if it is outdated by then', async () => {
    const first = begun();
    const { ask, asked } = begun({ after: first.ask });
    void first.ask.ask('read');
    void ask.ask('old', 'a');
    void ask.ask('new', 'b');
    await vi.advanceTimersByTimeAsync(PATIENCE);
    expect(asked).toEqual([]);
    first.asked[0]?.report.early('hands');
    await vi.advanceTimersByTimeAsync(0);
    expect(asked.map(({ request }) => request)).toEqual(['new']);
    expect([first.ask.early.value, first.ask.answer.status]).toEqual(['hands', 'pending']);
  });

  it('O6: a bug of our own ends it in plain words', async () => {
    const reported = vi.fn();
    vi.stubGlobal('reportError', reported);
    const ask = new Ask<string, never, string>(() => Promise.reject(new Error('out of chalk')));
    await ask.ask('one');
    expect(ask.answer).toMatchObject({ status: 'failed', message: partWords.calculationFailed });
    expect(reported).toHaveBeenCalledOnce();
    vi.unstubAllGlobals();
  });
});
