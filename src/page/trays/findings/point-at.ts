import type { App } from '../../app.js';
import type { PlacedFinding } from '../../worker/placed-finding.js';

/** Turns the camera to what a finding is about, in the set-up and as far drawn out as it tells; null points at nothing. */
export function pointAt(app: App, finding: PlacedFinding | null): void {
  app.change(({ findings }) => ({
    findings: { ...findings, shown: finding?.message ?? null },
    ...(finding === null ? {} : { spread: false }),
  }));
  if (finding === null) {
    app.pose.change({ pointed: [] });
    return;
  }
  const { parts, setup, rear } = finding;
  app.pose.change({
    pointed: parts,
    chosen: null,
    ...(setup === null ? {} : { setup }),
    ...(rear === null ? {} : { rear }),
  });
  // in one column the camera lies above what was pressed
  if (app.state().narrow) document.querySelector('.drawing')?.scrollIntoView({ block: 'start' });
}
