import { readCardFile } from '../../core/card/file.ts';
import { inspectCard } from '../../core/card/inspect.ts';
import { cardStatistics } from '../../core/card/statistics.ts';
import { linesOf } from '../../core/card/summary.ts';
import type { CardCalls } from './card-calls.ts';
import type { Handlers } from './serve.ts';

/** How each call of the Card place is answered. */
export const cardHandlers: Handlers<CardCalls> = {
  *open({ text }) {
    yield undefined;
    const read = readCardFile(text);
    if (!read.ok) return { ok: false, message: read.problem.message };
    const { document, problems, card } = read.value;
    const good = linesOf(card).map(({ section, pattern, ways }) => ({ section, pattern, ways: ways.length }));
    return { ok: true, value: { document, problems, good } };
  },
  *examine({ text }) {
    const read = readCardFile(text);
    if (!read.ok) return { ok: false, message: read.problem.message };
    yield undefined;
    const { document, card } = read.value;
    const { problems, findings } = inspectCard(document, read.value);
    yield undefined;
    return { ok: true, value: { problems, findings, statistics: cardStatistics(card) } };
  },
};
