/**
 * The fences of the house, read from the import lines themselves:
 * - inside core an import points to a lower floor or stays on its own; of packages core imports valibot only;
 * - main imports core; renderer imports core and the desk's types; only tests import all;
 * - no file reaches itself through its imports (type imports count too).
 * `npm run floors` prints what is wrong and exits with 1.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { pathToFileURL } from 'node:url';

/** The floors of core, low to high. */
export const FLOORS = [
  'base',
  'tiles',
  'card',
  'exchange',
  'reading',
  'plan',
  'table',
  'chance',
  'others',
  'future',
  'game',
  'review',
  'warmup',
  'journal',
  'engine',
];

/** A check that looks at nothing finds nothing: fewer files than this is itself a problem. */
export const LEAST_FILES = { core: 120, main: 50, renderer: 80 };

const LAYERS = ['core', 'main', 'renderer'];
const DESK_TYPES = 'main/desk/desk.ts';
const IMPORT = /(?:^|[;\n])\s*(import|export)\s+(type\s+)?(?:[^'";]*?\sfrom\s+)?['"]([^'"]+)['"]/g;
const DYNAMIC_IMPORT = /\bimport\(\s*['"]([^'"]+)['"]/g;

/**
 * @typedef {{ from: string, to: string, typeOnly: boolean }} Import `to` is a path from the root, or a package's name.
 * @typedef {{ files: Record<string, number>, problems: string[] }} Findings
 */

/**
 * Looks at a whole tree.
 * @param {string} root
 * @param {Record<string, number>} [leastFiles]
 * @returns {Findings}
 */
export function checkFloors(root, leastFiles = LEAST_FILES) {
  const layers = LAYERS.map((layer) => ({ layer, files: sourceFiles(root, layer) }));
  const imports = layers.flatMap(({ files }) => files.flatMap((file) => importsOf(root, file)));
  const problems = [
    ...layers
      .filter(({ layer, files }) => files.length < (leastFiles[layer] ?? 0))
      .map(
        ({ layer, files }) => `${layer}: only ${files.length} files were found; the check looked in the wrong place`,
      ),
    ...imports.flatMap((one) => fenceProblem(root, one) ?? []),
    ...cycles(imports),
  ];
  return { files: Object.fromEntries(layers.map(({ layer, files }) => [layer, files.length])), problems };
}

/** @param {string} root @param {string} layer */
function sourceFiles(root, layer) {
  const folder = join(root, layer);
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(ts|mjs)$/.test(name) && !name.endsWith('.d.ts'))
    .map((name) => `${layer}/${name.split(sep).join('/')}`)
    .sort();
}

/** @param {string} root @param {string} file @returns {Import[]} */
function importsOf(root, file) {
  const text = withoutComments(readFileSync(join(root, file), 'utf8'));
  const named = [...text.matchAll(IMPORT)].map((match) => ({ to: match[3] ?? '', typeOnly: match[2] !== undefined }));
  const dynamic = [...text.matchAll(DYNAMIC_IMPORT)].map((match) => ({ to: match[1] ?? '', typeOnly: false }));
  return [...named, ...dynamic].map(({ to, typeOnly }) => ({ from: file, to: target(root, file, to), typeOnly }));
}

/** @param {string} text */
function withoutComments(text) {
  return text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/^\s*\/\/.*$/gm, '');
}

/** @param {string} root @param {string} file @param {string} specifier */
function target(root, file, specifier) {
  if (!specifier.startsWith('.')) return specifier;
  const path = resolve(root, dirname(file), specifier.replace(/\?.*$/, ''));
  return relative(root, path).split(sep).join('/');
}

/** @param {string} root @param {Import} one @returns {string | undefined} */
function fenceProblem(root, { from, to, typeOnly }) {
  const [layer, floor] = from.split('/');
  const [toLayer, toFloor] = to.split('/');
  const isOurs = existsSync(join(root, to));
  if (layer === 'core') {
    if (to === 'valibot') return undefined;
    if (!isOurs || toLayer !== 'core') return `${from} imports ${to}: core imports only core`;
    return floorProblem(from, floor, to, toFloor);
  }
  if (!isOurs || toLayer === layer || toLayer === 'core' || toLayer === 'assets') return undefined;
  if (layer === 'renderer' && to === DESK_TYPES && typeOnly) return undefined;
  if (layer === 'main' && to === 'package.json') return undefined;
  const rule = layer === 'renderer' ? `core, and only types of ${DESK_TYPES}` : 'core';
  return `${from} imports ${to}: ${layer} may import ${rule}`;
}

/** @param {string} from @param {string | undefined} floor @param {string} to @param {string | undefined} toFloor */
function floorProblem(from, floor, to, toFloor) {
  const here = FLOORS.indexOf(floor ?? '');
  const there = FLOORS.indexOf(toFloor ?? '');
  if (here < 0) return `${from} is on no known floor of core (${FLOORS.join(', ')})`;
  return there > here ? `${from} imports ${to}: ${floor} lies below ${toFloor}` : undefined;
}

/** Each circle of imports once, as a chain of files. @param {Import[]} imports */
function cycles(imports) {
  /** @type {Map<string, string[]>} */
  const next = new Map();
  for (const { from, to } of imports) next.set(from, [...(next.get(from) ?? []), to]);
  const done = new Set();
  /** @type {string[]} */
  const found = [];
  /** @param {string} file @param {string[]} path */
  const walk = (file, path) => {
    const start = path.indexOf(file);
    if (start >= 0) found.push(`circle of imports: ${[...path.slice(start), file].join(' -> ')}`);
    if (start >= 0 || done.has(file)) return;
    for (const to of next.get(file) ?? []) walk(to, [...path, file]);
    done.add(file);
  };
  for (const file of next.keys()) walk(file, []);
  return found;
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const { files, problems } = checkFloors(process.cwd());
  for (const problem of problems) console.error(problem);
  const looked = Object.entries(files).map(([layer, count]) => `${count} files in ${layer}`);
  if (problems.length === 0) console.log(`Fences hold: ${looked.join(', ')}.`);
  process.exitCode = problems.length === 0 ? 0 : 1;
}
