/** How the host begins and ends an answer that is a long list: between, one member a line. */
const FIRST = '{"ok":true,"value":[';
const LAST = ']}';

/** The plain data of the host's answer; a long list is read line by line as it comes, so that the window goes on meanwhile. */
export async function readReply(reply: Response): Promise<unknown> {
  const value: unknown[] = [];
  const decoder = new TextDecoder();
  let rest = '';
  let isList = false;
  for (const reader = reply.body?.getReader(); ;) {
    const { done, value: bytes } = (await reader?.read()) ?? { done: true, value: undefined };
    rest += decoder.decode(bytes, { stream: !done });
    const lines = rest.split('\n');
    isList ||= lines.length > 1 && lines[0] === FIRST;
    if (isList) {
      rest = lines.pop() ?? '';
      for (const line of lines)
        if (line !== FIRST) value.push(JSON.parse(line.endsWith(',') ? line.slice(0, -1) : line));
    }
    if (done) break;
  }
  if (!isList) return JSON.parse(rest);
  if (rest !== LAST) throw new SyntaxError('the answer was cut short');
  return { ok: true, value };
}
