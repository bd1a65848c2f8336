import type { Finding } from '../model/finding.js';

/** A finding where something does not hold, nothing where it does. */
export const unless = (holds: boolean, finding: Finding): readonly Finding[] => (holds ? [] : [finding]);

/** Rounding must not turn a length that just meets its limit into a finding. */
export const ROUNDING = 1e-6;
