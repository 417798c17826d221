import { letIn as headersOfPage } from '../main/support/let-in.mjs';

/** The headers of a page that was let in, each of which a call needs, and what they hold. */
export type Secrets = Readonly<Record<string, string>>;

/** Opens a start address as a browser does. How a client gets in stands here alone. */
export async function letIn(address: string): Promise<Secrets> {
  const { 'content-type': _, ...secrets } = await headersOfPage(address);
  if (Object.values(secrets).includes('')) throw new Error('the start address let nobody in');
  return secrets;
}
