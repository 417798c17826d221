import { basename, dirname } from 'node:path';
import type { Random } from '../../../core/base/random.ts';
import type { Files, OpenFile } from '../../../main/files/files.ts';

/** A file's bytes as programs see them, and as they are sure to be after a crash. */
interface FileNode {
  readonly kind: 'file';
  bytes: Uint8Array;
  synced: Uint8Array;
  changedAt: number;
}

/** A folder's names as programs see them, those sure to survive a crash, and the changes between. */
interface FolderNode {
  readonly kind: 'folder';
  names: Map<string, Node>;
  synced: Map<string, Node>;
  pending: NameChange[];
  changedAt: number;
}

type Node = FileNode | FolderNode;

/** One change that a crash keeps or loses as a whole; several of them in any choice. */
type NameChange = (names: Map<string, Node>) => void;

export type CallName = keyof Files | keyof OpenFile;

/** Looks at each call before it is made; may throw, or cut a write short: told (`short`), untold (`lie`) or with an error (`half`). */
export type Watch = (call: CallName, path: string) => 'lie' | 'short' | 'half' | undefined;

/**
 * A file system in memory that knows what a crash may lose: bytes not flushed (none, some or all
 * of them, or zeros in their place) and names in folders not flushed (any choice of the changes).
 */
export class MemoryDisk {
  readonly #root: FolderNode;
  now = Date.parse('2026-11-25T18:00:00Z');
  watch: Watch = () => undefined;
  /** Every call in order, for tests of the order. */
  readonly calls: string[] = [];

  constructor(root: FolderNode = newFolder(0)) {
    this.#root = root;
  }

  readonly files: Files = {
    createNew: async (path) => {
      this.#note('createNew', path);
      const folder = this.#folder(dirname(path));
      if (folder.names.has(basename(path))) throw fileError('EEXIST', path);
      const file: FileNode = { kind: 'file', bytes: new Uint8Array(), synced: new Uint8Array(), changedAt: this.now };
      this.#change(folder, (names) => names.set(basename(path), file));
      return this.#open(path, file);
    },
    openAtEnd: async (path) => {
      this.#note('openAtEnd', path);
      return this.#open(path, this.#file(path));
    },
    read: async (path) => {
      this.#note('read', path);
      return this.#file(path).bytes.slice();
    },
    info: async (path) => {
      this.#note('info', path);
      const node = this.#node(path);
      return { size: node.kind === 'file' ? node.bytes.length : 0, changedAt: node.changedAt };
    },
    list: async (path) => {
      this.#note('list', path);
      return [...this.#folder(path).names].map(([name, node]) => ({ name, folder: node.kind === 'folder' }));
    },
    rename: async (from, to) => {
      this.#note('rename', `${from} ${to}`);
      const node = this.#node(from);
      const [source, target] = [this.#folder(dirname(from)), this.#folder(dirname(to))];
      if (source === target) {
        this.#change(source, (names) => {
          names.delete(basename(from));
          names.set(basename(to), node);
        });
      } else {
        this.#change(target, (names) => names.set(basename(to), node));
        this.#change(source, (names) => names.delete(basename(from)));
      }
    },
    remove: async (path) => {
      this.#note('remove', path);
      this.#file(path);
      this.#change(this.#folder(dirname(path)), (names) => names.delete(basename(path)));
    },
    makeFolder: async (path) => {
      this.#note('makeFolder', path);
      const parent = this.#folder(dirname(path));
      if (parent.names.has(basename(path))) throw fileError('EEXIST', path);
      const folder = newFolder(this.now);
      this.#change(parent, (names) => names.set(basename(path), folder));
    },
    touch: async (path) => {
      this.#note('touch', path);
      this.#file(path).changedAt = this.now;
    },
    syncFolder: async (path) => {
      this.#note('syncFolder', path);
      const folder = this.#folder(path);
      folder.synced = new Map(folder.names);
      folder.pending = [];
    },
  };

