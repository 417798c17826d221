import { errorCode } from '../files/files.ts';
import { runCommandLine } from './command-line.ts';

// A reader that has seen enough, such as `head`, closes the pipe: that is no error.
process.stdout.on('error', (error) => process.exit(errorCode(error) === 'EPIPE' ? 0 : 1));

const { stdin, stdout, stderr } = process;
const code = await runCommandLine(process.argv.slice(2), { input: stdin, output: stdout, errors: stderr });
if (code !== 0) process.exitCode = code;
