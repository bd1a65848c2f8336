import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** Builds a camera as a user does and has it judged; what was said where it is not right, else null. */
export async function judgement(judge: string, text: string, folder: string, number: number): Promise<string | null> {
  const place = mkdtempSync(join(folder, `judged-${number}-`));
  const [design, built] = [join(place, 'design.yaml'), join(place, 'built')];
  writeFileSync(design, text);
  const said =
    (await saidWrong(`node dist/cli/main.js build ${design} --effort 0 --output ${built}`)) ??
    (await saidWrong(`${judge} ${built} --design ${design}`));
  rmSync(place, { recursive: true });
  return said;
}

/** What a command printed, where it did not end with 0. */
function saidWrong(command: string): Promise<string | null> {
  return new Promise((resolve) => {
    const child = spawn(command, { shell: true, stdio: ['ignore', 'pipe', 'pipe'] });
    let said = '';
    const hear = (bytes: Buffer) => {
      said += bytes.toString();
    };
    child.stdout.on('data', hear);
    child.stderr.on('data', hear);
    child.on('close', (code) => resolve(code === 0 ? null : said));
  });
}
