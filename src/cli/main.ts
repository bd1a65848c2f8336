#!/usr/bin/env node
import { endOnSignals } from './interrupt.js';
import { run } from './run.js';
import { EXIT } from './stop.js';
import { processTerminal } from './terminal.js';

// without a listener a reader that goes away would end us with a stack trace; the writer hears of it as well
process.stdout.on('error', () => {});
process.stderr.on('error', () => {});
endOnSignals();
try {
  process.exitCode = await run(process.argv.slice(2), processTerminal());
} catch (error) {
  process.stderr.write(
    `tailboard made a mistake of its own, please report it.\n${error instanceof Error ? error.stack : error}\n`,
  );
  process.exitCode = EXIT.machineFailed;
}
