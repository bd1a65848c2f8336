import type { Finding } from '../index.js';
import { EXIT, Stop } from './stop.js';

/** Ends the command where a rule of level error is broken that nobody waived. */
export function refuseBroken(findings: readonly Finding[], despite: readonly string[]): void {
  const broken = findings.filter(({ rule, level }) => level === 'error' && !despite.includes(rule));
  if (broken.length === 0) return;
  const rules = [...new Set(broken.map(({ rule }) => rule))];
  const waive = rules.map((rule) => `--despite ${rule}`).join(' ');
  throw new Stop(EXIT.ruleBroken, `Not built, nothing written: ${rules.join(', ')}.\nTo build all the same: ${waive}`);
}
