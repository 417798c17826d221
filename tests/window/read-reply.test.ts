import { expect, test } from 'vitest';
import { failure, success } from '../../core/base/result.ts';
import { told } from '../../main/host/replies.ts';
import { readReply } from '../../renderer/desk/read-reply.ts';

const LIST = Array.from({ length: 501 }, (_, place) => ({ place, text: `a line,\n another "one"\n]}`, none: null }));

test.each([
  ['a long list', success(LIST)],
  ['a short one', success(LIST.slice(0, 500))],
  ['an empty one', success([])],
  ['a refusal', failure('not-found', 'It is not there.')],
])('what the host answers is read as it was: %s', async (_, result) => {
  expect(await readReply(String(told(result).body))).toEqual(result);
});

test('a long list stands one member a line', () => {
  expect(String(told(success(LIST)).body).split('\n')).toHaveLength(LIST.length + 2);
});

test('what is no answer is refused', async () => {
  await expect(readReply('<html>')).rejects.toThrow(SyntaxError);
  await expect(readReply('{"ok":true,"value":[\n{"a":1},\n{"b"\n]}')).rejects.toThrow(SyntaxError);
});
