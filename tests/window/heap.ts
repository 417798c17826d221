import type { CDPSession } from '@playwright/test';

/** What a window holds after everything that can go has gone; bytes of its JavaScript heap, its workers not counted. */
export interface Size {
  readonly heap: number;
  /**
   * The part of the heap that is code: what the browser compiled, at first plainly, then anew and larger
   * the more often it ran. It grows with use, not with what is kept, and comes to rest by itself.
   */
  readonly code: number;
  /** The rest: what the window keeps. */
  readonly data: number;
  readonly nodes: number;
  readonly listeners: number;
}

/** Measures a page; its session must have `Performance` on. */
export async function sizeOf(session: CDPSession): Promise<Size> {
  for (let round = 0; round < 3; round += 1) await session.send('HeapProfiler.collectGarbage');
  const { metrics } = await session.send('Performance.getMetrics');
  const of = (wanted: string): number => metrics.find(({ name }) => name === wanted)?.value ?? Number.NaN;
  const [heap, code] = [of('JSHeapUsedSize'), await codeIn(session)];
  return { heap, code, data: heap - code, nodes: of('Nodes'), listeners: of('JSEventListeners') };
}

/** The parts of a heap snapshot that are looked at: each node is a row of numbers in one long list. */
interface Snapshot {
  readonly snapshot: {
    readonly meta: { readonly node_fields: readonly string[]; readonly node_types: readonly [readonly string[]] };
  };
  readonly nodes: readonly number[];
}

async function codeIn(session: CDPSession): Promise<number> {
  const { nodes, snapshot }: Snapshot = JSON.parse(await snapshotOf(session));
  const { node_fields: fields, node_types: types } = snapshot.meta;
  const [type, size, code] = [fields.indexOf('type'), fields.indexOf('self_size'), types[0].indexOf('code')];
  if (Math.min(type, size, code) < 0) throw new Error('a heap snapshot has another form now');
  let sum = 0;
  for (let row = 0; row < nodes.length; row += fields.length) {
    if (nodes[row + type] === code) sum += nodes[row + size] ?? 0;
  }
  return sum;
}

async function snapshotOf(session: CDPSession): Promise<string> {
  const chunks: string[] = [];
  const take = ({ chunk }: { readonly chunk: string }): void => void chunks.push(chunk);
  session.on('HeapProfiler.addHeapSnapshotChunk', take);
  await session.send('HeapProfiler.takeHeapSnapshot', { reportProgress: false });
  session.off('HeapProfiler.addHeapSnapshotChunk', take);
  return chunks.join('');
}
