import type { Finding } from '../model/finding.js';
import type { Scene } from './light-scene.js';

export function holesInDark(_scene: Scene): readonly Finding[] {
  return [];
}
