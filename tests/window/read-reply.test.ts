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
  expect(await readReply(new Response(String(told(result).body)))).toEqual(result);
});

test('a long list stands one member a line', () => {
  expect(String(told(success(LIST)).body).split('\n')).toHaveLength(LIST.length + 2);
});

test('a list that comes in many parts, cut anywhere, is read as it was', async () => {
  const bytes = new TextEncoder().encode(String(told(success(LIST)).body).replaceAll('another', 'änother'));
  const parts = new ReadableStream<Uint8Array<ArrayBuffer>>({
    start: (stream) => {
      for (let at = 0; at < bytes.length; at += 7) stream.enqueue(bytes.slice(at, at + 7));
      stream.close();
    },
  });
  const read = JSON.stringify(await readReply(new Response(parts)));
  expect(read.replaceAll('änother', 'another')).toBe(JSON.stringify(success(LIST)));
});

test('what is no answer is refused', async () => {
  await expect(readReply(new Response('<html>'))).rejects.toThrow(SyntaxError);
  await expect(readReply(new Response('{"ok":true,"value":[\n{"a":1},\n'))).rejects.toThrow(SyntaxError);
  await expect(readReply(new Response('{"ok":true,"value":[\n{"a":1},\n{"b"\n]}'))).rejects.toThrow(SyntaxError);
});