  #open(path: string, file: FileNode): OpenFile {
    return {
      write: async (bytes) => {
        const fault = this.#note('write', path);
        const taken = fault === undefined ? bytes.length : Math.floor(bytes.length / 2);
        file.bytes = new Uint8Array(Buffer.concat([file.bytes, bytes.subarray(0, taken)]));
        file.changedAt = this.now;
        if (fault === 'half') throw fileError('ENOSPC', path);
        return fault === 'lie' ? bytes.length : taken;
      },
      sync: async () => {
        this.#note('sync', path);
        file.synced = file.bytes;
      },
      size: async () => {
        this.#note('size', path);
        return file.bytes.length;
      },
      close: async () => {
        this.#note('close', path);
      },
    };
  }

  /** What a crash right now may leave, by chance. */
  crashed(random: Random): MemoryDisk {
    const disk = new MemoryDisk(crashedFolder(this.#root, random, new Map()));
    disk.now = this.now;
    return disk;
  }

  /** Every file's path with its text. */
  texts(folder = this.#root, path = ''): Map<string, string> {
    const found = new Map<string, string>();
    for (const [name, node] of folder.names) {
      const inside = node.kind === 'folder' ? this.texts(node, `${path}/${name}`) : [];
      for (const [inner, text] of inside) found.set(inner, text);
      if (node.kind === 'file') found.set(`${path}/${name}`, new TextDecoder().decode(node.bytes));
    }
    return found;
  }

  /** Every file's bytes, as a text of one letter a byte. */
  bytes(folder = this.#root): string[] {
    return [...folder.names.values()].flatMap((node) =>
      node.kind === 'folder' ? this.bytes(node) : [Buffer.from(node.bytes).toString('latin1')],
    );
  }

  /** Puts a file there as another program would, flushed. */
  put(path: string, content: string | Uint8Array): void {
    const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
    const file: FileNode = { kind: 'file', bytes, synced: bytes, changedAt: this.now };
    let folder = this.#root;
    for (const name of dirname(path).split('/').filter(Boolean)) {
      const next = folder.names.get(name) ?? newFolder(this.now);
      if (next.kind !== 'folder') throw fileError('ENOTDIR', path);
      folder.names.set(name, next);
      folder.synced.set(name, next);
      folder = next;
    }
    folder.names.set(basename(path), file);
    folder.changedAt = this.now;
    folder.synced.set(basename(path), file);
  }

  #note(call: CallName, path: string): 'lie' | 'short' | 'half' | undefined {
    this.calls.push(`${call} ${path}`);
    return this.watch(call, path);
  }

  #change(folder: FolderNode, apply: NameChange): void {
    apply(folder.names);
    folder.pending.push(apply);
    folder.changedAt = this.now;
  }

  #node(path: string): Node {
    let node: Node = this.#root;
    for (const name of path.split('/').filter(Boolean)) {
      if (node.kind !== 'folder') throw fileError('ENOTDIR', path);
      const next: Node | undefined = node.names.get(name);
      if (next === undefined) throw fileError('ENOENT', path);
      node = next;
    }
    return node;
  }

  #file(path: string): FileNode {
    const node = this.#node(path);
    if (node.kind !== 'file') throw fileError('EISDIR', path);
    return node;
  }

  #folder(path: string): FolderNode {
    const node = this.#node(path);
    if (node.kind !== 'folder') throw fileError('ENOTDIR', path);
    return node;
  }
}

export function fileError(code: string, path: string): Error {
  return Object.assign(new Error(`${code}: ${path}`), { code });
}

function newFolder(changedAt: number): FolderNode {
  return { kind: 'folder', names: new Map(), synced: new Map(), pending: [], changedAt };
}

function crashedFolder(folder: FolderNode, random: Random, files: Map<FileNode, FileNode>): FolderNode {
  const names = new Map(folder.synced);
  for (const apply of folder.pending) {
    if (random.below(2) === 1) apply(names);
  }
  const survived = new Map([...names].map(([name, node]) => [name, crashedNode(node, random, files)]));
  return { kind: 'folder', names: survived, synced: new Map(survived), pending: [], changedAt: folder.changedAt };
}

function crashedNode(node: Node, random: Random, files: Map<FileNode, FileNode>): Node {
  if (node.kind === 'folder') return crashedFolder(node, random, files);
  const known = files.get(node);
  if (known !== undefined) return known;
  const bytes = crashedBytes(node, random);
  const file: FileNode = { kind: 'file', bytes, synced: bytes, changedAt: node.changedAt };
  files.set(node, file);
  return file;
}

/** Files here only grow: what was flushed stays; of the rest some part, or zeros where it should be. */
function crashedBytes({ bytes, synced }: FileNode, random: Random): Uint8Array {
  if (bytes.length === synced.length) return bytes;
  const kept = synced.length + random.below(bytes.length - synced.length + 1);
  const left = bytes.slice(0, kept);
  if (random.below(3) === 0) left.fill(0, synced.length);
  return left;
}
