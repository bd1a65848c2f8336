import { type Finding, loadPlaces } from '../../index.js';
import type { LightJoint } from '../../model/proof.js';
import { planKept } from './kept.js';
import type { PlacedFinding } from './placed-finding.js';
import type { Answer, DesignText, Given } from './questions.js';

/** Where the findings of the plan are. */
export async function places(given: Given<'places'>): Promise<Answer<'places'>> {
  const planned = await planKept(given);
  return planned === null ? [] : placed(given, planned.findings);
}

/** Findings about a design with their places on its camera. */
export async function placed(
  given: DesignText,
  findings: readonly Finding[],
  joints?: readonly LightJoint[],
): Promise<readonly PlacedFinding[]> {
  const [planned, { aboutParts }] = await Promise.all([planKept(given), loadPlaces()]);
  return findings.map((finding) => ({
    ...finding,
    ...(planned === null || !planned.drawable
      ? { parts: [], setup: null, rear: null }
      : aboutParts(finding, planned.build, joints)),
  }));
}
