import { request } from 'node:http';
import { join } from 'node:path';
import { contentOf, differences } from './content.ts';
import { type Form, formsFor } from './forms.ts';
import type { Attack, Troubles } from './table.ts';
import { Windrow } from './windrow.ts';

interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, unknown>>;
  readonly text: string;
}

/** Requests by the hundred with one thing wrong: nobody is let in, nothing is told, nothing is changed. */
export const DOORS: Attack = {
  name: 'HTTP: who asks, how, and for what',
  share: 2,
  run: async (trials, base) => {
    const windrow = await Windrow.start(join(base, 'desk'));
    const before = await contentOf(windrow.desk);
    const good = await formsFor(windrow);
    // What is refused must be refused for its one fault.
    await trials.try('a request without fault', async () => {
      const answers = [await send(windrow.port, good.page), await send(windrow.port, good.call)];
      return answers.every(({ status }) => status === 200)
        ? []
        : answers.map(({ status, text }) => `${status} ${text}`);
    });
    await trials.each(
      good.wrong,
      ({ name }) => name,
      async (form) => await wrongTroubles(windrow.port, form),
    );
    await trials.try('what they left', async () => differences(before, await contentOf(windrow.desk)));
    await windrow.kill();
  },
};

async function wrongTroubles(port: number, form: Form): Promise<Troubles> {
  const { status, headers, text } = await send(port, form);
  const troubles = status >= 500 ? [`status ${status}`] : [];
  if (Object.keys(headers).some((name) => name.startsWith('access-control'))) troubles.push('it lets other pages read');
  if (headers['set-cookie'] !== undefined) troubles.push('it gives a secret');
  if (/startHost|root:.*:0:/.test(text)) troubles.push('a file from outside was sent');
  if (form.wanted.includes(status)) return troubles;
  // A call of an unknown name is answered, with a refusal.
  const isRefusal = status === 200 && form.mayAnswer === true && text.startsWith('{"ok":false');
  return isRefusal ? troubles : [...troubles, `status ${status}: ${text.slice(0, 100)}`];
}

async function send(port: number, { method, path, headers, body }: Form): Promise<Answer> {
  return await new Promise((resolve, reject) => {
    const options = { host: '127.0.0.1', port, method, path, headers: { ...headers }, agent: false, timeout: 20_000 };
    const asked = request(options, (reply) => {
      let text = '';
      reply.setEncoding('utf8').on('data', (part: string) => (text += part));
      reply.on('end', () => resolve({ status: reply.statusCode ?? 0, headers: reply.headers, text }));
      reply.on('error', reject);
    });
    asked.on('error', reject);
    asked.on('timeout', () => asked.destroy(new Error('nobody answered')));
    asked.end(body);
  });
}
