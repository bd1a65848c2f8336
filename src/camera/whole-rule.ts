import type { Design } from '../design/design.js';
import type { Finding } from '../model/finding.js';
import type { Camera } from './camera.js';

/** A rule about what was typed, or what the sizing alone can tell; wood is measured by the proof. */
export type WholeRule = (design: Design, camera: Camera) => readonly Finding[];
