/**
 * What Windrow ships beside its own code, and the notices that the licences of these libraries ask
 * for. Read from the packages that are installed, so that nobody has to keep a list.
 *
 * @typedef {{ name: string, version: string, licence: string, author: string, text: string }} Shipped
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** The file with the notices, among those of the window. */
export const LICENCES = 'licences.txt';
const LICENCE_FILE = /^licen[cs]e(?:[-.].*)?$/i;
const RULE = `\n\n${'-'.repeat(72)}\n\n`;

/**
 * Every library that the app is built with, and Electron, by name. Throws where one has no licence text.
 * @param {string} root
 * @returns {Shipped[]}
 */
export function shippedPackages(root) {
  const { dependencies = {}, devDependencies = {} } = readPackage(root);
  /** @type {Map<string, Shipped>} */
  const found = new Map();
  const follow = (/** @type {string} */ name, /** @type {string} */ from) => {
    const folder = folderOf(name, from);
    if (found.has(folder)) return;
    const about = readPackage(folder);
    found.set(folder, shippedOf(folder, about));
    for (const each of Object.keys(about.dependencies ?? {})) follow(each, folder);
  };
  for (const name of Object.keys(dependencies)) follow(name, root);
  if ('electron' in devDependencies) {
    const folder = folderOf('electron', root);
    found.set(folder, shippedOf(folder, readPackage(folder)));
  }
  return withTexts([...found.values()]).toSorted((one, other) => (one.name < other.name ? -1 : 1));
}

/**
 * All notices as one text: Windrow's own licence, then those of what it is built with.
 * @param {string} root
 */
export function licencesText(root) {
  const lead = [
    'Windrow',
    readFileSync(join(root, 'LICENSE'), 'utf8').trim(),
    'Windrow is built with the libraries below. The notices of Chromium, which Electron holds, lie beside the program.',
  ].join('\n\n');
  const parts = shippedPackages(root).map((each) => `${titleOf(each)}\n\n${each.text}`);
  return [lead, ...parts].join(RULE).concat('\n');
}

/** Name, version and licence in a line. @param {Shipped} shipped */
export function titleOf({ name, version, licence }) {
  return `${name} ${version}, ${licence}`;
}

/** Puts the notices among the built files. @param {string} root @returns {import('vite').Plugin} */
export function licencesPlugin(root) {
  return {
    name: 'licences',
    generateBundle() {
      this.emitFile({ type: 'asset', fileName: LICENCES, source: licencesText(root) });
    },
  };
}

/**
 * Where a package lies that another one needs: beside it, or further up.
 * @param {string} name
 * @param {string} from
 * @returns {string}
 */
function folderOf(name, from) {
  const folder = join(from, 'node_modules', name);
  if (existsSync(join(folder, 'package.json'))) return folder;
  const above = dirname(from);
  if (above === from) throw new Error(`The package ${name} is not installed, so its licence can't be shown.`);
  return folderOf(name, above);
}

/** @param {string} folder */
function readPackage(folder) {
  return JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
}

/** @param {string} folder @param {{ name: string, version: string, license?: string, author?: string | { name: string } }} about */
function shippedOf(folder, { name, version, license = '', author = '' }) {
  const texts = readdirSync(folder)
    .filter((file) => LICENCE_FILE.test(file))
    .toSorted()
    .map((file) => readFileSync(join(folder, file), 'utf8').trim());
  const writer = typeof author === 'string' ? author : author.name;
  return { name, version, licence: license, author: writer, text: texts.join('\n\n') };
}

/** Where a package comes without its text, that of another by the same author under the same licence is the same. @param {Shipped[]} all */
function withTexts(all) {
  return all.map((each) => {
    if (each.text !== '') return each;
    const { licence, author } = each;
    const like = all.find((other) => other.text !== '' && other.licence === licence && other.author === author);
    if (like === undefined || author === '') throw new Error(`The package ${each.name} comes without its licence.`);
    return { ...each, text: like.text };
  });
}
