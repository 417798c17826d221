/**
 * Opens a start address as a browser does.
 * @param {string} address
 * @returns {Promise<{ readonly cookie: string, readonly key: string }>} both empty where it did not open
 */
export async function openStart(address) {
  const opened = await fetch(address, { redirect: 'manual' });
  const [cookie = ''] = (opened.headers.get('set-cookie') ?? '').split(';');
  const next = opened.headers.get('location') ?? '';
  return { cookie, key: /^\/#key=(.+)$/.exec(next)?.[1] ?? '' };
}

/**
 * The headers of a call of the page, once a start address let it in.
 * @param {string} address
 */
export async function letIn(address) {
  const { cookie, key } = await openStart(address);
  return { cookie, 'x-windrow-key': key, 'content-type': 'application/json' };
}
