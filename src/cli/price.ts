import { priceCommand } from './price-command.ts';
import { plain } from './text-layout.ts';

// Whoever reads this may stop before the end (`| head`): that is no fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

/** Exit codes: 0 done, 3 printed but not for sale, 2 something given is wrong, 1 a fault of the program. */
try {
  const result = priceCommand(process.argv.slice(2), new Date().toLocaleDateString('en-CA'));
  if (result.kind === 'output') {
    process.stdout.write(result.text);
    if (!result.forSale) process.exitCode = 3;
  } else {
    process.stderr.write(result.faults.map((fault) => `${plain(fault)}\n`).join(''));
    process.exitCode = 2;
  }
} catch (error) {
  // A bug of ours: its message, for whoever mends it, in place of a page of places in files.
  process.stderr.write(
    `This is a fault of the program: ${plain(error instanceof Error ? error.message : String(error))}\n`,
  );
  process.exitCode = 1;
}
