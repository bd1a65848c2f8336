import { spawn } from 'node:child_process';
import { onTestFinished } from 'vitest';
import { compiled, type Ended } from './scratch.js';

export interface Serving {
  /** As the program prints it: ends in a slash. */
  readonly url: string;
  readonly port: number;
  readonly signal: (name: NodeJS.Signals) => void;
  readonly ended: Promise<Ended>;
}

/** The compiled program as it serves, on any free port, until the test has finished. */
export async function serving(folder: string, design?: string): Promise<Serving> {
  const words = ['serve', ...(design === undefined ? [] : [design]), '--port', '0'];
  const child = spawn(process.execPath, [compiled('cli/main.js'), ...words], { cwd: folder });
  onTestFinished(() => void child.kill());
  const said = { out: '', err: '' };
  child.stderr.setEncoding('utf8').on('data', (text) => {
    said.err += text;
  });
  const ended = new Promise<Ended>((resolve) => child.on('close', (code) => resolve({ code, ...said })));
  const url = await new Promise<string>((resolve, reject) => {
    child.stdout.setEncoding('utf8').on('data', (text) => {
      said.out += text;
      if (said.out.endsWith('\n')) resolve(said.out.trim());
    });
    ended.then(() => reject(new Error(`tailboard serve ended: ${said.err}`)));
  });
  return { url, port: Number(new URL(url).port), signal: (name) => void child.kill(name), ended };
}
