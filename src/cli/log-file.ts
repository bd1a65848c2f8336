import { closeSync, fsyncSync, openSync, statSync, writeSync } from 'node:fs';
import { machineStop, systemCode } from './machine-error.js';
import { readTextFile } from './read-design-file.js';
import { EXIT, Stop } from './stop.js';

/** Some ten thousand sheets: nobody's log is longer. */
const LARGEST_LOG = 4 * 1024 * 1024;

/** The text of a log; empty where there is none yet. */
export function readLogText(file: string): string {
  try {
    if (!statSync(file).isFile()) throw new Stop(EXIT.wrongCall, `${file}: this is no ordinary file.`);
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return '';
    throw machineStop(file, error);
  }
  return readTextFile(file, { noun: 'sitting log', largest: LARGEST_LOG }).text;
}

/**
 * Adds to the end of a log, and returns when the disk has it. The file is opened for appending and written once, so that
 * what two programs add at the same time stands one behind the other; it is never cut, whatever goes wrong.
 */
export function appendToLog(file: string, text: string): void {
  const bytes = new TextEncoder().encode(text);
  try {
    const log = openSync(file, 'a');
    try {
      if (writeSync(log, bytes) < bytes.length)
        throw new Stop(
          EXIT.machineFailed,
          `${file}: the disk is full, and the entry was written in part only. The part does no harm: it is passed over when the log is read.`,
        );
      fsyncSync(log);
    } finally {
      closeSync(log);
    }
  } catch (error) {
    throw machineStop(file, error);
  }
}
