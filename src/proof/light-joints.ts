import type { Finding } from '../model/finding.js';
import type { Scene } from './light-scene.js';

export interface LightJoint {
  readonly joint: string;
}
export const lightJoints = (_scene: Scene): readonly LightJoint[] => [];
export const jointFindings = (_joints: readonly LightJoint[]): readonly Finding[] => [];
