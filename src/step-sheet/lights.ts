import type { ProcessStep, StepLight } from '../model/step-sheet.js';

/** What light each step stands in: what a step does not say is as it was before, and after the window was opened any. */
export function lightsOf(steps: readonly Pick<ProcessStep, 'light'>[]): readonly StepLight[] {
  let before: StepLight = 'safe';
  return steps.map(({ light }) => {
    const now: StepLight = light ?? (before === 'window' ? 'any' : before);
    before = now;
    return now;
  });
}
