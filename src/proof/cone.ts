import type { Design } from '../design/design.js';
import type { Finding } from '../model/finding.js';
import type { Scene } from './light-scene.js';

export function coneOnParts(_design: Design, _scene: Scene): readonly Finding[] {
  return [];
}
