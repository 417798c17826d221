/** The headers of a page that was let in, each of which a call needs, and what they hold. */
export type Secrets = Readonly<Record<string, string>>;

/** Opens a start address as a browser does. How a client gets in stands here alone. */
export async function letIn(address: string): Promise<Secrets> {
  const welcome = await fetch(address, { redirect: 'manual' });
  const cookie = welcome.headers.get('set-cookie')?.split(';')[0] ?? '';
  if (cookie === '') throw new Error('the start address let nobody in');
  return { cookie };
}
