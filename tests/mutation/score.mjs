/**
 * What a mutation report says (its form: the mutation testing report schema of the Stryker project).
 *
 * @typedef {{ status: string, mutatorName: string, replacement?: string,
 *   location: { start: { line: number, column: number }, end: { line: number, column: number } } }} Mutant
 * @typedef {{ files: Record<string, { source: string, mutants: Mutant[] }> }} Report
 * @typedef {{ file: string, tried: number, noticed: number, score: number }} Score
 */
const NOTICED = ['Killed', 'Timeout'];
const MISSED = ['Survived', 'NoCoverage'];

/** The score of each file, worst first, and of all together at the end. @param {Report} report @returns {Score[]} */
export function scores({ files }) {
  const each = Object.entries(files)
    .map(([file, { mutants }]) => scoreOf(file, mutants))
    .filter(({ tried }) => tried > 0)
    .sort((one, other) => one.score - other.score);
  return [
    ...each,
    scoreOf(
      'all',
      Object.values(files).flatMap(({ mutants }) => mutants),
    ),
  ];
}

/** @param {string} file @param {Mutant[]} mutants @returns {Score} */
function scoreOf(file, mutants) {
  const noticed = mutants.filter(({ status }) => NOTICED.includes(status)).length;
  const tried = noticed + mutants.filter(({ status }) => MISSED.includes(status)).length;
  return { file, tried, noticed, score: (100 * noticed) / tried };
}

/** @param {readonly Score[]} files */
export function scoreTable(files) {
  return files
    .map(({ file, tried, noticed, score }) => `${score.toFixed(1).padStart(6)} %  ${noticed} of ${tried}  ${file}`)
    .join('\n');
}

/** Every change that no test noticed, with the line it was made in. @param {Report} report */
export function survivorText({ files }) {
  return Object.entries(files)
    .flatMap(([file, { source, mutants }]) => {
      const lines = source.split('\n');
      return mutants
        .filter(({ status }) => MISSED.includes(status))
        .sort((one, other) => one.location.start.line - other.location.start.line)
        .map(({ status, mutatorName, replacement = '', location: { start } }) => {
          const line = (lines[start.line - 1] ?? '').trim();
          const became = replacement.replaceAll(/\s+/g, ' ').slice(0, 100);
          return `${file}:${start.line}:${start.column} ${status} ${mutatorName}\n    ${line}\n    → ${became}\n`;
        });
    })
    .join('');
}
