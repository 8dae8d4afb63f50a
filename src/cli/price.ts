import { commandEnd } from './command-end.ts';

// Whoever reads this may stop before the end (`| head`): that is no fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

const { code, out, errors } = commandEnd(process.argv.slice(2), new Date().toLocaleDateString('en-CA'));
process.stdout.write(out);
process.stderr.write(errors);
process.exitCode = code;
